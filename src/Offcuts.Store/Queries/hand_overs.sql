-- [beds] Every bed, in the order of entry.
SELECT * FROM bed ORDER BY id;

-- [bed_add]
INSERT INTO bed (name, longest_320ths_mm, weight_thousandths_lb, volume_thousandths_cu_ft) VALUES (:name, :longest, :weight, :volume);

-- [bed_set]
UPDATE bed SET name = :name, longest_320ths_mm = :longest, weight_thousandths_lb = :weight, volume_thousandths_cu_ft = :volume WHERE name = :name;

-- [bed_remove]
DELETE FROM bed WHERE name = :name;

-- [hand_overs] Every hand-over, oldest first.
SELECT * FROM hand_over ORDER BY id;

-- [hand_over_items] What went with each, in the order of its list.
SELECT * FROM hand_over_item ORDER BY hand_over, id;

-- [hand_over_add]
INSERT INTO hand_over (transfer, day, kind, to_whom, price_cents, due_on, due, worth_cents, weight_thousandths_lb)
VALUES (:transfer, :day, :kind, :to_whom, :price, :due_on, :due, :worth, :weight) RETURNING id;

-- [hand_over_item_add]
INSERT INTO hand_over_item (hand_over, code, count, worth_cents, weight_thousandths_lb) VALUES (:hand_over, :code, :count, :worth, :weight);

-- [hand_over_confirm]
UPDATE hand_over SET confirmed_on = :day WHERE id = :id;

-- [hand_over_item_back]
UPDATE hand_over_item SET back = :back WHERE hand_over = :hand_over AND code = :code;

-- [hand_over_item_settled]
UPDATE hand_over_item SET settled = :settled, settled_as = :settled_as WHERE hand_over = :hand_over AND code = :code;

-- [hand_over_entry] The entry of the history that made a hand-over; the last where it was taken back and done again.
SELECT coalesce(max(entry), 0) FROM change WHERE table_name = 'hand_over' AND row_id = :id AND before IS NULL;

-- [hand_over_ever] The codes of what ever went by a hand-over of this name, taken back or not.
SELECT DISTINCT code FROM change
WHERE table_name = 'hand_over_item' AND entry IN (
  SELECT entry FROM change WHERE table_name = 'hand_over' AND json_extract(coalesce(after, before), '$.transfer') = :transfer);

-- [hand_over_unlabelled] What went by this entry while its label still waited: what goes leaves the queue.
SELECT code FROM change WHERE entry = :entry AND table_name = 'label_queue' AND after IS NULL;

-- [confirmed_in_entry] The confirmed hand-over that an entry made or confirmed; 0 where it did neither.
SELECT coalesce(max(hand_over.id), 0) FROM change JOIN hand_over ON hand_over.id = change.row_id
WHERE change.entry = :entry AND change.table_name = 'hand_over' AND hand_over.confirmed_on IS NOT NULL;

-- [taken_in] A hand-over of another yard that was taken in.
SELECT * FROM taken_in WHERE transfer = :transfer;

-- [taken_in_all] All of them, oldest first.
SELECT * FROM taken_in ORDER BY id;

-- [taken_in_add]
INSERT INTO taken_in (transfer, day, from_whom, kind, due_on, due) VALUES (:transfer, :day, :from_whom, :kind, :due_on, :due);

-- [brought] What a piece brought along.
SELECT * FROM brought WHERE code = :code;

-- [pieces_from_elsewhere] Every piece that came from another yard, but not what was catalogued here first and only came home.
SELECT piece.*, stage.name AS reserved_name
FROM piece
JOIN brought ON brought.code = piece.code
LEFT JOIN stage ON stage.id = piece.reserved_for
WHERE EXISTS (
  SELECT 1 FROM change WHERE table_name = 'taken_in' AND entry = (SELECT min(entry) FROM change WHERE code = piece.code))
ORDER BY brought.id;

-- [arrivals] By which hand-overs each piece came into this yard, one after the other.
SELECT brought.code AS code, taken_in.transfer AS transfer
FROM brought
JOIN taken_in ON taken_in.transfer = brought.transfer
  OR taken_in.transfer IN (SELECT json_extract(value, '$[0]') FROM json_each(brought.earlier))
ORDER BY brought.id, taken_in.id;

-- [brought_set] By what it came the last time, and what it brought in all.
INSERT INTO brought (code, transfer, was, history, earlier) VALUES (:code, :transfer, :was, :history, :earlier)
ON CONFLICT (code) DO UPDATE SET transfer = excluded.transfer, was = excluded.was, history = excluded.history, earlier = excluded.earlier;

-- [code_was_issued_elsewhere] Whether anything ever had this code by another change than taking in this hand-over, undone or not.
SELECT EXISTS (
  SELECT 1 FROM change
  WHERE code = :code AND entry NOT IN (
    SELECT entry FROM change WHERE table_name = 'taken_in' AND json_extract(coalesce(after, before), '$.transfer') = :transfer));
