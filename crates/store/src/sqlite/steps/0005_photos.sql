-- The bytes of photos, under their own hash. Which photos there are is said by revisions alone; the index finds those that
-- name one, in a file that an older version wrote too. They go when the last revision that names them is blanked.
CREATE TABLE photo (
    sha256 TEXT PRIMARY KEY,
    bytes BLOB NOT NULL
) STRICT;

CREATE INDEX revision_of_photo ON revision (json_extract(content, '$.payload.sha256'))
    WHERE instr(head, '"kind":"photo"') > 0 AND content IS NOT NULL;
