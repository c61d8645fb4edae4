-- Version 6 of the yard file: how long foam may lie in the sun, and where it does not.

-- foam_days       days after which foam that lies open is pointed at; 0 never
-- covered_places  a JSON array of the names of places where the sun does not come
ALTER TABLE setting ADD COLUMN foam_days INTEGER NOT NULL DEFAULT 60 CHECK (foam_days BETWEEN 0 AND 3650);
ALTER TABLE setting ADD COLUMN covered_places TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(covered_places) AND json_type(covered_places) = 'array');

DROP TRIGGER setting_added;
DROP TRIGGER setting_changed;
DROP TRIGGER setting_removed;

CREATE TRIGGER setting_added AFTER INSERT ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'unit', NEW.unit, 'currency_sign', NEW.currency_sign,
    'tax_thousandths_of_percent', NEW.tax_thousandths_of_percent, 'kerf_320ths_mm', NEW.kerf_320ths_mm,
    'keep_320ths_mm', NEW.keep_320ths_mm, 'species', NEW.species, 'specific_gravity', NEW.specific_gravity,
    'foam_days', NEW.foam_days, 'covered_places', NEW.covered_places));
END;

CREATE TRIGGER setting_changed AFTER UPDATE ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', NEW.id, NULL, json_object(
    'id', OLD.id, 'unit', OLD.unit, 'currency_sign', OLD.currency_sign,
    'tax_thousandths_of_percent', OLD.tax_thousandths_of_percent, 'kerf_320ths_mm', OLD.kerf_320ths_mm,
    'keep_320ths_mm', OLD.keep_320ths_mm, 'species', OLD.species, 'specific_gravity', OLD.specific_gravity,
    'foam_days', OLD.foam_days, 'covered_places', OLD.covered_places), json_object(
    'id', NEW.id, 'unit', NEW.unit, 'currency_sign', NEW.currency_sign,
    'tax_thousandths_of_percent', NEW.tax_thousandths_of_percent, 'kerf_320ths_mm', NEW.kerf_320ths_mm,
    'keep_320ths_mm', NEW.keep_320ths_mm, 'species', NEW.species, 'specific_gravity', NEW.specific_gravity,
    'foam_days', NEW.foam_days, 'covered_places', NEW.covered_places));
END;

CREATE TRIGGER setting_removed AFTER DELETE ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', OLD.id, NULL, json_object(
    'id', OLD.id, 'unit', OLD.unit, 'currency_sign', OLD.currency_sign,
    'tax_thousandths_of_percent', OLD.tax_thousandths_of_percent, 'kerf_320ths_mm', OLD.kerf_320ths_mm,
    'keep_320ths_mm', OLD.keep_320ths_mm, 'species', OLD.species, 'specific_gravity', OLD.specific_gravity,
    'foam_days', OLD.foam_days, 'covered_places', OLD.covered_places), NULL);
END;
