-- One row for each batch that changed something: the last `seq` of it, and a mark that covers everything up to there.
-- A device that shares in this notebook notices by the marks that it was set back to a backup.
CREATE TABLE batch (
    upto INTEGER PRIMARY KEY,
    mark TEXT NOT NULL
) STRICT;

-- What was there before counts as one batch. No device has read it yet, so its mark need only be its own.
INSERT INTO batch SELECT max(seq), lower(hex(randomblob(32))) FROM revision HAVING count(*) > 0;

-- What this copy of the notebook goes by, such as the port that it is served on.
CREATE TABLE setting (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
