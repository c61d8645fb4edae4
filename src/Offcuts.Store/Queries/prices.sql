-- [prices] Every price.
SELECT * FROM price ORDER BY id;

-- [materials] Every material that anything in the yard speaks of; counted things once for each unit.
SELECT material AS material, 0 AS counted, '' AS unit FROM piece
UNION SELECT hardware, 1, unit FROM bin
UNION SELECT material, 0, '' FROM required_cut
UNION SELECT hardware, 1, unit FROM hardware_need
UNION SELECT material, counted, unit FROM price;

-- [price_add]
INSERT INTO price (material, counted, unit, length_320ths_mm, treated, cents, lead_days, most_available, supplier, seen_on)
VALUES (:material, :counted, :unit, :length, :treated, :cents, :lead_days, :most_available, :supplier, :seen_on) RETURNING id;

-- [price_set]
UPDATE price SET material = :material, unit = :unit, cents = :cents, lead_days = :lead_days, most_available = :most_available,
  supplier = :supplier, seen_on = :seen_on
WHERE id = :id;

-- [price_remove]
DELETE FROM price WHERE id = :id;
