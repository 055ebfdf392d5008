-- Where every revision of a record is somebody's parent, all are heads, as in `tautline_survey::record::heads`.
SELECT seq, head, sha256, content FROM revision r
WHERE NOT EXISTS (SELECT 1 FROM parent p WHERE p.record = r.record AND p.parent = r.id)
   OR NOT EXISTS (
        SELECT 1 FROM revision o WHERE o.record = r.record
        AND NOT EXISTS (SELECT 1 FROM parent p WHERE p.record = o.record AND p.parent = o.id)
   )
ORDER BY seq
