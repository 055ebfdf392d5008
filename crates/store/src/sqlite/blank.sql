UPDATE revision SET content = NULL, seq = (SELECT max(seq) + 1 FROM revision)
WHERE id = ?1 AND sha256 = ?2 AND content IS NOT NULL
