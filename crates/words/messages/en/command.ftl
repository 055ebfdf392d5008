### Words of tautline: the command.

## Help
help-tautline = Cover along a taut tape: from line readings to cover, an honest error and a verdict.
help-cover = The cover of each line
help-assess = The cover of each site, how sure it is, and the verdict on a goal
help-check = Look readings through for slips: what must be settled, what is worth a look
help-check-csv = Print a table of findings, ready to be signed and read back
help-sheet = Print what was read as a typed sheet, ready to be typed on (docs/typed-sheet.md)
help-sites = Canopy cover of many sites, one row each: how sure it is, and the verdicts
help-demo = Write a demo: an invented site with its readings, and the truth behind them
help-completions = Print completions for a shell
help-man = Print the man page
help-protocols = List the protocols that ship with tautline, with their sources
help-files = Files or folders with readings, lines, plants, strata, goals and protocols; “-” reads standard input
help-json = Print data as JSON (described in docs/json.md)
help-csv = Print data as delimited text
help-explain = Print how each figure came about, down to the readings
help-work = Print the arithmetic as done on paper
help-gaps = Print the gaps between the plants that count, one by one and by class
help-protocol = The protocol the lines were read under: a file, or the name of a shipped one
help-gap-rule = Another, coarser gap limit, such as “4 in”
help-gap-classes = Where the classes of gaps begin, such as “25, 50, 100, 200 cm” (those are the default)
help-count = What counts: growth forms or plant codes, with commas; “woody” for the woody forms
help-line-length = Length of lines that state none, such as “65 ft”
help-unit = What bare numbers mean: in, cm, m, “decimal ft”, “ft-in”
help-decimal = The decimal mark: point or comma
help-site = The site, for files without that column
help-year = One year only
help-confidence = Confidence of intervals and verdicts in per cent
help-method = Interval method: logit-t-effective (the default), logit-t, student-t or bca
help-by = Also each species, form or group
help-goal = The goal, such as “at least 15 %” or “shrub: 15..25 %”
help-report = Write the report of the sites to this file, as a page for a browser
help-report-of = Write the report of all sites, or one for each site, as a page, text or PDF; or hold one against the readings
help-report-into = The file to write (.html, .txt, .pdf), or a folder for one report a site
help-report-as = In a folder: html (the default), text or pdf
help-report-for = For whom: specialist (everything, the default), landowner, board or class; the figures are the same
help-report-template = For PDF: a folder whose files take the place of those that come with tautline (docs/print.md)
help-report-paper = For PDF: a4 (the default) or letter
help-report-day = For PDF: the day that the file gives as its own; the last day of reading where none is given
help-report-archival = For PDF: for keeping, as PDF/A-2a
help-report-resume = In a folder: leave alone each report that would come out the same
help-report-verify = Say whether the readings behind this report stand as they did when it was written
help-claim = What the claim is about: site (lines or plots are the units) or plot (each by itself)
help-on-the-level = Gap classes and plants per area on the level, by the slope of each line, not along the ground (cover needs no such thing)
help-use-partly-read = Take the part that was read of lines read in part
help-where-present = Cover where shrubs are present, in per cent, for sites on which nothing was found
help-demo-folder = The folder to write; it must not hold a demo already
help-seed = Another seed gives another demo
help-shell = The shell
help-language = The language of what is printed and written: en, es, or with a region, such as es-MX
help-exit =
    Exit status:
      0  all well
      1  something must be settled; the rest was worked out
      2  the call was not understood
      3  nothing could be worked out
      4  a file could not be read or written

## Refusals
built-without-pdf = This tautline was built without PDF. “cargo build --release --package tautline-cli --features pdf” builds it with; .html and .txt need nothing more.
option-not-a-day = “{ $found }” isn't a day. Write it as 2026-06-03.
verify-no-print = { $file } carries no fingerprint of readings. Reports written by tautline report and tautline assess do.
language-unknown = “{ $found }” is no language that tautline has. It has: { $known }.
file-unreadable = { $file } can't be read: { $why }.
file-unwritable = { $file } can't be written: { $why }.
no-files-in-folder = { $file } holds no file that is read (.csv, .tsv, .txt, .sheet, .toml).
option-not-a-unit = “{ $found }” isn't a unit. in, cm, m, ft, “decimal ft” or “ft-in” would do.
option-not-a-number = “{ $found }” isn't a number for { $option }.
option-confidence = Confidence must lie between 50 and 99.9 %, not { $found }.
option-not-counted = “{ $found }” is neither a growth form nor a plant code.
verdicts-in-all = In all: { $met } met, { $not-met } not met, { $not-yet-shown } not yet shown.
held-in-trials = “Trials”: where lines or intercepts are few, how many of 100 intervals of 90 % held the true cover in simulated surveys with as few.
assess-says-more = “To settle” and “to look at” count what tautline assess says about a site.
nothing-worked-out = Nothing could be worked out from what was handed in.
no-lines = No lines were found.

## Findings
heading-must-settle = Must be settled:
heading-have-a-look = Have a look:
heading-note = To know:
heading-settled = Settled:
heading-next = What to do next:
check-counts = { $must ->
    [0] Nothing must be settled
    [one] One finding must be settled
   *[other] { $must } findings must be settled
}, { $look ->
    [0] nothing is worth a look
    [one] one is worth a look
   *[other] { $look } are worth a look
}{ $settled ->
    [0] .
   *[other] , { $settled } settled by a person.
}
check-nothing-read = There are no readings to look through.
check-next-settle = Correct the sheet where something must be settled. Until then these lines speak for no site: { $lines }.
check-next-files = Correct the files where something must be settled.
check-next-look = What is right as it stands can be signed: print the findings with --csv, keep the rows you looked at, fill in “settled by” and “reason”, and hand the table in with the readings (docs/checks.md).
check-pointer = { $count ->
    [one] One finding is worth a look; tautline check shows it.
   *[other] { $count } findings are worth a look; tautline check lists them.
}
check-settled = { $text } Settled by { $by }{ $on }: { $reason }
check-settled-on = {" "}on { $date }
held-lines = { $site }: { $lines }{ $further ->
    [0] {""}
    [one] {" "}and one more
   *[other] {" "}and { $further } more
}
finding-at = { $file }, row { $row }: { $text }
finding-at-character = { $file }, row { $row }, character { $character }: { $text }
finding-and-more = { $text } The same was found { $count ->
    [one] once
   *[other] { $count } times
} more, in rows { $rows }{ $further ->
    [0] .
    [one] {" "}and one more stretch of rows.
   *[other] {" "}and { $further } more stretches of rows.
}
finding-at-column = { $file }, row { $row }, { $column }: { $text }

## Tables
column-site = site
column-year = year
column-lines = lines
column-verdict = verdict
column-held = trials
column-to-settle = to settle
column-to-look-at = to look at
column-line = line
column-length = length
column-stratum = stratum
column-date = date
column-reader = reader
column-canopy = canopy
column-sum = sum
column-dead = dead
column-closed = closed
column-recorded = recorded
column-what = what
column-cover = estimate
column-se = SE
column-interval = { $confidence } interval
column-n = n
column-share = share of the line
column-truth = true cover
column-caught = the interval
caught = caught it
missed = missed it
title-truth = { $site }: canopy cover as read, and as it really is under the same rule
column-composition = composition by cover
of-the-sum = { $share } of sum
positions = positions
lengths-only = lengths only
nothing-found-on-line = nothing found
to-settle = { $recorded }, to settle
closed-count = { $count } · { $length }
between-ends = { $low } to { $high }
    .alike = { $low }
title-site = { $site }
title-site-year = { $site }, { $year }
title-site-plot = { $site }, plot { $plot }
title-protocol = Protocol: { $name } ({ $fingerprint })
title-no-protocol = No protocol was handed in.
title-assumed = Where it is silent, this was taken:
assumed = { $rule }: { $taken }
title-gap-rule = Gap rule: { $limit }
units-plots = { $lines } lines in { $units } plots
units-lines = { $lines ->
    [one] one line
   *[other] { $lines } lines
}
worth-effective = { $lines } lines in { $plots } plots are worth about { $effective } lines laid apart.
demo-written = Demo written to { $folder }: an invented site with invented people. Start with { $readme }.
truth-is-in = What really grows there is in { $file }.
report-written = Report written to { $file }.
progress-reading = reading files
progress-working = working out

## Figures
canopy-cover = canopy cover
sum-of-species = sum of species
dead-canopy = dead canopy
unnamed-plants = plants without a name
cover-of = cover of { $what }
height-of = mean height of { $what }
density-of = { $what }, plants per area
plants = plants
at-least = at least { $value }
at-most = at most { $value }
between = { $low } to { $high }
    .alike = { $low }
live = live
dead = dead
tree = tree
shrub = shrub
subshrub = subshrub
succulent = succulent
vine = vine
grass = grass
forb = forb
crust = crust
other = other

## Verdicts
verdict-met = The goal of { $goal } for { $what } is met.
verdict-not-met = The goal of { $goal } for { $what } is not met.
verdict-not-yet-shown = The readings don't show yet whether the goal of { $goal } for { $what } is met.
verdict-why-at-least = It is { $lower } or more, with { $confidence } confidence; and it is { $upper } or less, with { $confidence } confidence.
verdict-bounds-zeros = Nothing was found on { $lines } lines: with { $confidence } confidence at most { $share } of lines meet any, and cover is at most { $upper } with the cover you stated for lines that do.
verdict-zeros = Nothing was found on { $lines } lines: with { $confidence } confidence at most { $share } of such lines meet any. That says nothing yet about cover where shrubs do stand.
verdict-zeros-option = Cover on lines that do meet any, stated with --where-present, would bound the cover of the site.
verdict-no-figure = Nobody recorded { $what }, so there is no verdict.
verdict-no-bound = There is no bound for it: { $reason }.
verdict-specialist = Estimate { $value } (SE { $se }, { $df } df; { $estimator }, { $method }); one-sided { $confidence } bounds { $lower } and { $upper }.
verdict-more-lines =
    About { $more ->
        [one] one more line
       *[other] { $more } more lines
    } of this length would settle it with a chance of { $chance }, if the site is as estimated and they vary like those read.
verdict-more-plots =
    About { $more ->
        [one] one more plot
       *[other] { $more } more plots
    } of these lines would settle it with a chance of { $chance }, if the site is as estimated and they vary like those read.
verdict-no-practical-number = No practical number of lines would settle it: the estimate lies too close to the goal ({ $most } lines in all don't reach a chance of { $chance }).
lines = lines
plots = plots
mean-of-lines = mean of lines
ratio-of-sums = ratio of sums
mean-of-plots = mean of plots
ratio-of-plots = ratio over plots
strata-by-area = strata by area
combined-ratio = combined ratio
mean-of-values = mean of line means
paired-difference = difference of the same lines
unpaired-difference = difference of unlike lines
paired-and-unpaired = difference of the same lines and of others, weighted
student-t = Student t
log-t = log-t
logit-t = logit-t
log-t-effective = log-t, effective df
logit-t-effective = logit-t, effective df
bca = BCa bootstrap
one-line = one line shows no variation between lines
one-plot = all lines stand in one plot
one-line-in-a-stratum = a stratum has a single line
nothing-found = nothing was found on any line
full-cover = every line is covered from end to end
no-spread = all lines are exactly alike
may-pass-the-whole = the figure may pass 100 %
needs-the-lines = a bootstrap works from the lines themselves
weights-not-whole = the shares of the strata don't add up to the whole
too-few-units = a bootstrap needs three lines or more

## Chain
explain-verdict = Goal: { $what } { $goal }. Verdict: { $verdict }.
explain-bounds = Decided by the one-sided { $confidence } bounds: at least { $lower }; at most { $upper }.
explain-bounds-zeros = Nothing was found on any line; one-sided { $confidence } bound 1 − (1 − c)^(1/n) on the share of lines, times the stated cover where present: { $lower } to { $upper }.
explain-no-bounds = There are no bounds.
explain-figure = { $what }: { $value }
explain-high-end = Known only between two ends; the high end gives { $value }.
explain-one-sided = One-sided { $confidence } bounds, { $how }: { $low } and { $high }.
explain-two-sided = Two-sided { $confidence } interval, { $how }: { $low } to { $high }.
    .alike = Two-sided { $confidence } interval, { $how }: { $low } at both ends, to the digits shown.
explain-student-t = estimate ± t · SE with t({ $probability }, { $df }) = { $t } (Cochran 1977, 2.8)
explain-logit-t = logit p ± t · SE / (p (1 − p)) with t({ $probability }, { $df }) = { $t }, taken back (Korn and Graubard 1998)
explain-logit-t-effective = logit p ± t · SE / (p (1 − p)) with t({ $probability }, { $df }) = { $t }, taken back; effective df from 2 / (2/{ $own } + u²), u = SE (1 − 2p) / (p (1 − p)), since the error of a small cover wavers with it (docs/intervals.md)
explain-log-t-effective = ln of the estimate ± t · SE / estimate with t({ $probability }, { $df }) = { $t }, taken back; effective df from 2 / (2/{ $own } + u²), u = SE / estimate (docs/intervals.md)
explain-log-t = ln of the estimate ± t · SE / estimate with t({ $probability }, { $df }) = { $t }, taken back
explain-bca = BCa bootstrap of the lines: every draw there is, or 10,000 seeded by the data where those are too many (Efron 1987)
explain-mean-of-lines = Mean of { $n } lines, all of one length: ({ $shares }) / { $n } = { $value } ({ $source })
explain-ratio-of-sums = { $n } lines of different length: { $intercept } m / { $length } m = { $value } ({ $source })
explain-mean-of-plots = { $n } lines in { $units } plots, the plot is the unit: { $intercept } m / { $length } m = { $value } ({ $source })
explain-ratio-of-plots = { $n } lines in { $units } plots, the plot is the unit: { $intercept } m / { $length } m = { $value } ({ $source })
explain-mean-of-values = Mean of { $n } line means: { $value } ({ $source })
explain-strata-by-area = Strata weighted by their area: { $value } ({ $source })
explain-stratum = Stratum { $stratum }, { $weight } of the area: { $value }
explain-error = SE { $se }, { $df } degrees of freedom
explain-no-error = No error: { $reason }
explain-line = Line { $line }: { $intercept } of { $length } = { $cover }
explain-line-between = Line { $line }: { $intercept } to { $high } of { $length } = { $cover } to { $high-cover }
explain-closed = closed by the rule: { $species } { $start } to { $stop }, { $gap } ({ $why })
explain-reading = { $file } row { $row }: { $species } { $state } { $reading }
explain-edges = { $start } to { $stop } = { $length }
explain-length = { $length }
closed-gap = gap
closed-dead = short dead stretch
closed-line-end = line's end
closed-between = between species

## Gaps
gaps-title = Line { $line }: gaps between the plants that count
gaps-not-known = Only lengths were written down, so its gaps can't be known.
gap-between = { $start } to { $stop } ({ $length })
gap-cut-off = { $start } to { $stop } ({ $length } or more, cut off by the line's end)
gaps-along = These are gaps between the shrubs that were read, along the ground; benchmarks that count all plants don't fit them.
gaps-level = These are gaps between the shrubs that were read, their class by the length on the level; benchmarks that count all plants don't fit them.

## On paper
work-title = Line { $line }: { $what }
work-group = { $terms } = { $sum }
work-total = together: { $sums } = { $total } { $unit }
work-line = line: { $given }
work-conversion = line: { $given } × { $factor } = { $line } { $unit }
work-quotient = { $total } ÷ { $line } = { $quotient }, that is { $percent }, rounded last
work-overlap = overlap counted once; the stretches are the joined ones, gaps under the rule closed
metres = { $figure } m
per-hectare = { $figure } per ha
from-memory = From memory: the source was not at hand when the rules were written down.

## Reports
reports-written = { $written ->
    [one] One report written
   *[other] { $written } reports written
}{ $pages ->
    [0] {""}
    [one] {", "}one page
   *[other] {", "}{ $pages } pages
}{ $kept ->
    [0] {""}
   *[other] {", "}{ $kept } left as they were
}: { $folder }.
progress-reports = writing reports
verify-stands = { $site }, { $year }: the readings stand as they did when the report was written.
verify-stands-undated = { $site }, undated: the readings stand as they did when the report was written.
verify-differs = Readings { $print } …: nothing here is like that now. They were corrected since, or belong to other files; the report names the site beside this number.
