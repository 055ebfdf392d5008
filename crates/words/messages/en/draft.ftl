# What is said while a line is being read, of one row each time.
remark-stop-before-start = Stop { $stop } lies before start { $start }: swap them?
remark-zero-length = Start and stop are both { $start }: nothing lies between them. Take the row out, or type one of them again.
remark-length-zero = This length is nought. Take the row out, or type it again.
remark-species-not-named = No species was named.
remark-species-not-listed = { $species } is not in the plant list. It is kept as it is.
remark-finer-than-the-division = { $edge } is finer than { $finest }, the finest division of the protocol. It is kept as it is.
remark-beyond = { $stop } lies beyond the tape, which ends at { $length }. Only the part on the tape counts.
remark-wholly-beyond = { $stop } lies beyond the tape, which ends at { $length }, and so does the start. Was it read past the stake?
remark-overlap = It overlaps { $species } from { $start } to { $stop }. What they share counts once. Join the two?
remark-written-twice = { $species } from { $start } to { $stop } is written twice. It counts once. Take one row out?
remark-gap-joined = Gap { $gap }, under the rule of { $limit }: joined.
remark-gap-joined-species = Gap { $gap } between two species, under the rule of { $limit }: joined.
remark-gap-joined-end = Gap { $gap } to the end of the tape, under the rule of { $limit }: joined.
remark-dead-joined = Dead part { $gap }, under the rule of { $limit }, touches live canopy: read as live.
