-- Where every revision of a record is somebody's parent, all are heads, as in `tautline_survey::record::heads`.
WITH head AS (
    SELECT seq FROM revision r
    WHERE NOT EXISTS (SELECT 1 FROM parent p WHERE p.record = r.record AND p.parent = r.id)
)
SELECT seq, head, sha256, content FROM revision
WHERE seq IN head
   OR record IN (SELECT record FROM revision EXCEPT SELECT record FROM revision WHERE seq IN head)
ORDER BY seq
