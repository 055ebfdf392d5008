### Words of tautline: readings, lines, sites, verdicts.

per-cent = { $figure } %

## Verdicts
met = met
not-met = not met
not-yet-shown = not yet shown

## Lines
line-not-read = { $site }, line { $line }: not read. It is left out, not counted as zero.
slope-missing = { $site }, line { $line } has no slope, so its gaps and plants per area stay along the ground. A “slope (%)” column in the lines table would do.
nothing-found-bounds = { $site }: nothing was found on { $lines } lines. With { $confidence } confidence at most { $share } of such lines meet any; cover where they do, stated with --where-present, would bound the cover of the site.
nothing-found-and-stated = { $site }: nothing was found on { $lines } lines. With { $confidence } confidence at most { $share } of such lines meet any, and cover is at most { $upper } with the { $stated } you stated for lines that do.
few-lines-or-intercepts = { $site }, { $what }: it stands on { $lines ->
    [one] one line
   *[other] { $lines } lines
} and { $intercepts ->
    [one] one intercept
   *[other] { $intercepts } intercepts
}. In simulated surveys with as few, 90 % intervals held the true cover { $lowest } to { $highest } times in 100.
    .alike = { $site }, { $what }: it stands on { $lines ->
        [one] one line
       *[other] { $lines } lines
    } and { $intercepts ->
        [one] one intercept
       *[other] { $intercepts } intercepts
    }. In simulated surveys with as few, 90 % intervals held the true cover { $lowest } times in 100.
widths-missing = Plants per area of { $what } can't be worked out: the width of every live plant is needed, and some are missing on { $lines }.
line-partly-read = { $site }, line { $line }: read only up to { $to } of { $length }. It is left out of the estimate; --use-partly-read takes the part that was read.
line-read-again = { $site }, line { $line } was read more than once in { $year }: the reading by { $used } is used, the one by { $other } is kept for comparison.
finer-than-recorded = { $site }, line { $line }: a gap rule of { $asked } is finer than the { $recorded } it was read under. Gaps that small were never written down, so it can't be worked out.
lengths-cannot-be-re-ruled = { $site }, line { $line }: only lengths were written down, so it can never be brought to another gap rule. Under one of { $asked } its cover could be anything from { $low } to { $high }.
lengths-only-overlap-unknown = { $site }, line { $line }: lengths only. How far its species overlap can't be known, so canopy cover is given as a low and a high figure.
plant-marks-missing = { $site }, line { $line }: the gap rule stops at the plant and the plants were not marked, so under another limit cover lies between a low and a high figure.
rows-set-aside = { $site }, line { $line }: { $rows ->
    [one] one row was
   *[other] { $rows } rows were
} set aside, so its cover is not whole.
line-left-out = { $site }, line { $line } is left out of the site's figures until that is settled.

## Checks
the-reader = the reader
fits-another-unit = { $site }, line { $line }: an intercept stops at { $stop }, beyond the tape of { $length }, and read as { $fits } instead of { $written } the same numbers lie on it. Write the unit the line was read in.
wholly-beyond-the-tape = { $site }, line { $line }: an intercept stops at { $stop } and lies wholly beyond the tape of { $length }. Was it read past the stake, or does it belong to another line?
beyond-the-tape = { $site }, line { $line }: an intercept stops at { $stop }, beyond the tape of { $length }. Only the part on the line counts. Hold it against the sheet.
wholly-past-the-mark = { $site }, line { $line }: it was read to { $mark }, and an intercept from { $start } to { $stop } lies past that. Correct “read to” or the row.
past-the-mark = { $site }, line { $line }: it was read to { $mark }, and an intercept goes on to { $stop }. Only the part up to the mark counts.
mark-beyond-the-tape = { $site }, line { $line }: it was read to { $mark }, and the tape is { $length } long. Correct the one that is wrong.
line-length-missing = { $site }, line { $line }: how long is the line? Give a “line length” column, a lines table, or --line-length.
lengths-pass-the-line = { $site }, line { $line }: the lengths of { $species } add up to { $sum }, more than the { $read } that were read. Check them, and their unit, against the sheet.
tape-read-backwards = { $site }, line { $line }: all { $count } rows have the stop before the start. Was the tape read from its far end? Write the smaller number under start and the larger under stop.
tape-laid-the-other-way = { $site }, line { $line }: its canopy agrees with that of { $date } in { $mirrored } of its length when turned end for end, and in { $read } as it stands. Was the zero at the other stake?
overlap-within-species = { $site }, line { $line }: { $species } from { $start } to { $stop } overlaps { $species } that reaches to { $reached }. What they share counts once. Hold both rows against the sheet.
row-written-twice = { $site }, line { $line }: { $species } from { $start } to { $stop } is written twice. It counts once. Take one row out.
positions-out-of-order = { $site }, line { $line }: { $count ->
    [one] one row starts
   *[other] { $count } rows start
} before an earlier row of the same species, first { $species } at { $start }. A slip, or rows from another line?
positions-fall = { $site }, line { $line }: every row starts before the one above it, as if walked from the far end. Was the zero at its own stake?
gaps-under-the-rule = { $site } { $year }: { $reader } wrote { $count ->
    [one] one gap
   *[other] { $count } gaps
} under the rule of { $limit } as breaks, on { $lines ->
    [one] one line
   *[other] { $lines } lines
}. They are read as canopy, so no figure moves. If it wasn't meant, agree on the rule with the reader.
feet-and-inches-suspected = { $site }: decimals of a foot never pass .11 on { $edges } edges of { $lines }, as in { $example }. By chance that happens less than once in { $odds }. If these are feet and inches, head the columns “ft-in”.
digits-heap = Last digits of { $reader } heap: { $most } of { $edges } edges { $places ->
    [10] end in { $digit }
   *[other] stand on the same one of every { $places } divisions (number { $digit })
}, where { $even } would be even. By chance that happens less than once in { $odds } (chi-square { $statistic }, { $df } df). Cover hardly moves by it, but a tired or guessing reader shows so: talk to the reader.
line-read-twice = { $site }, line { $line } was read more than once on the same day (by { $readers }), and nothing says which reading speaks for it. Write 1, 2 under “pass”.
reading-written-twice = { $site }, line { $line }: every row is the same as on { $others }. A sheet entered twice under two names?
a-line = { $site }, line { $line }
a-line-on = { $site }, line { $line } ({ $date })
line-far-from-others = { $site }, line { $line }: cover of { $cover } lies far from { $median }, the middle of the { $lines } lines read there: { $distance } median deviations, where one site in a hundred passes { $limit } of itself. A slip, or a place that differs?
species-misspelt = { $species } isn't on the plant list ({ $count ->
    [one] one row
   *[other] { $count } rows
}). Was { $near } meant? It counts as written; correct it or add it to the list.
species-not-listed = { $species } isn't on the plant list ({ $count ->
    [one] one row
   *[other] { $count } rows
}). It counts, since the reader wrote it down; add it to the list.
species-new-to-site = { $site }: { $species } was on none of the earlier visits, and is there in { $year } on line { $line }. New, overlooked before, or a slip of the code?
line-planned-without-record = { $site }, line { $line } is planned and has no record for { $year }. Was it read? Lines without a record are not zeros.
date-missing = { $site }: { $count ->
    [one] one reading has
   *[other] { $count } readings have
} no date (line { $lines }). Without one they belong to no year.
observer-missing = { $site }: { $count ->
    [one] one reading names
   *[other] { $count } readings name
} no reader (line { $lines }). Readers can't be compared without their names.
outside-the-reading-window = { $site }: line { $lines } read on { $date }, outside the window of its protocol ({ $window }). Leaves and flower stalks may differ; say so in the report.
permission-needed = needed; nobody has given it yet
permission-given = { $from }
permission-given-until = { $from }, until { $until }
permission-missing = { $site }: line { $lines } read without a permission to enter that was written down. Ask before the next visit, and write who gave it and until when.
permission-ended = { $site }: line { $lines } read on { $date }, after { $until }, the last day of the permission to enter. Ask for it anew before the next visit.
settles-nothing = “{ $code }” ({ $site }, line { $line }) settles nothing: no such finding stands there. Take the row out, or correct it.
needs-correction = “{ $code }” ({ $site }, line { $line }) can't be settled by a word, since part of the reading can't be used as it stands. Correct the sheet.

## Protocols
protocols-differ = These lines were read under unlike protocols ({ $protocols }). They differ in: { $rules }.
protocols-apart = No arithmetic brings these readings together ({ $rules } differ), so there is no estimate from them all. Read one way, they may differ by up to 2.6 times from another (Wambolt et al. 2006).
brought-to-common-ground = They were brought to the coarsest rule they share: gaps up to { $limit }, what counts under all of them.
rest-could-matter = What else differs in the gap rule could move the lines' mean cover between { $low } and { $high }.
    .alike = What else differs in the gap rule leaves the lines' mean cover at { $low }, to the digits shown.
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
source-cochran-1977-two-ratios = Student 1908; Cochran 1977, 6.18
source-welch-1947 = Welch 1947; Satterthwaite 1946
source-meier-1953 = Graybill and Deal 1959; Meier 1953
rule-shortest = the shortest canopy that counts
rule-overlap = overlapping species
rule-side = side of the tape
rule-finest-division = finest division
rule-reading-window = reading window
rule-alive-without-leaves = what is alive without leaves
rule-flower-stalks = flower stalks
rule-tape = the tape
rule-wind-limit = wind limit
rule-heights = heights
