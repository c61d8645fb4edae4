-- [setting] The one row of settings.
SELECT * FROM setting;

-- [kerfs]
SELECT * FROM kerf ORDER BY id;

-- [keeps]
SELECT * FROM keep ORDER BY id;

-- [use_rules]
SELECT * FROM use_rule ORDER BY id;

-- [setting_set]
UPDATE setting SET unit = :unit, currency_sign = :currency_sign, tax_thousandths_of_percent = :tax, kerf_320ths_mm = :kerf,
  keep_320ths_mm = :keep, species = :species, specific_gravity = :specific_gravity, foam_days = :foam_days, covered_places = :covered_places;

-- [use_rule_set]
UPDATE use_rule SET worst_condition = :worst, needs_stamp = :needs_stamp WHERE use = :use;

-- [kerfs_remove]
DELETE FROM kerf;

-- [kerf_add]
INSERT INTO kerf (family, kerf_320ths_mm) VALUES (:family, :kerf);

-- [keeps_remove]
DELETE FROM keep;

-- [keep_add]
INSERT INTO keep (material, keep_320ths_mm) VALUES (:material, :keep);

-- [keep_backs]
SELECT * FROM keep_back ORDER BY id;

-- [keep_backs_remove]
DELETE FROM keep_back;

-- [keep_back_add]
INSERT INTO keep_back (material, length_320ths_mm, count) VALUES (:material, :length, :count);
