### Words of tautline: readings, lines, sites, verdicts.

per-cent = { $figure } %

## Verdicts
met = met
not-met = not met
not-yet-shown = not yet shown

## Lines
line-not-read = { $site }, line { $line }: not read. It is left out, not counted as zero.
slope-missing = { $site }, line { $line } has no slope, so its gaps and plants per area stay along the ground. A “slope (%)” column in the lines table would do.
widths-missing = Plants per area of { $what } can't be worked out: the width of every live plant is needed, and some are missing on { $lines }.
line-partly-read = { $site }, line { $line }: read only up to { $to } of { $length }. It is left out of the estimate; --use-partly-read takes the part that was read.
line-length-missing = { $site }, line { $line }: how long is the line? Give a “line length” column, a lines table, or --line-length.
line-planned-without-record = { $site }, line { $line } is planned and has no record for { $year }. Was it read? Lines without a record are not zeros.
line-read-again = { $site }, line { $line } was read more than once in { $year }: the reading by { $used } is used, the one by { $other } is kept for comparison.
finer-than-recorded = { $site }, line { $line }: a gap rule of { $asked } is finer than the { $recorded } it was read under. Gaps that small were never written down, so it can't be worked out.
lengths-cannot-be-re-ruled = { $site }, line { $line }: only lengths were written down, so it can never be brought to another gap rule. Under one of { $asked } its cover could be anything from { $low } to { $high }.
lengths-only-overlap-unknown = { $site }, line { $line }: lengths only. How far its species overlap can't be known, so canopy cover is given as a low and a high figure.
lengths-pass-the-line = { $site }, line { $line }: the lengths of { $species } add up to more than the line. Check them against the sheet.
plant-marks-missing = { $site }, line { $line }: the gap rule stops at the plant and the plants were not marked, so under another limit cover lies between a low and a high figure.
beyond-the-tape = { $site }, line { $line }: an intercept stops at { $stop }, beyond the tape of { $length }. Only the part on the line counts.
wholly-beyond-the-tape = { $site }, line { $line }: an intercept stops at { $stop } and lies wholly beyond the tape of { $length }. Another unit, or another line?
rows-set-aside = { $site }, line { $line }: { $rows ->
    [one] one row was
   *[other] { $rows } rows were
} set aside, so its cover is not whole.
line-left-out = { $site }, line { $line } is left out of the site's figures until that is settled.
species-not-listed = { $species } is not on the plant list. It counts, since the reader wrote it down; add it to the list to settle that.

## Protocols
protocols-differ = These lines were read under unlike protocols ({ $protocols }). They differ in: { $rules }.
protocols-apart = No arithmetic brings these readings together ({ $rules } differ), so there is no estimate from them all. Read one way, they may differ by up to 2.6 times from another (Wambolt et al. 2006).
brought-to-common-ground = They were brought to the coarsest rule they share: gaps up to { $limit }, what counts under all of them.
rest-could-matter = What else differs in the gap rule could move the lines' mean cover between { $low } and { $high }.
rest-not-computable = These differences can't be worked out from the readings: { $rules }. On the same ground, two ways of reading have come out up to 2.6 times apart (Wambolt et al. 2006).
strata-without-area = { $site }: the area of { $strata } is not known, so lines are taken as one sample. Give a strata table with “stratum” and “area (ha)”.
stratum-not-read = { $site }: no line was read in { $strata }. The figure speaks for the other strata only.

## Rules of a protocol
rule-cover = meaning of cover
rule-counts = what counts
rule-dead = dead canopy
rule-gap-limit = gap limit
rule-gap-equal = a gap of exactly the limit
rule-gap-two-plants = a gap between two plants of a species
rule-gap-across-species = a gap in which another species stands
rule-gap-between-species = a gap between two species
rule-gap-across-dead = a gap in which dead wood stands
rule-gap-line-end = a gap at the line's end
taken-bridged = is read as canopy
taken-breaks = stays open
taken-no-gap-closed = none; every edge as written
taken-apart = worked out apart from live
taken-canopy-outline = canopy outline
taken-woody = trees, shrubs and subshrubs

## Sources
source-cochran-1977-mean = Cochran 1977, 2.4–2.6
source-cochran-1977-ratio = Cochran 1977, 6.4
source-cochran-1977-clusters = Cochran 1977, 9A.1
source-cochran-1977-strata = Cochran 1977, 5.3–5.4
source-cochran-1977-combined-ratio = Cochran 1977, 6.11
