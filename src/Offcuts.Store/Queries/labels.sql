-- [blanks] Codes printed before their piece exists, in the order of issue.
SELECT code FROM blank ORDER BY id;

-- [blank_add]
INSERT INTO blank (code) VALUES (:code);

-- [blank_taken]
DELETE FROM blank WHERE code = :code;

-- [label_queue] Codes whose label waits to be printed, in order.
SELECT code FROM label_queue ORDER BY id;

-- [label_add] A label that waits already keeps its place.
INSERT INTO label_queue (code) VALUES (:code) ON CONFLICT (code) DO NOTHING;

-- [label_printed]
DELETE FROM label_queue WHERE code = :code;
