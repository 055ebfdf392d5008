-- The id that this copy of the notebook goes by on each computer that it was opened on. It is not part of the record
-- and never leaves the file except by copying it.
CREATE TABLE device (
    name TEXT PRIMARY KEY,
    id TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX revision_of_action ON revision (action);
