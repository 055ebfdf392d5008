### Words of tautline: change between visits, agreement of observers, trend.

## Change
points = { $figure } points
plus = +{ $figure }
change-matters = It is { $matters } or more, as much as matters.
change-too-small-to-matter = It is less than the { $matters } that matter.
change-may-matter = Whether it is as much as the { $matters } that matter is not shown.
points-up = +{ $figure } points
under-a-thousandth = under 0.001
change-rose = { $what } rose by { $change } between { $from } and { $to }.
change-fell = { $what } fell by { $change } between { $from } and { $to }.
change-not-shown = The readings show no change of { $what } between { $from } and { $to }.
change-none-that-matters = { $what } changed by less than { $matters } between { $from } and { $to }, if at all.
change-untold = Whether { $what } changed between { $from } and { $to } can't be told: { $reason }.
change-from-to = In percentage points of cover the change lies between { $low } and { $high }, with { $confidence } confidence.
    .alike = In percentage points of cover the change is { $low }, to the digits shown, with { $confidence } confidence.
change-hidden = That is not the same as no change: one of up to { $hidden } could be hidden in it, with { $confidence } confidence no larger one.
change-lines-to-see = About { $lines ->
        [one] one line
       *[other] { $lines } lines
    } at each visit would show a change of { $matters } with a chance of { $chance }, if lines go on varying like these.
change-seen = Lines that vary like these show a change of { $seen } with a chance of { $chance }; smaller ones are missed more often.
change-specialist = Estimate { $value } (SE { $se }, { $df } df, p = { $p } that nothing changed; { $design }, { $pairs ->
        [one] one read twice
       *[other] { $pairs } read twice
    }).
design-paired = same lines
design-paired-and-unpaired = same lines and others
design-unpaired = unlike lines
pairing-is-worth = Reading the same lines again was worth { $times } times as many new ones.
pairing-is-worth-nothing = Reading the same lines again was worth nothing here: new lines would have told as much.
points-of-cover = Points are percentage points of cover: from 16 to 20 % is 4 points.

## Untreated neighbour
beyond-more = { $site } gained { $difference } more, or lost that much less, than { $untreated }.
beyond-less = { $site } gained { $difference } less, or lost that much more, than { $untreated }.
beyond-not-shown = The readings don't show that { $site } changed differently from { $untreated }.
beyond-one-of-each = With one area of each, this says at most that they changed differently, not that the treatment did it.
untreated-not-read = { $untreated } was not read in both years, so nothing is set beside it.

## What is unlike
change-between-ends = { $what } is known only between two ends on { $lines }, so its change can't be tested.
unlike-season = Lines were read about { $days } days apart in the season in { $from } and { $to }. Part of the change may be the time of year.
unlike-readers = Read by { $before } in { $from } and by { $after } in { $to }. What one reader sees wider than another adds to the change, and more lines don't shrink it. A few lines read by both would show how much: tautline agree.
unlike-window = Lines { $lines } were read in { $year } outside the reading window of their protocol ({ $window }). Part of the difference from other visits may be the time of year.
unlike-growth-stage = The stage of growth was not the same: { $before } in { $from }, { $after } in { $to }. Part of the change may be leaf that had yet to come, or had gone.
trend-unlike-season = In { $years } lines were read more than { $days } days earlier or later in the year than usual. Part of the difference between years may be the time of year.
trend-unlike-stage = The stage of growth was not the same in all years: { $stages }. Part of the difference between years may be leaf that had yet to come, or had gone.
stage-in-year = { $stage } in { $year }
title-noted = What was noted beside the readings
noted-about = Weigh them with the figures: rain, grazing, browsing, fire, insects and treatment move cover, and two visits don't say which of them did.
noted-none = Nothing was noted of rain, grazing, browsing, fire, insects or treatment at these visits, so the figures can't be weighed against them.
column-noted = noted
title-strata-change = Canopy cover by stratum
column-of-area = of the area
nothing-noted = nothing noted
read-once-left-out = Read in only one of { $from } and { $to }, and so left out of the change: { $lines }. The levels of each year still use them.
read-once-used = Read in only one of { $from } and { $to }: { $lines }. They stand in the change with the little weight that unmatched lines earn.
pairing-in-doubt = The canopy of { $lines } lies no better in { $to } where it lay in { $from } than anywhere else on the tape. A lost stake, or a tape run the other way? --temporary takes all lines as new ones; to be as sure, that takes { $times } times as many.
tape-lies-off = Line { $line }: the tape of { $to } reads { $shift } further than that of { $from }, judged by the plants that stand on both. Gained and lost canopy there are partly the tape's.
no-pair-of-years = No site was read in both { $from } and { $to }.

## Change, step by step
explain-change = { $what }: { $before } in { $from }, { $after } in { $to }; change { $value }
explain-change-design = { $design }: { $pairs } read at both visits, { $before } at the earlier only, { $after } at the later only; { $estimator } ({ $source })
explain-change-p = p = { $p }: chance of a difference as far from zero if nothing changed (two-sided t test)
explain-change-hidden = No change larger than { $hidden }: the larger of the two one-sided bounds (Schuirmann 1987)
explain-signs = Check by signs, all ways counted: p = { $p } (Fisher 1935, 21)
explain-signs-drawn = Check by signs, 9,999 ways drawn: p = { $p } (Fisher 1935, 21)
explain-ranks = Check by signed ranks: sum above zero { $above } of { $lines } lines that changed, p = { $p } (Wilcoxon 1945)
explain-median-change = Median change of the lines { $value }, { $low } to { $high } with { $confidence } confidence (Hodges and Lehmann 1963)
    .alike = Median change of the lines { $value }, to the digits shown, with { $confidence } confidence (Hodges and Lehmann 1963)
explain-change-line = Line { $line }: { $before } to { $after }

## Command
help-change = The change of each site between two years: how much, how sure, where on the tape
help-from = The earlier year
help-to = The later year
help-matters = The change that matters, in percentage points of cover, such as “5 %”
help-power = The chance with which a change should be seen, in per cent
help-temporary = Lines of the same name are not the same lines
help-untreated = A site that was left untreated, to set the others' change beside
help-picture = Draw the lines of both years above each other, as SVG
option-years = The years must be two, the earlier first.
title-change = { $site }, { $from } to { $to }
title-on-the-tape = On the tape, as shares of the line
column-change = change
column-p = p
column-gained = gained
column-lost = lost
column-kept = kept
column-found-again = found again
column-tape-shift = tape off by
column-same-line = same line
pairing-holds = yes
pairing-doubtful = doubtful
pairing-cant-tell = can't tell
all-lines-together = all lines
picture-written = { $file } written.
picture-of-change = Canopy along each line at both visits
picture-of-change-told = Canopy along the lines of { $site } in { $from } and { $to }: what was kept, gained and lost.
option-not-here = { $option } has no meaning here.

## Readers side by side
agree-one-line-more = On the one line that both read, { $second } has { $difference } more canopy than { $first }.
agree-one-line-less = On the one line that both read, { $second } has { $difference } less canopy than { $first }.
agree-more = On the { $lines } lines that both read, { $second } has { $difference } more canopy than { $first } on average.
agree-less = On the { $lines } lines that both read, { $second } has { $difference } less canopy than { $first } on average.
agree-limits = On { $share } of such lines they would differ by { $low } to { $high } points, if differences spread like a bell curve (Bland and Altman 1986).
    .alike = On { $share } of such lines they would differ by { $low } points, to the digits shown, if differences spread like a bell curve (Bland and Altman 1986).
agree-bias = The average difference lies between { $low } and { $high } points, with { $confidence } confidence. It adds to every change between their years, and more lines don't shrink it.
    .alike = The average difference is { $low } points, to the digits shown, with { $confidence } confidence. It adds to every change between their years, and more lines don't shrink it.
agree-reliability = Agreement as an intraclass correlation: { $value } ({ $low } to { $high } with { $confidence } confidence; form 2,1 of Shrout and Fleiss 1979; { $readers } readers, { $lines } lines). Lines that are alike force it down, so it passes or fails nobody.
    .alike = Agreement as an intraclass correlation: { $value } (to the digits shown with { $confidence } confidence; form 2,1 of Shrout and Fleiss 1979; { $readers } readers, { $lines } lines). Lines that are alike force it down, so it passes or fails nobody.
agree-nobody = No line was read by two readers in one year.
habit-closes-gaps = { $second } reads as canopy { $gaps } gaps that { $first } wrote down, up to about { $closed }. Read the gap rule aloud and measure one gap together.
habit-wider = { $second } sees each edge about { $way } further out. Agree on the outermost live leaf, and stand straight over it.
habit-narrower = { $second } sees each edge about { $way } further in. Agree on the outermost live leaf, and stand straight over it.
habit-tape-off = What { $second } reads lies about { $way } further along the tape. Agree on the zero and on which edge of the tape is read.
habit-tape-back = What { $second } reads lies about { $way } further back along the tape. Agree on the zero and on which edge of the tape is read.
habit-dead-as-live = { $second } writes as live { $share } of what { $first } wrote as dead. Bend a few twigs together and agree on what is alive.
habit-leaves-out-small = { $second } leaves out { $plants } plants that { $first } has, up to about { $length } long. Agree on the shortest canopy that counts.
habit-none = No one habit explains how they differ.

## Trend
trend-rises = { $what } rises by about { $slope } points a year over { $visits } visits, with { $confidence } confidence that it rises.
trend-falls = { $what } falls by about { $slope } points a year over { $visits } visits, with { $confidence } confidence that it falls.
trend-not-shown = { $visits } visits show no trend of { $what }.
trend-too-few-visits = { $what }: { $visits } visits are too few to tell a trend from chance, so there is no p; four are the fewest.
trend-one-year = No site was read in two years or more.
trend-unlike-lines = In { $years } not the same lines were read as in { $first }. Part of the difference between years is the lines'.
trend-between-ends = { $site }: { $what } is known only between two ends in some year, so it has no trend here.
trend-years-are-the-sample = All lines of a site share its dry and wet years, so the years are the sample: the model of lines and years knows that (restricted likelihood; errors and degrees of freedom by Kenward and Roger 1997), the figures without a model (Theil and Sen; Mann and Kendall) take each year's level as one value.
trend-lines-count-alike = In the model all lines count alike, whatever stratum they lie in; each year's level is by area.
trend-by-model = Lines and years together: { $slope } points a year, between { $low } and { $high } with { $confidence } confidence (SE { $se }, { $df } df, p = { $p }).
    .alike = Lines and years together: { $slope } points a year, to the digits shown, with { $confidence } confidence (SE { $se }, { $df } df, p = { $p }).
trend-no-model = There is no model of lines and years: { $reason }.
trend-no-years = What the years did to all lines alike can't be told from what is left, so the model's slope of { $slope } points a year looks surer than it is, and gets no p.
trend-swings = A typical year lies { $years } points off the trend for all lines alike; lines lie { $lines } points apart; { $left } points are left.
trend-hangs-together = Years hang together from one visit to the next: without a model p = { $plain } as if they didn't, { $p } with the variance { $times } times as large (Hamed and Rao 1998).
fit-one-line = one line alone can't tell what the year did from what the line did
fit-one-year = all readings are of one year
fit-not-separable = the readings can't tell lines, years and what is left apart; lines read again in other years would
fit-nothing-left = the readings lie exactly on a straight line, so no error can be told
fit-no-summit = the readings don't settle how far lines and years vary
no-years-in-the-model = no years in the model
forecast-met = If the trend went on, { $what } would reach { $value } (the goal: { $goal }) about { $year }: between { $earliest } and { $latest } with { $confidence } confidence.
    .alike = If the trend went on, { $what } would reach { $value } (the goal: { $goal }) about { $year }, within that year with { $confidence } confidence.
forecast-met-or-never = If the trend went on, { $what } would reach { $value } (the goal: { $goal }) about { $year }: not before { $earliest }, and perhaps never, with { $confidence } confidence.
forecast-lost = If the trend went on, { $what } would pass { $value }, out of the goal ({ $goal }), about { $year }: between { $earliest } and { $latest } with { $confidence } confidence.
    .alike = If the trend went on, { $what } would pass { $value }, out of the goal ({ $goal }), about { $year }, within that year with { $confidence } confidence.
forecast-lost-or-never = If the trend went on, { $what } would pass { $value }, out of the goal ({ $goal }), about { $year }: not before { $earliest }, and perhaps never, with { $confidence } confidence.
forecast-not-by = The trend doesn't cross { $value } by { $last }, as many years ahead as were looked back on; further it doesn't speak.
forecast-not-shown = With no trend shown, the readings don't say when { $what } would cross { $value }.
forecast-caution = The years speak of the line's level, not of a single dry or wet year, and no trend knows of rain, fire or grazing to come.
region-by-area = All { $sites } sites by area: { $slope } points a year, between { $low } and { $high } with { $confidence } confidence ({ $df } df, years less two).
    .alike = All { $sites } sites by area: { $slope } points a year, to the digits shown, with { $confidence } confidence ({ $df } df, years less two).
region-alike = All { $sites } sites counted alike, since the area of some isn't known: { $slope } points a year, between { $low } and { $high } with { $confidence } confidence ({ $df } df, years less two).
    .alike = All { $sites } sites counted alike, since the area of some isn't known: { $slope } points a year, to the digits shown, with { $confidence } confidence ({ $df } df, years less two).
region-shares-years = Sites share their dry and wet years (a typical year moves all by { $years } points), so more sites don't shrink that part of the error.
region-shares-all-years = How much of the years' swing sites share can't be told, so all of it is taken as shared.
region-drawn = “Drawn” lends a thin site strength from the others: it moves towards them as far as its own error is large beside how far sites differ (Paule and Mandel 1982; Efron and Morris 1975). Use the site's own slope to speak of that site alone.
title-region = All sites together
column-method = how
column-site-share = share
column-own-slope = own
column-drawn = drawn
method-model = lines and years
method-without = without a model
method-hanging = years that hang together
too-few-visits = too few visits
help-agree = Readers of the same lines side by side: how far apart, on which plants, and by which habit
help-against = The reader whom the others are set beside; the first pass where none is named
help-trend = The trend of each site over its years: slope, direction, when a goal would be reached; and all sites together
column-difference = difference
column-both-have = both have
column-missed = missed
column-added = added
column-mean-difference = mean difference
column-slope = points a year

## Pages of trends, changes and readers
picture-of-trend = { $what } over the years
trend-axis = { $what }, %
trend-axis-years = year
trend-mark-line = a line, read again and again
trend-mark-level = the level of a year
trend-mark-model = the trend, and how far it may lie off
trend-goal = goal: { $goal }
follow-beside = To be weighed beside it
follow-trend-title = Trends over the years
follow-trend-about = Each site's canopy over its years, by a model of lines and years together and without one; when a goal would be reached if the trend went on; all sites together.
follow-levels = The level of each year
follow-levels-table = Level of each year
follow-slopes = Points a year
follow-slopes-table = Slope, its interval and p
follow-sites-table = Slope of each site, points a year
column-drawn-se = drawn SE
follow-change-title = Change between two visits
follow-change-about = What rose, what fell and what can't be told, between two visits of each site; on the tape, where canopy was kept, lost and gained.
follow-change-nothing = No site was read in both years.
follow-figures = Figures
follow-figures-table = Levels, change and its error
follow-agree-title = Readers side by side
follow-agree-about = Readers of the same lines: how far their covers lie apart, on which plants, and which habit would explain it. Nobody's fault: who is right is for the rule book and the plant.
follow-agree-pair = { $site } { $year }: { $second } beside { $first }
follow-agree-lines = Line by line
follow-agree-species = Mean difference of each species
follow-agree-only = only { $reader }
follow-agree-picture = What both see, and what one sees alone
follow-agree-told = Canopy along each line as { $first } (above) and { $second } (below) read it.
follow-agree-certificate = Standing, with its days
follow-agree-season = { $second } beside { $first } over { $year }
follow-agree-control = Differences in the order of time
help-trend-report = Write the page of trends, as HTML
help-change-report = Write the page of changes, as HTML
help-agree-report = Write the page of readers, as HTML
page-written = { $file } written.

## Standing of readers
help-tolerance = The tolerance that your office set, in points of cover, such as “3 %”: whether each reader is ready, or what to practise
standing-ready = Ready by your tolerance of { $tolerance }: { $within } of { $lines } lines lie within it.
standing-practise = To practise, by your tolerance of { $tolerance }: { $within } of { $lines } lines lie within it, and nine of ten are wanted. What to talk about stands below.
standing-too-few = { $lines ->
        [one] One line was read by both
       *[other] { $lines } lines were read by both
    }: too few to call anybody ready; three are the fewest.
standing-whose = The tolerance is the office's own; no handbook's is taken.
standing-days = Lines read by { $second } on { $days }.
control-quiet = Over { $year } the differences of { $second } from { $first } keep to no pattern on { $lines } lines (Western Electric 1956).
control-broken = Over { $year } the differences of { $second } from { $first } show a pattern: { $what } on { $day } (Western Electric 1956). About one value in ninety does so by chance; it asks for a look, not for a judgement.
control-too-few = For a chart over the season { $second } needs five lines or more read by both; so far: { $lines }.
control-beyond-three = a difference beyond three standard deviations
control-two-of-three = two of three beyond two standard deviations on one side
control-four-of-five = four of five beyond one standard deviation on one side
control-eight-in-a-row = eight in a row on one side
control-axis = difference, points of cover
control-warning = two standard deviations
control-action = three
control-flagged = a rule is broken
title-season = Over the season
habit-opens-gaps = { $second } writes { $gaps } gaps that { $first } read as canopy, up to about { $length }. Read the gap rule aloud and measure one gap together.
habit-tape-stretched = What { $second } reads lies further along the further from zero: about { $way } in { $over }. Pull the tape taut and read its end together.
habit-tape-shrunk = What { $second } reads lies less far along the further from zero: about { $way } in { $over }. Pull the tape taut and read its end together.
habit-other-edge = The edges of { $second } lie off by about { $way } either way. The tape may have been read from its other edge, or edges loosely: agree on the edge, and read one plant together.
habit-other-as-canopy = { $second } writes as canopy { $share } of what { $first } wrote of plants that don't count, such as grass. Part the plant and agree on what it is.
habit-adds-small = { $second } has { $plants } plants that { $first } hasn't, up to about { $length } long. Agree on the shortest canopy that counts, and on what grows there.

## Log of calibrations
help-agree-log = The log of calibrations in a notebook: who was set beside whom, what came of it, who is due
help-log = Write the standing of every reader into the log of this notebook, by --tolerance
help-judge = Who judges: the name that stands in the log; the author where none is given
help-span = Days that a calibration lasts in your office; none is built in
help-on = The day that reminders speak of, such as 2026-08-01; today where none is given
help-certificate = Write each calibration as a page to print, as HTML
help-log-reader = Of one reader only
help-log-csv = Print a table of every line of every calibration
column-against = beside
column-within = within
column-tolerance = tolerance
column-outcome = came to
column-judge = judged by
calibration-passed = passed
calibration-repeat = to be repeated
so-many-of = { $some } of { $all }
title-log = Calibrations
title-due = Who is due
log-empty = The log of this notebook is empty: tautline agree … --tolerance … --log writes into it.
logged = { $records ->
        [one] One calibration
       *[other] { $records } calibrations
    } written into { $file }.
logged-known = Nothing new for the log of { $file }.
log-left-out = Not written into the log: { $second } beside { $first } at { $site }. Three lines or more, with their day, are the fewest.
log-needs-tolerance = A calibration is judged by your office's tolerance: give it with --tolerance, such as “3 %”.
reminder-never = { $reader } has passed no calibration.
reminder-last = { $reader } was last calibrated { $days ->
        [one] one day
       *[other] { $days } days
    } ago ({ $date }, beside { $against }).
reminder-within = { $reader } was last calibrated { $days ->
        [one] one day
       *[other] { $days } days
    } ago ({ $date }, beside { $against }); the office's span is { $span } days.
reminder-over = { $reader } was last calibrated { $days } days ago ({ $date }, beside { $against }); the office's span is { $span } days. Read three lines together again before more are read alone.
reminder-repeat = The calibration of { $date } is to be repeated.
reminder-uncovered = { $uncovered } of { $lines } lines within a year were read by { $reader } before a calibration was passed.
reminder-uncovered-span = { $uncovered } of { $lines } lines within a year were read by { $reader } with no calibration within the span.
certificate-title = Calibration of a reader
certificate-about = { $reader } was set beside { $against } on { $lines } lines at { $site }, read under { $protocol }.
certificate-passed = Passed on { $date }: on { $within } of { $lines } lines the covers lie within { $tolerance } of each other; nine of ten are wanted.
certificate-repeat = To be repeated ({ $date }): on { $within } of { $lines } lines the covers lie within { $tolerance } of each other; nine of ten are wanted.
certificate-bias-more = On average { $reader } has { $bias } more canopy than { $against }.
certificate-bias-less = On average { $reader } has { $bias } less canopy than { $against }.
certificate-lines = Line by line
certificate-judged = Judged by { $judge }
certificate-day-and-hand = Day and signature
certificate-whose = The tolerance, how long this holds and what it entitles to are the office's own; it is no one else's certificate.
certificate-unnamed-protocol = a protocol without a name ({ $fingerprint })

## Where the doubt comes from
help-agree-sources = Where the doubt of a mean comes from: readers, lines, plots, sites, years; and what would make it surer
help-travel = Minutes to get to a further site
help-day = Minutes of a day of calibration, of each reader (480)
part-site = sites
part-year = years
part-stratum = strata
part-plot = plots
part-line = lines
part-reader = readers
part-site-year = a year at one site
part-left = what is left
doubt-most = Most of what varies lies in { $part }: from one to another about { $sd } (a standard deviation; { $share } of all variance).
doubt-drawn = Taken apart were the readings of { $taken } of { $all } sites, drawn at random: more are too many at once.
doubt-one-group = Of { $part } there is one alone, so what they do can't be told.
doubt-mixed-left = Of { $part } none was read twice, so they can't be told apart from what is left.
doubt-mixed = What { $part } do can't be told apart from { $with }: wherever the one is another, so is the other. It stands there.
doubt-se = The mean of { $year } has a standard error of { $se } by what can be told; what the year did belongs to it and is no error.
doubt-buy = What takes most of it away at once: { $what }. Which is cheapest hangs on what a walk, a line, a trip and a day cost you: say so, and it is worked out.
doubt-buy-by-hour = What takes most of it away for its hours: { $what }.
doubt-buy-nothing = Neither more lines nor a day of calibration would make it surer by what can be told.
doubt-day-what-for = On a day of calibration all readers read the same lines; what they differ by is then taken off, and its own doubt stays.
doubt-source = Variances by restricted likelihood (Patterson and Thompson 1971), about one mean for all; a trend over the years stands in years.
buy-line = one more line
buy-site = one more site with { $lines ->
        [one] one line
       *[other] { $lines } lines
    }
buy-day = a day of calibration, { $lines ->
        [one] one line
       *[other] { $lines } lines
    } read by every reader
sources-too-few = Fewer than three dated readings with their readers: nothing can be taken apart.
sources-too-many = One site has more than 400 readings: choose a year.
sources-nothing-left = The readings leave nothing over once lines and readers are taken off: read some lines twice.
sources-no-summit = The readings don't settle how far each part varies.
sources-apart = The lines were read under protocols that can't be brought together.
title-sources = Where the doubt comes from
title-buys = What would make it surer
column-groups = how many
column-sd-points = SD, points
column-of-variance = of all variance
column-se-after = SE with it, points

## Readers of a change
readers-measured = { $later } reads { $bias } points more than { $earlier } on the { $lines } lines that both read.
readers-measured-less = { $later } reads { $bias } points less than { $earlier } on the { $lines } lines that both read.
readers-believed = A change of less than { $believed } points may be lines and readers alone.
readers-logged-otherwise = The log has both of them, but under another protocol than these lines were read under, and so is not used.
readers-not-measured = Read by { $earlier } earlier and by { $later } later, who have not read two lines in common: what they see differently stands in the change and isn't in its interval.
readers-measured-by-a-third = By the log of calibrations, each of them set beside a third reader ({ $lines } lines in all), { $later } reads { $bias } points more than { $earlier }.
readers-measured-by-a-third-less = By the log of calibrations, each of them set beside a third reader ({ $lines } lines in all), { $later } reads { $bias } points less than { $earlier }.
readers-from-the-log = Taken from the log, the nearest before the visits: { $taken }.
taken-for-the-earlier = { $reader } beside { $against } on { $date } ({ $days ->
        [0] on the last day of the earlier visit
        [one] one day before the earlier visit
       *[other] { $days } days before the earlier visit
    })
taken-for-the-later = { $reader } beside { $against } on { $date } ({ $days ->
        [0] on the last day of the later visit
        [one] one day before the later visit
       *[other] { $days } days before the later visit
    })
readers-logged-after = The log has both of them, but nothing that came before these visits, and so is not used.
readers-logged-too-old = The log has both of them, but the nearest calibration was { $days } days old at a visit, more than your office's span, and so is not used.
readers-taken-off = With that taken off, and its own doubt put in, the change is { $change } points, between { $low } and { $high } with { $confidence } confidence.
    .alike = With that taken off, and its own doubt put in, the change is { $change } points, to the digits shown, with { $confidence } confidence.
