-- [prices] Every price.
SELECT * FROM price ORDER BY id;

-- [price_add]
INSERT INTO price (material, counted, unit, length_320ths_mm, treated, cents, lead_days, most_available, supplier, seen_on)
VALUES (:material, :counted, :unit, :length, :treated, :cents, :lead_days, :most_available, :supplier, :seen_on) RETURNING id;

-- [price_set]
UPDATE price SET material = :material, unit = :unit, cents = :cents, lead_days = :lead_days, most_available = :most_available,
  supplier = :supplier, seen_on = :seen_on
WHERE id = :id;

-- [price_remove]
DELETE FROM price WHERE id = :id;
