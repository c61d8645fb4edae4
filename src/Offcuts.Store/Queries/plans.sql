-- [plans] Every kept plan, oldest first.
SELECT * FROM plan ORDER BY id;

-- [plan] One kept plan.
SELECT * FROM plan WHERE id = :id;

-- [plan_steps] The steps of every plan.
SELECT * FROM plan_step ORDER BY plan, piece;

-- [plan_steps_of] The steps of one plan.
SELECT * FROM plan_step WHERE plan = :plan ORDER BY piece;

-- [plan_add]
INSERT INTO plan (made_on, document) VALUES (:made_on, :document) RETURNING id;

-- [plan_set_document]
UPDATE plan SET document = :document WHERE id = :id;

-- [plan_set_hardware]
UPDATE plan SET hardware = :hardware WHERE id = :id;

-- [plan_step_add]
INSERT INTO plan_step (plan, piece, state) VALUES (:plan, :piece, 'waiting');

-- [plan_step_set]
UPDATE plan_step SET state = :state, actual = :actual WHERE plan = :plan AND piece = :piece;

-- [ledger] What was saved, oldest first.
SELECT * FROM ledger ORDER BY id;

-- [ledger_add]
INSERT INTO ledger (day, stage, plan, all_new_cents, spent_cents, board_feet, panel_square_mm, weight_pounds, wood_weight_pounds, pieces_used, hardware_used)
VALUES (:day, :stage, :plan, :all_new, :spent, :board_feet, :panel, :weight, :wood_weight, :pieces_used, :hardware_used);
