### Words of tautline: report.

report-title = Shrub cover along the tape
report-about =
    Canopy was read along straight tapes. Cover is the share of the tape under live canopy of the plants that count.
    The lines that were read stand for the site, so every figure carries the error that comes from not having read others.
report-skip = To the report
report-nothing = No line could be worked out, so there is nothing to report.
report-no-lines = No line of this site could be worked out; what must be settled stands below.
report-no-goal = No goal was set for this site, so there is no verdict.
report-no-goal-short = no goal

## First page
report-sites = Sites and verdicts
report-sites-table = Canopy cover and verdict of each site
report-column-site = site
report-column-verdict = verdict
report-column-to-settle = to settle
report-short = { $what }, { $goal }: { $verdict }
report-parts-of = Parts of the report of { $site }

## What was read
report-fact-read = Read
report-fact-lines = Lines
report-fact-lines-said = { $planned ->
    [0] { $used } in the figures
   *[other] { $used } in the figures, { $planned } planned
}
report-basis-lines = { $lines ->
    [one] one line
   *[other] { $lines } lines
}
report-fact-readers = Readers
report-fact-recorders = Recorders
report-fact-noted = Noted on the day
report-rules = Rules of the reading

## What was asked
report-goal = Asked: { $what }, { $goal }
report-promised = Promised beforehand: “{ $name }”
report-goal-source = The goal comes from: { $source }

## Headings
report-figures = All figures
report-figures-table = Figures of the site with their error
report-lines = The lines
report-lines-table = Cover of each line
report-species = Species and growth forms
report-species-table = Live cover of each species
report-forms-table = Live cover of each growth form, overlap within a form counted once
report-groups-table = Live cover of each group, overlap within a group counted once
report-species-by-line = Live cover of each species, line by line
report-composition-about = Composition is the cover of what counts over the summed cover of all that counts. A species that doesn't count is shown and goes into no other figure.
report-gaps = Gaps between shrubs
report-gaps-table = Gaps between shrubs by their length, all lines together
report-gaps-about = All lines together. Grasses and forbs may stand in these gaps. One that the line's end cuts off is at least this long.
report-gaps-axis = share of the lines, %
report-gaps-none = The gaps can't be shown: only lengths were written down, or the lines were sorted into unlike classes.
report-heights = Heights
report-heights-table = Mean height of live plants: the mean of the lines' means
report-heights-none = No heights were written down.
report-density = Plants per area
report-density-table = Plants per area, from the greatest width of each plant at right angles to the line
report-density-none = The widths that plants per area are worked out from were not written down, or not all of them.
report-years = Years side by side
report-years-table = Canopy cover in each year, each under its own protocol
report-years-no-claim = Each year stands under its own protocol, with its own lines and its own error. Set side by side they are no claim that cover changed.
report-years-unlike = The years were read under unlike rules; they differ in: { $rules }. The rules alone can move the figure more than the years did.
report-findings = Checks
report-looked-for = The readings were looked through for { $kinds } kinds of slips and oddities.
report-excerpt = The row as it was typed
report-beside = What weighs on this figure
report-more-to-look-at = { $count } things to look at, listed under the checks
report-reading-findings = Found on reading, beside the sites above
report-work = The work shown
report-work-site = From the lines to the site
report-work-overlap = The lines one by one, as done on paper: the stretches are the joined ones, with overlap counted once and the gaps under the rule closed.
report-work-readings = The readings of this line, as typed
report-methods = Methods
report-readings = Appendix: every reading, as typed
report-readings-about = Each row names the row of its file. A reading that went into no figure stands here too.
report-cautions = Before this is used
report-files = Files that were read

## A verdict for anybody
report-comes-to = On the lines that were read, { $what } comes to { $value }.
report-comes-between = From what was written down, { $what } can only be placed between { $low } and { $high } on the lines that were read.
    .alike = From what was written down, { $what } is { $low } on the lines that were read, to the digits shown.
report-lies-between = Other lines would have given another figure; allowing for that, it lies between { $low } and { $high }, with { $confidence } confidence.
    .alike = Other lines would have given another figure; allowing for that, it is { $low }, to the digits shown, with { $confidence } confidence.
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
report-picture-line-canopy = Canopy stands from { $stretches }.
report-picture-line-closed = Gaps closed by the rule: { $count }, together { $length }.
report-picture-marks = What the marks on the tapes mean
report-marks-said = Signs for live canopy, closed gaps, dead canopy and counted canopy, each with its words.
report-row-at-least = { $value }, at least { $bound }
report-row-at-most = { $value }, at most { $bound }
report-row-between = { $value }, { $low } to { $high }
    .alike = { $value }
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
report-column-plot = plot
report-column-closed = gaps closed
report-column-class = length of the gap
report-column-count = gaps
report-column-cut-off = cut off by the line's end
report-column-share = share of the lines
report-column-cover = cover
report-column-composition = composition
report-column-met-on = met on
report-column-height = height
report-column-density = plants per area
report-column-year = year
report-column-protocol = protocol
report-column-row = row
report-column-species = species
report-column-start = start
report-column-stop = stop
report-column-width = width
report-column-state = state
report-column-plant = plant
report-column-note = note
report-protocol-short = { $name } ({ $fingerprint })
report-undated = undated
report-pass = pass { $pass }
report-not-read = not read
report-of-length = { $read } of { $length }
report-lines-of = { $all ->
    [one] { $lines } of one line
   *[other] { $lines } of { $all } lines
}
report-not-counted = { $species } (doesn't count)
# no-break spaces: a range stays in one row
report-from-to = { $low }{"\u00A0"}to{"\u00A0"}{ $high }
    .alike = { $low }
report-over = over { $low }
report-none = –

## Foot
report-caution-advice = This page advises; people decide. A cover figure alone doesn't say whether land is in good order.
report-caution-rule = A figure read under one set of rules can't be set beside one read under another: the rules alone can move it more than most years do.
report-caution-local = Local codes, agreements for the land and licensed practice come before anything here.
report-file = { $name }, SHA-256 begins { $sha }
report-fingerprint = Fingerprint of the data: { $print } (SHA-256 of the files' own SHA-256s, sorted, one a line). The same files and the same questions give the same page.
report-sheet-foot = { $title } · data { $print }
report-sheet-of = {" "}of{" "}

## Cover against the gap rule
report-curve = Cover against the gap rule
report-curve-none = Some lines can't be worked out under another gap rule (lengths without positions, or plants without marks), so there is no curve.
report-curve-said = Read with gaps under { $recorded } closed, canopy cover is { $cover }; closing gaps up to { $widest } would make it { $most } on the same lines. A finer rule can't be worked out: gaps that small were never written down.
report-curve-limit = gaps closed up to ({ $unit })
report-curve-cover = canopy cover (%)
report-curve-recorded = rule that was read
report-curve-unknown = finer than was read

## What changed, what comes next
report-changed = What changed
report-first-visit = No earlier year is among these readings, so there is nothing to set this one beside.
report-next = What comes next
report-next-settle = Settle first what must be settled: { $count ->
    [one] one thing is
   *[other] { $count } things are
} listed under what weighs on this figure.
report-next-lines = Read { $more ->
    [one] one more line
   *[other] { $more } more lines
} of this length under the same rules, if the goal has to be settled.
report-next-plots = Read { $more ->
    [one] one more plot
   *[other] { $more } more plots
} of such lines under the same rules, if the goal has to be settled.
report-next-visit = To follow change, read the same lines again under the same rules, at the same time of the year ({ $day } was the last day of reading) and at the same stage of growth.
report-next-visit-undated = To follow change, read the same lines again under the same rules, at the same time of the year and at the same stage of growth, and write down the day.
report-prints = To know the readings again
report-print = { $title }: { $print }

## Typesetting
template-wrong = The template { $file } fails in row { $row }, column { $column }: { $said }.{ $hint }
template-nowhere = The report can't be typeset: { $said }.{ $hint }
template-hint = {" "}{ $hint }.
template-too-large = { $file } is larger than { $most } MB and isn't read as part of a template.
report-made = What it is made of
report-files-others = { $files ->
    [one] and one more, in which no reading of this report stands.
   *[other] and { $files } more, in which no reading of this report stands.
}
