-- Revisions are only ever added. The two exceptions: `content` becomes null when somebody or some place must be
-- forgotten, and `seq` then moves to the end, so that whoever reads on from a cursor hears of it.
CREATE TABLE revision (
    seq INTEGER PRIMARY KEY,
    id TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    record TEXT NOT NULL,
    action TEXT NOT NULL,
    counter INTEGER NOT NULL,
    head TEXT NOT NULL,
    content TEXT,
    UNIQUE (id, sha256)
) STRICT;

CREATE INDEX revision_of_record ON revision (record);

CREATE TABLE parent (
    record TEXT NOT NULL,
    parent TEXT NOT NULL,
    child TEXT NOT NULL,
    PRIMARY KEY (record, parent, child)
) STRICT, WITHOUT ROWID;
