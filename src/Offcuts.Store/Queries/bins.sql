-- [bins] Every bin, in the order of entry.
SELECT * FROM bin ORDER BY id;

-- [bin] One bin.
SELECT * FROM bin WHERE code = :code;

-- [bin_add]
INSERT INTO bin (code, hardware, unit, quantity, place, note) VALUES (:code, :hardware, :unit, :quantity, :place, :note);

-- [bin_set]
UPDATE bin SET hardware = :hardware, unit = :unit, quantity = :quantity, place = :place, note = :note WHERE code = :code;

-- [bin_take]
UPDATE bin SET quantity = quantity - :count WHERE id = :id;
