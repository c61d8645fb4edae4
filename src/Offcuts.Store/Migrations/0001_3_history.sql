-- Version 1 of the yard file, third part: the history writes itself. Whatever adds, changes or removes a row of the yard
-- leaves the row as it was and as it is, under the open entry; without an open entry the NOT NULL of change.entry refuses it.

CREATE TRIGGER stage_added AFTER INSERT ON stage BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'stage', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'position', NEW.position, 'name', NEW.name, 'begins_on', NEW.begins_on));
END;

CREATE TRIGGER stage_changed AFTER UPDATE ON stage BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'stage', NEW.id, NULL, json_object(
    'id', OLD.id, 'position', OLD.position, 'name', OLD.name, 'begins_on', OLD.begins_on), json_object(
    'id', NEW.id, 'position', NEW.position, 'name', NEW.name, 'begins_on', NEW.begins_on));
END;

CREATE TRIGGER stage_removed AFTER DELETE ON stage BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'stage', OLD.id, NULL, json_object(
    'id', OLD.id, 'position', OLD.position, 'name', OLD.name, 'begins_on', OLD.begins_on), NULL);
END;

CREATE TRIGGER required_cut_added AFTER INSERT ON required_cut BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'required_cut', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'material', NEW.material,
    'shortest_320ths_mm', NEW.shortest_320ths_mm, 'longest_320ths_mm', NEW.longest_320ths_mm, 'count', NEW.count,
    'use', NEW.use, 'treated', NEW.treated));
END;

CREATE TRIGGER required_cut_changed AFTER UPDATE ON required_cut BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'required_cut', NEW.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'material', OLD.material,
    'shortest_320ths_mm', OLD.shortest_320ths_mm, 'longest_320ths_mm', OLD.longest_320ths_mm, 'count', OLD.count,
    'use', OLD.use, 'treated', OLD.treated), json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'material', NEW.material,
    'shortest_320ths_mm', NEW.shortest_320ths_mm, 'longest_320ths_mm', NEW.longest_320ths_mm, 'count', NEW.count,
    'use', NEW.use, 'treated', NEW.treated));
END;

CREATE TRIGGER required_cut_removed AFTER DELETE ON required_cut BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'required_cut', OLD.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'material', OLD.material,
    'shortest_320ths_mm', OLD.shortest_320ths_mm, 'longest_320ths_mm', OLD.longest_320ths_mm, 'count', OLD.count,
    'use', OLD.use, 'treated', OLD.treated), NULL);
END;

CREATE TRIGGER hardware_need_added AFTER INSERT ON hardware_need BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hardware_need', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'hardware', NEW.hardware, 'unit', NEW.unit,
    'count', NEW.count));
END;

CREATE TRIGGER hardware_need_changed AFTER UPDATE ON hardware_need BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hardware_need', NEW.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'hardware', OLD.hardware, 'unit', OLD.unit,
    'count', OLD.count), json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'hardware', NEW.hardware, 'unit', NEW.unit,
    'count', NEW.count));
END;

CREATE TRIGGER hardware_need_removed AFTER DELETE ON hardware_need BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hardware_need', OLD.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'hardware', OLD.hardware, 'unit', OLD.unit,
    'count', OLD.count), NULL);
END;

CREATE TRIGGER piece_added AFTER INSERT ON piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'piece', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm,
    'width_320ths_mm', NEW.width_320ths_mm, 'condition', NEW.condition, 'bad_spots_320ths_mm', NEW.bad_spots_320ths_mm,
    'trim_left_320ths_mm', NEW.trim_left_320ths_mm, 'trim_right_320ths_mm', NEW.trim_right_320ths_mm, 'treated', NEW.treated,
    'treated_with', NEW.treated_with, 'stamped', NEW.stamped, 'nails', NEW.nails, 'concrete', NEW.concrete, 'oiled', NEW.oiled,
    'place', NEW.place, 'from_stage', NEW.from_stage, 'cut_from', NEW.cut_from,
    'first_line_320ths_mm', NEW.first_line_320ths_mm, 'note', NEW.note, 'state', NEW.state, 'reserved_for', NEW.reserved_for));
END;

CREATE TRIGGER piece_changed AFTER UPDATE ON piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'piece', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm,
    'width_320ths_mm', OLD.width_320ths_mm, 'condition', OLD.condition, 'bad_spots_320ths_mm', OLD.bad_spots_320ths_mm,
    'trim_left_320ths_mm', OLD.trim_left_320ths_mm, 'trim_right_320ths_mm', OLD.trim_right_320ths_mm, 'treated', OLD.treated,
    'treated_with', OLD.treated_with, 'stamped', OLD.stamped, 'nails', OLD.nails, 'concrete', OLD.concrete, 'oiled', OLD.oiled,
    'place', OLD.place, 'from_stage', OLD.from_stage, 'cut_from', OLD.cut_from,
    'first_line_320ths_mm', OLD.first_line_320ths_mm, 'note', OLD.note, 'state', OLD.state, 'reserved_for', OLD.reserved_for), json_object(
    'id', NEW.id, 'code', NEW.code, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm,
    'width_320ths_mm', NEW.width_320ths_mm, 'condition', NEW.condition, 'bad_spots_320ths_mm', NEW.bad_spots_320ths_mm,
    'trim_left_320ths_mm', NEW.trim_left_320ths_mm, 'trim_right_320ths_mm', NEW.trim_right_320ths_mm, 'treated', NEW.treated,
    'treated_with', NEW.treated_with, 'stamped', NEW.stamped, 'nails', NEW.nails, 'concrete', NEW.concrete, 'oiled', NEW.oiled,
    'place', NEW.place, 'from_stage', NEW.from_stage, 'cut_from', NEW.cut_from,
    'first_line_320ths_mm', NEW.first_line_320ths_mm, 'note', NEW.note, 'state', NEW.state, 'reserved_for', NEW.reserved_for));
END;

CREATE TRIGGER piece_removed AFTER DELETE ON piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'piece', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm,
    'width_320ths_mm', OLD.width_320ths_mm, 'condition', OLD.condition, 'bad_spots_320ths_mm', OLD.bad_spots_320ths_mm,
    'trim_left_320ths_mm', OLD.trim_left_320ths_mm, 'trim_right_320ths_mm', OLD.trim_right_320ths_mm, 'treated', OLD.treated,
    'treated_with', OLD.treated_with, 'stamped', OLD.stamped, 'nails', OLD.nails, 'concrete', OLD.concrete, 'oiled', OLD.oiled,
    'place', OLD.place, 'from_stage', OLD.from_stage, 'cut_from', OLD.cut_from,
    'first_line_320ths_mm', OLD.first_line_320ths_mm, 'note', OLD.note, 'state', OLD.state, 'reserved_for', OLD.reserved_for), NULL);
END;

CREATE TRIGGER bin_added AFTER INSERT ON bin BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bin', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'hardware', NEW.hardware, 'unit', NEW.unit, 'quantity', NEW.quantity, 'place', NEW.place,
    'note', NEW.note));
END;

CREATE TRIGGER bin_changed AFTER UPDATE ON bin BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bin', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'hardware', OLD.hardware, 'unit', OLD.unit, 'quantity', OLD.quantity, 'place', OLD.place,
    'note', OLD.note), json_object(
    'id', NEW.id, 'code', NEW.code, 'hardware', NEW.hardware, 'unit', NEW.unit, 'quantity', NEW.quantity, 'place', NEW.place,
    'note', NEW.note));
END;

CREATE TRIGGER bin_removed AFTER DELETE ON bin BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bin', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'hardware', OLD.hardware, 'unit', OLD.unit, 'quantity', OLD.quantity, 'place', OLD.place,
    'note', OLD.note), NULL);
END;

CREATE TRIGGER blank_added AFTER INSERT ON blank BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'blank', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code));
END;

CREATE TRIGGER blank_changed AFTER UPDATE ON blank BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'blank', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code), json_object(
    'id', NEW.id, 'code', NEW.code));
END;

CREATE TRIGGER blank_removed AFTER DELETE ON blank BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'blank', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code), NULL);
END;

CREATE TRIGGER label_queue_added AFTER INSERT ON label_queue BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'label_queue', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code));
END;

CREATE TRIGGER label_queue_changed AFTER UPDATE ON label_queue BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'label_queue', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code), json_object(
    'id', NEW.id, 'code', NEW.code));
END;

CREATE TRIGGER label_queue_removed AFTER DELETE ON label_queue BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'label_queue', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code), NULL);
END;

CREATE TRIGGER price_added AFTER INSERT ON price BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'price', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'material', NEW.material, 'counted', NEW.counted, 'unit', NEW.unit, 'length_320ths_mm', NEW.length_320ths_mm,
    'treated', NEW.treated, 'cents', NEW.cents, 'lead_days', NEW.lead_days, 'most_available', NEW.most_available,
    'supplier', NEW.supplier, 'seen_on', NEW.seen_on));
END;

CREATE TRIGGER price_changed AFTER UPDATE ON price BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'price', NEW.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'counted', OLD.counted, 'unit', OLD.unit, 'length_320ths_mm', OLD.length_320ths_mm,
    'treated', OLD.treated, 'cents', OLD.cents, 'lead_days', OLD.lead_days, 'most_available', OLD.most_available,
    'supplier', OLD.supplier, 'seen_on', OLD.seen_on), json_object(
    'id', NEW.id, 'material', NEW.material, 'counted', NEW.counted, 'unit', NEW.unit, 'length_320ths_mm', NEW.length_320ths_mm,
    'treated', NEW.treated, 'cents', NEW.cents, 'lead_days', NEW.lead_days, 'most_available', NEW.most_available,
    'supplier', NEW.supplier, 'seen_on', NEW.seen_on));
END;

CREATE TRIGGER price_removed AFTER DELETE ON price BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'price', OLD.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'counted', OLD.counted, 'unit', OLD.unit, 'length_320ths_mm', OLD.length_320ths_mm,
    'treated', OLD.treated, 'cents', OLD.cents, 'lead_days', OLD.lead_days, 'most_available', OLD.most_available,
    'supplier', OLD.supplier, 'seen_on', OLD.seen_on), NULL);
END;

CREATE TRIGGER setting_added AFTER INSERT ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'unit', NEW.unit, 'currency_sign', NEW.currency_sign,
    'tax_thousandths_of_percent', NEW.tax_thousandths_of_percent, 'kerf_320ths_mm', NEW.kerf_320ths_mm,
    'keep_320ths_mm', NEW.keep_320ths_mm, 'species', NEW.species, 'specific_gravity', NEW.specific_gravity));
END;

CREATE TRIGGER setting_changed AFTER UPDATE ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', NEW.id, NULL, json_object(
    'id', OLD.id, 'unit', OLD.unit, 'currency_sign', OLD.currency_sign,
    'tax_thousandths_of_percent', OLD.tax_thousandths_of_percent, 'kerf_320ths_mm', OLD.kerf_320ths_mm,
    'keep_320ths_mm', OLD.keep_320ths_mm, 'species', OLD.species, 'specific_gravity', OLD.specific_gravity), json_object(
    'id', NEW.id, 'unit', NEW.unit, 'currency_sign', NEW.currency_sign,
    'tax_thousandths_of_percent', NEW.tax_thousandths_of_percent, 'kerf_320ths_mm', NEW.kerf_320ths_mm,
    'keep_320ths_mm', NEW.keep_320ths_mm, 'species', NEW.species, 'specific_gravity', NEW.specific_gravity));
END;

CREATE TRIGGER setting_removed AFTER DELETE ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', OLD.id, NULL, json_object(
    'id', OLD.id, 'unit', OLD.unit, 'currency_sign', OLD.currency_sign,
    'tax_thousandths_of_percent', OLD.tax_thousandths_of_percent, 'kerf_320ths_mm', OLD.kerf_320ths_mm,
    'keep_320ths_mm', OLD.keep_320ths_mm, 'species', OLD.species, 'specific_gravity', OLD.specific_gravity), NULL);
END;

CREATE TRIGGER kerf_added AFTER INSERT ON kerf BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'kerf', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'family', NEW.family, 'kerf_320ths_mm', NEW.kerf_320ths_mm));
END;

CREATE TRIGGER kerf_changed AFTER UPDATE ON kerf BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'kerf', NEW.id, NULL, json_object(
    'id', OLD.id, 'family', OLD.family, 'kerf_320ths_mm', OLD.kerf_320ths_mm), json_object(
    'id', NEW.id, 'family', NEW.family, 'kerf_320ths_mm', NEW.kerf_320ths_mm));
END;

CREATE TRIGGER kerf_removed AFTER DELETE ON kerf BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'kerf', OLD.id, NULL, json_object(
    'id', OLD.id, 'family', OLD.family, 'kerf_320ths_mm', OLD.kerf_320ths_mm), NULL);
END;

CREATE TRIGGER keep_added AFTER INSERT ON keep BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'material', NEW.material, 'keep_320ths_mm', NEW.keep_320ths_mm));
END;

CREATE TRIGGER keep_changed AFTER UPDATE ON keep BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep', NEW.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'keep_320ths_mm', OLD.keep_320ths_mm), json_object(
    'id', NEW.id, 'material', NEW.material, 'keep_320ths_mm', NEW.keep_320ths_mm));
END;

CREATE TRIGGER keep_removed AFTER DELETE ON keep BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep', OLD.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'keep_320ths_mm', OLD.keep_320ths_mm), NULL);
END;

CREATE TRIGGER use_rule_added AFTER INSERT ON use_rule BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'use_rule', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'use', NEW.use, 'worst_condition', NEW.worst_condition, 'needs_stamp', NEW.needs_stamp));
END;

CREATE TRIGGER use_rule_changed AFTER UPDATE ON use_rule BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'use_rule', NEW.id, NULL, json_object(
    'id', OLD.id, 'use', OLD.use, 'worst_condition', OLD.worst_condition, 'needs_stamp', OLD.needs_stamp), json_object(
    'id', NEW.id, 'use', NEW.use, 'worst_condition', NEW.worst_condition, 'needs_stamp', NEW.needs_stamp));
END;

CREATE TRIGGER use_rule_removed AFTER DELETE ON use_rule BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'use_rule', OLD.id, NULL, json_object(
    'id', OLD.id, 'use', OLD.use, 'worst_condition', OLD.worst_condition, 'needs_stamp', OLD.needs_stamp), NULL);
END;

CREATE TRIGGER plan_added AFTER INSERT ON plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'made_on', NEW.made_on, 'document', NEW.document, 'hardware', NEW.hardware));
END;

CREATE TRIGGER plan_changed AFTER UPDATE ON plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan', NEW.id, NULL, json_object(
    'id', OLD.id, 'made_on', OLD.made_on, 'document', OLD.document, 'hardware', OLD.hardware), json_object(
    'id', NEW.id, 'made_on', NEW.made_on, 'document', NEW.document, 'hardware', NEW.hardware));
END;

CREATE TRIGGER plan_removed AFTER DELETE ON plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan', OLD.id, NULL, json_object(
    'id', OLD.id, 'made_on', OLD.made_on, 'document', OLD.document, 'hardware', OLD.hardware), NULL);
END;

CREATE TRIGGER plan_step_added AFTER INSERT ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'plan', NEW.plan, 'piece', NEW.piece, 'state', NEW.state, 'actual', NEW.actual));
END;

CREATE TRIGGER plan_step_changed AFTER UPDATE ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', NEW.id, NULL, json_object(
    'id', OLD.id, 'plan', OLD.plan, 'piece', OLD.piece, 'state', OLD.state, 'actual', OLD.actual), json_object(
    'id', NEW.id, 'plan', NEW.plan, 'piece', NEW.piece, 'state', NEW.state, 'actual', NEW.actual));
END;

CREATE TRIGGER plan_step_removed AFTER DELETE ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', OLD.id, NULL, json_object(
    'id', OLD.id, 'plan', OLD.plan, 'piece', OLD.piece, 'state', OLD.state, 'actual', OLD.actual), NULL);
END;

CREATE TRIGGER ledger_added AFTER INSERT ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'day', NEW.day, 'stage', NEW.stage, 'plan', NEW.plan, 'all_new_cents', NEW.all_new_cents,
    'spent_cents', NEW.spent_cents, 'board_feet', NEW.board_feet, 'panel_square_mm', NEW.panel_square_mm,
    'weight_pounds', NEW.weight_pounds, 'wood_weight_pounds', NEW.wood_weight_pounds, 'pieces_used', NEW.pieces_used, 'hardware_used', NEW.hardware_used));
END;

CREATE TRIGGER ledger_changed AFTER UPDATE ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', NEW.id, NULL, json_object(
    'id', OLD.id, 'day', OLD.day, 'stage', OLD.stage, 'plan', OLD.plan, 'all_new_cents', OLD.all_new_cents,
    'spent_cents', OLD.spent_cents, 'board_feet', OLD.board_feet, 'panel_square_mm', OLD.panel_square_mm,
    'weight_pounds', OLD.weight_pounds, 'wood_weight_pounds', OLD.wood_weight_pounds, 'pieces_used', OLD.pieces_used, 'hardware_used', OLD.hardware_used), json_object(
    'id', NEW.id, 'day', NEW.day, 'stage', NEW.stage, 'plan', NEW.plan, 'all_new_cents', NEW.all_new_cents,
    'spent_cents', NEW.spent_cents, 'board_feet', NEW.board_feet, 'panel_square_mm', NEW.panel_square_mm,
    'weight_pounds', NEW.weight_pounds, 'wood_weight_pounds', NEW.wood_weight_pounds, 'pieces_used', NEW.pieces_used, 'hardware_used', NEW.hardware_used));
END;

CREATE TRIGGER ledger_removed AFTER DELETE ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', OLD.id, NULL, json_object(
    'id', OLD.id, 'day', OLD.day, 'stage', OLD.stage, 'plan', OLD.plan, 'all_new_cents', OLD.all_new_cents,
    'spent_cents', OLD.spent_cents, 'board_feet', OLD.board_feet, 'panel_square_mm', OLD.panel_square_mm,
    'weight_pounds', OLD.weight_pounds, 'wood_weight_pounds', OLD.wood_weight_pounds, 'pieces_used', OLD.pieces_used, 'hardware_used', OLD.hardware_used), NULL);
END;
