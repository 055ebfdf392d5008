INSERT INTO revision (id, sha256, record, action, counter, head, content)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
ON CONFLICT (id, sha256) DO NOTHING
