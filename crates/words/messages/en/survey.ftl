### Words of tautline: readings, lines, sites, verdicts.

per-cent = { $figure } %

## Verdicts
met = met
not-met = not met
not-yet-shown = not yet shown

## Lines
line-not-read = { $site }, line { $line }: not read. It is left out, not counted as zero.
line-partly-read = { $site }, line { $line }: read only up to { $to } of { $length }. It is left out of the estimate; --use-partly-read takes the part that was read.
line-length-missing = { $site }, line { $line }: how long is the line? Give a “line length” column, a lines table, or --line-length.
line-planned-without-record = { $site }, line { $line } is planned and has no record for { $year }. Was it read? Lines without a record are not zeros.
line-read-again = { $site }, line { $line } was read more than once in { $year }: the reading by { $used } is used, the one by { $other } is kept for comparison.
finer-than-recorded = { $site }, line { $line }: a gap rule of { $asked } is finer than the { $recorded } it was read under. Gaps that small were never written down, so it can't be worked out.
lengths-cannot-be-re-ruled = { $site }, line { $line }: only lengths were written down, so another gap rule can't be worked out for it. Lengths without positions can never be re-ruled.
lengths-only-overlap-unknown = { $site }, line { $line }: lengths only. How far its species overlap can't be known, so canopy cover is given as a low and a high figure.
lengths-pass-the-line = { $site }, line { $line }: the lengths of { $species } add up to more than the line. Check them against the sheet.
plant-marks-missing = { $site }, line { $line }: the gap rule stops at the plant and the plants were not marked, so under another limit cover lies between a low and a high figure.
beyond-the-tape = { $site }, line { $line }: an intercept stops at { $stop }, beyond the tape of { $length }. Only the part on the line counts.
species-not-listed = { $species } is not on the plant list. It counts, since the reader wrote it down; add it to the list to settle that.
