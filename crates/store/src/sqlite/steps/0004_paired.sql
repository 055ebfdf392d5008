-- Devices that were let in to this copy of the notebook over the crew's own network. Of what a device shows at the door
-- only the SHA-256 is kept. None of this leaves the file except by copying it.
CREATE TABLE paired (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    token_sha256 TEXT NOT NULL UNIQUE,
    since TEXT NOT NULL,
    withdrawn TEXT
) STRICT, WITHOUT ROWID;
