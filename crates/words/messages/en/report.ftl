### Words of tautline: report.

report-title = Shrub cover along the tape
report-about =
    Canopy was read along straight tapes. Cover is the share of the tape under live canopy of the plants that count.
    The lines that were read stand for the site, so every figure carries the error that comes from not having read others.
report-nothing = No line could be worked out, so there is nothing to report.
report-no-lines = No line of this site could be worked out; what must be settled stands below.
report-no-goal = No goal was set for this site, so there is no verdict.

## Headings
report-sites = Sites
report-goal = Goal for { $what }: { $goal }
report-short = { $what }, { $goal }: { $verdict }
report-goal-source = The goal comes from: { $source }
report-lines = The lines
report-lines-table = Cover of each line
report-figures = All figures
report-figures-table = Figures of the site with their error
report-species = By species
report-species-table = Cover of each species, line by line
report-gaps = Gaps between shrubs
report-gaps-table = Gaps between shrubs by their length, all lines together
report-findings = What was found
report-reading-findings = Found on reading the files
report-rules = Rules of the reading
report-cautions = Before this is used
report-files = Files that were read
report-chain = How this came about, down to the readings

## A verdict for anybody
report-comes-to = On the lines that were read, { $what } comes to { $value }.
report-comes-between = From what was written down, { $what } can only be placed between { $low } and { $high } on the lines that were read.
report-is-or-more = Other lines would have given another figure; allowing for that, it is { $lower } or more, with { $confidence } confidence.
report-is-or-less = Other lines would have given another figure; allowing for that, it is { $upper } or less, with { $confidence } confidence.
report-is-within = Other lines would have given another figure; allowing for that, it is { $lower } or more and { $upper } or less, each with { $confidence } confidence.
report-may-be-either = Other lines would have given another figure; allowing for that, it may be as low as { $lower } or as high as { $upper } (each bound with { $confidence } confidence), so the goal may be met or not.

## A verdict for a specialist
report-specialist = Estimate { $value }, SE { $se }, { $df } df; { $estimator } ({ $source }), { $method }; { $bounds }.
report-lower-bound = one-sided { $confidence } lower bound { $lower }
report-upper-bound = one-sided { $confidence } upper bound { $upper }
report-both-bounds = one-sided { $confidence } bounds { $lower } and { $upper }

## Pictures
report-picture-goal = { $what } against the goal
report-picture-goal-said = { $figure }. The goal is { $goal }. Verdict: { $verdict }.
report-picture-figures = Cover with its interval
report-picture-line = Line { $line }, drawn to scale
report-picture-line-said = The tape of line { $line } is { $length } long; canopy over it: { $cover }.
report-row-at-least = { $value }, at least { $bound }
report-row-at-most = { $value }, at most { $bound }
report-row-between = { $value }, { $low } to { $high }
report-row-no-bound = { $value }; no bound, since { $reason }
report-goal-mark = goal: { $goal }
report-axis = per cent of the line
report-mark-estimate = estimate
report-mark-between = known only between these
report-mark-lines = single lines
report-mark-one-sided = one-sided bound, { $confidence }
report-mark-bounds = one-sided bounds on both sides, { $confidence } each
report-mark-interval = two-sided interval, { $confidence }
report-mark-met = meets the goal
report-mark-live = live canopy
report-mark-closed = gap closed by the rule
report-mark-dead = dead canopy
report-mark-canopy = counted canopy, overlap once
report-mark-unread = not read
report-mark-unplaced = length without a place
report-lengths-only = Only lengths were written down; they have no place on the tape.
report-between-species = between species
report-line-name = Line { $line }

## Tables
report-column-df = df
report-column-closed = gaps closed
report-column-class = length of the gap
report-column-count = gaps
report-column-cut-off = cut off by the line's end
report-column-share = share of the lines
report-not-counted = { $species } (doesn't count)
report-from-to = { $low } to { $high }
report-over = over { $low }
report-none = –

## Foot
report-caution-advice = This page advises; people decide. A cover figure alone doesn't say whether land is in good order.
report-caution-rule = A figure read under one set of rules can't be set beside one read under another: the rules alone can move it more than most years do.
report-caution-local = Local codes, agreements for the land and licensed practice come before anything here.
report-file = { $name }, SHA-256 begins { $sha }

## Cover against the gap rule
report-curve = Cover against the gap rule
report-curve-none = Some lines can't be worked out under another gap rule (lengths without positions, or plants without marks), so there is no curve.
report-curve-said = Read with gaps under { $recorded } closed, canopy cover is { $cover }; closing gaps up to { $widest } would make it { $most } on the same lines. A finer rule can't be worked out: gaps that small were never written down.
report-curve-limit = gaps closed up to ({ $unit })
report-curve-cover = canopy cover (%)
report-curve-recorded = rule that was read
report-curve-unknown = finer than was read
