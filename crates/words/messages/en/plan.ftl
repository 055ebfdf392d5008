### Words of tautline: how many lines, and where.

## Help
help-plan = How many lines, how long, and where they go
help-plan-effort = How many lines a goal, a width, a change or a trend takes; how long they should be
help-plan-lines = Lay lines out on a site, for a GPS receiver and a compass
help-pilot = Readings of a pilot on one site; the latest year is taken
help-plan-confidence = Confidence of intervals and verdicts in per cent; a false alarm of change has what is left
help-cover-foreseen = Cover that you foresee, in per cent
help-spread = Standard deviation of the cover of lines that you foresee, in per cent of the ground
help-half-width = How far an interval may reach to either side, in per cent of the ground
help-effort-change = A change between two visits to be seen, in per cent of the ground
help-effort-trend = A trend to be seen, in per cent of the ground a year
help-visits = Yearly visits for a trend (5)
help-correlation = Correlation of a permanent line's readings on two visits (0.5)
help-between-years = How far good and poor years move all lines together, as a standard deviation in per cent of the ground
help-effort-power = Chance with which the plan should succeed, in per cent (80)
help-effort-lines = What so many lines would show
help-room = How many lines the site would hold side by side, where it is small
help-walk = Minutes to walk to the next line
help-lay = Minutes to lay the tape and take it up
help-read = Minutes to read one metre
help-budget = Minutes there are for all lines; says what they show (with --walk, --lay, --read)
help-lengths-figure = Draw length against number into this file, as SVG
help-simulate = Draw 10 000 surveys one by one to see a change: from normal lines, and from an uneven stand with the same cover and spread
help-stratum = A stratum with its hectares and the spread of its lines, and what a line costs, such as “flat: 12, 5” or “draw: 3, 9, 1.5”; may be repeated
help-least = Fewest lines of each stratum (2)
help-plan-sequential = A plan that may stop after any line, with its errors held however often it is looked at
help-sequential-lines = First and last look, such as “5 to 30”, or “6 to 18 by 3” for batches
help-sequential-confidence = Confidence of the whole plan in per cent (90)
help-sequential = The sequential plan that these lines were read under, such as “5 to 30”; lines are taken in the order of their names
help-batch = Lines read before the next look of a sequential plan; the walk is ordered only inside a batch
help-walk-from = Where the walk begins, such as “42.3,-113.7” or “12 N 278494 4687150”
help-plan-packet = Lay lines out and make the packet that a crew carries, as one page for print
help-packet-plants = Tables with the plants that may be met
help-packet-sites = Tables that say whose land a site is and how much of its places is told (docs/files.md)
help-packet-full = Say on the cards where lines lie, whatever the site’s setting says
help-packet-permissions = Tables of lines that say who gave permission to enter, and until when
help-packet-protocol = The protocol that lines are read under: a file, or a shipped protocol's name
help-packet-unit = The unit in which the tape is read (m)
help-cautions = Your office's own cautions, one a line, in place of ours
help-paper = Paper to print on: a4 (the default) or letter
help-plan-benchmarks = Published numbers that cover is set against, beside your own way to read
help-benchmark-key = Only those whose name or plants hold this
help-benchmark-protocol = The protocol that you read under: a file, or a shipped protocol's name
help-benchmark-scale = The ground that you speak of: stand (the default), nest or landscape
help-benchmark-own = Your own numbers, in a file like docs/plan.md shows
help-boundary = The site's boundary with its strata: GeoJSON, GPX, KML, KMZ, GeoPackage, or a shapefile (.shp with its .prj, or .zip)
help-keep-out = What to keep out of, such as “roads.kml, 15 m”: a file and how far to stay away; may be repeated
help-there = Lines that are there already and stay; may be repeated
help-stratum-from = The field in which a stratum's name stands (stratum)
help-take-in = Take the lines that are there already into the layout, to be read again
help-judged = Why this area was chosen, where that was by judgement as a key area is
help-datum = The datum of files that name none, and of --from: WGS84, NAD83, NAD27, or “NAD27 UTM 12 N”
help-lines = Lines to lay out; plots, where --spokes is given
help-length = Length of each line, such as “50 m” or “100 ft”
help-reserve = Lines in reserve, in order, for those that can't be read (half as many as lines)
help-design = How points are drawn: balanced (the default), random, or systematic
help-bearing = Which way lines run: random (the default), degrees from true north, or “across 40” for at right angles to 40°
help-edge = Where a line would leave its stratum: turn it (the default) or redraw it
help-apart = How far lines stay from each other (the line's length)
help-spokes = So many lines from each point, as spokes of a plot
help-offset = How far from a plot's centre its lines start (5 m)
help-date = The date for which the compass is set, such as 2026-06-01
help-elevation = Height of the site in metres, for the compass (0)
help-layout-seed = Another seed gives another layout (1)
help-site-name = The site's name
help-into = Write lines.csv, layout.gpx and layout.geojson to this folder

## Refusals
boundary-refused = { $file }: { $why }
boundary-no-area = There is no area on which lines could lie.
boundary-not-on-earth = Feature { $part }: { $longitude }, { $latitude } is no place on earth. Degrees are written longitude first, UTM easting first.
boundary-too-few-points = Feature { $part }: a ring near longitude { $longitude }, latitude { $latitude } has fewer than three corners.
boundary-ring-no-area = Feature { $part }: a ring near longitude { $longitude }, latitude { $latitude } lies on one straight line.
boundary-meets-itself = Feature { $part }: the outline meets itself on the side that starts at longitude { $longitude }, latitude { $latitude }, in a way that can't be cut apart.
boundary-too-far = Feature { $part }: longitude { $longitude }, latitude { $latitude } is more than 500 km from the middle of the site.
boundary-line = Feature { $part }: a line that stays is a LineString of two points.
boundary-stratum = Feature { $part }: a stratum is a Polygon or MultiPolygon.
boundary-closed = { $file }, feature { $part }: an outline that stayed open was closed, over { $metres } m.
boundary-cut-apart = { $file }, feature { $part }: the outline crosses or touches itself, first on the side that starts at longitude { $longitude }, latitude { $latitude }. It was cut apart there and makes { $polygons ->
    [one] one polygon
   *[other] { $polygons } polygons
}; what it runs round twice is outside. Look at the map.
boundary-left-out = { $file }, feature { $part }: a mark without a use was left out.
boundary-old-datum = Feature { $part }: NAD 27 outside of the contiguous United States isn't moved here, and an old position can be up to 100 m off. Save it as WGS 84 in the program it comes from.
boundary-datum-unused = Every file says itself in which datum it is, so “{ $datum }” was used for none. Leave --datum out.
boundary-position-error = For the datum's sake positions may be off by some { $metres } m. Keep that much further away from edges, and from what to keep out of, than you need.
layout-name-taken = There are two lines “{ $line }”. Give the one that is there already another name.
layout-staked-length = { $line }: its old coordinates lie { $metres } m apart, and the tape was given as { $length }. Lay it between its stakes, and write its own length into lines.csv if it is another.
area-chosen-by-judgement = { $site } is an area that was chosen by judgement ({ $why }). Its figures, errors and verdicts speak for that area alone; for other ground they say nothing.
option-datum = “{ $found }” isn't a datum known here. WGS84, NAD83 and NAD27 are, with “UTM 12 N” behind it where numbers are metres.
boundary-taken-once = { $file }, feature { $part }: { $points ->
    [one] a corner given twice was taken once.
   *[other] { $points } corners given twice were taken once.
}
layout-too-few = Each stratum needs two lines for its own error: { $least } lines or more.
declination-date = The magnetic model doesn't reach that date. A date from 2020 to 2029 would do.
declination-height = The magnetic model doesn't reach that height. Give metres above the sea.
option-bearing = “{ $found }” isn't a bearing. “random”, degrees from 0 to 360, or “across 40” would do.
option-date = “{ $found }” isn't a date. Write it as 2026-06-01.
effort-nothing-foreseen = Hand in the readings of a pilot, or say --cover and --spread.
effort-nothing-asked = Nothing was asked. Say --half-width, --goal, --change, --trend or --lines.
effort-no-spread = Lines that don't vary tell nothing about how many it takes. Say --spread.
effort-goal = “{ $goal }” isn't about canopy cover, which is what this plan is for. “at least 15 %” would do.
effort-power = --power lies from 50 to below 100 %.
effort-budget-cost = A budget in minutes takes what a line costs: say --walk, --lay and --read.
effort-budget = That budget pays for fewer than two lines, or for more than ten thousand.
effort-simulate = A simulation takes a change to be seen (--change) and a number of lines that is practical.
effort-strata = With strata, say --lines (at least as many as the least of all strata together) or --half-width.
option-stratum = “{ $found }” isn't a stratum. “flat: 12, 5” would do: name, hectares, spread of its lines in per cent of the ground.
option-sequential = “{ $found }” isn't a sequential plan. “5 to 30” or “6 to 18 by 3” would do, from two lines to 200.
effort-several-sites = These readings are of several sites. Name one with --site.
effort-no-pilot = No cover with an error could be worked out from these readings, so they tell nothing about how lines vary.

## A layout
title-layout = Lines for { $site }
the-site = the site
layout-stratum = { $name }: { $hectares } ha, { $placed } of { $wanted } placed
heading-lines = To read:
heading-reserve = In reserve, to be taken in this order when one above can't be read (write down why):
column-start = start (latitude, longitude)
column-end = end
column-true = true
column-compass = compass
design-balanced = spatially balanced
design-random = at random
design-systematic = on a grid with a random start
layout-drawn = Points drawn { $design }, seed { $seed }: the same call draws them again. Lines of different points stay { $apart } m apart.
layout-edge-turn = A line that would leave its stratum was turned at its start. Ground within a line's length of the edge is still read a little less than the rest (docs/plan.md).
layout-edge-redraw = A line that would leave its stratum was drawn anew. Ground within a line's length of the edge is read less than the rest (docs/plan.md).
layout-given-up = Points given up: { $edge } at the edge, { $kept } at what is kept out of, { $near } too near to another line.
layout-no-room = There was no room for all lines. Shorter lines, a smaller distance or a smaller buffer would make room.
packet-written = The packet is { $file }: open it in a browser and print it.
packet-unit = “{ $found }” is no unit of a tape. m, cm, ft or in would do.
layout-written = Written to { $folder }: lines.csv, layout.gpx, layout.geojson, and the reserve in a folder of its own.
declination = On { $date } a compass points { $degrees }° { $side } of true north (changing by { $yearly }° a year, give or take { $uncertainty }°). “true” is from true north; set a compass without correction to “compass”.
declination-weak = The magnetic field is weak here: don't trust a compass.
declination-no-date = Bearings are from true north. With --date the compass bearings are printed beside them.
east = east
west = west
heading-cautions = Before you go (local rules and licensed people come first):
caution-permission = Ask for permission to enter, and close gates as you found them.
caution-stakes = Call before you dig or drive stakes. Cap them: they hurt stock, tyres and feet.
caution-weather = Heat, lightning, fire: know when you turn back.
caution-alone = Don't go alone without telling somebody where and until when.
caution-animals = Snakes and ticks; nests in season; clean boots and gear against weeds.
caution-line = Walk on one side of the line only, and not on it before it is read.

## Effort
title-effort = How many lines
effort-from-pilot = Pilot on { $site }: { $lines } lines, cover { $cover }, standard deviation of lines { $spread }.
effort-foreseen = Foreseen: cover { $cover }, standard deviation of lines { $spread }.
effort-sure = At { $confidence } confidence, with a chance of { $power } to succeed.
column-question = question
column-lines-needed = lines
column-shows = your number shows
column-chance = its chance
no-practical-number = more than 200
question-verdict = verdict on { $goal }
question-half-width = interval of ± { $wanted }
question-width-alone = interval, ±
question-permanent = change of { $wanted }, staked lines (correlation { $correlation }), each visit
question-permanent-alone = smallest change, staked lines (correlation { $correlation })
question-temporary = change of { $wanted }, new lines, each visit
question-temporary-alone = smallest change, new lines
question-trend = trend of { $wanted } a year in { $visits } yearly visits, staked lines, each visit
effort-normal = These numbers take lines as normally spread. With few lines, many zeros or clumped shrubs they are too kind: add some.
effort-pilot-unsure = The standard deviation of a small pilot is itself unsure; reading a few lines more than this costs little.
effort-trend = The trend is judged by the means of the years. Good and poor years count only as far as --between-years says.
title-lengths = Length against number
column-length-m = length (m)
column-minutes = minutes
column-remark = remark
cheapest = cheapest
cheapest-beyond-pilot = cheapest, beyond the pilot's length
beyond-pilot = beyond the pilot's length
lengths-sure = With lines of the pilot redrawn, eight in ten times the cheapest length lay from { $low } to { $high } m; in { $nearly } of them the one above cost at most a tenth more than the cheapest.
lengths-fall = Variance falls with length to the power { $fall } (1: each metre tells something new; 0: a longer line tells nothing new).
lengths-unknown = Length against number takes a pilot of two lines of one length or more, with starts and stops, and a goal or --half-width.
costs-cheapest = { $lines } lines of { $length } m: { $minutes } minutes
costs-likely = With lines of the pilot redrawn, eight in ten times the cheapest length lay from { $low } to { $high } m.

## Simulated
title-simulated = The same change, survey by survey
simulated-normal = Of { $surveys } surveys of { $lines } staked lines, drawn from normal lines, { $chance } show it (Monte-Carlo error { $error }); the closed form says { $closed }.
simulated-stand = Drawn from an invented stand with clumps of about { $clump } plants, { $chance } show it (error { $error }), where the closed form for lines that vary as much says { $closed }. There lines of { $length } m have cover { $cover }, standard deviation { $deviation }, { $bare } of them without a shrub; cover changes by { $change }, by line with a standard deviation of { $differences }, since plants come or go one by one.

## Strata
title-strata = Lines of each stratum
column-stratum-name = stratum
column-by-area = by area
column-by-spread = by area and spread
strata-error = Standard error of the site's cover: { $area } by area, { $spread } by area and spread.

## A sequential plan
title-sequential = A plan that may stop after any line
sequential-level = Every look uses { $level } confidence to each side, so that all looks together are wrong in at most { $error } of surveys, for met and for not met alike.
sequential-how = On paper: after each look work out the mean and the standard deviation of the lines so far. Stop for met or not met where the mean lies further from the goal than “times” standard deviations; else read on. After the last line the plan ends. Where cover is low or shrubs stand in patches, paper says “not met” too easily (in simulated surveys of such stands, falsely in up to 29 of 100): let the command confirm that one.
sequential-after = Afterwards: tautline assess … --sequential “{ $plan }”, which judges by the same level with the interval that suits cover.
sequential-beforehand = Choose the plan before the first line is read, and read lines in their order.
column-times = times
column-true-cover = if cover is
column-met = met
column-not-met = not met
column-neither = neither
column-lines-on-average = lines on average
sequential-normal = For lines that are normally spread, 10 000 surveys each. Uneven stands fare worse on paper than this.
standing-no-look = Under the sequential plan: { $lines } lines read, not one of the looks. Read on.
standing-go-on = Under the sequential plan: after { $lines } lines neither is shown. Read on.
standing-met = Under the sequential plan: met, after { $lines } lines. Stop; lines read after that don't count under it.
standing-not-met = Under the sequential plan: not met, after { $lines } lines. Stop; lines read after that don't count under it.
standing-end = Under the sequential plan: all { $lines } lines are read and neither is shown. The plan ends here.
standing-none = The sequential plan can't judge this figure: it is made for the cover of lines in one stratum.

## Benchmarks
benchmarks-of = { $file }: { $why }
benchmark-none = No published number has “{ $found }” in its name or plants. tautline plan benchmarks lists all.
benchmark-key = name
benchmark-published = as published
benchmark-plants = plants that count
benchmark-season = season
benchmark-region = region
benchmark-source = source
benchmark-ground = ground
scale-stand = a stand
scale-nest = the few metres around a nest or shrub
scale-landscape = a landscape
benchmark-rule-unsaid = The source wasn't seen to say how gaps and dead wood are read. Two ways of applying the method differed by up to { $times } times on the same ground (Wambolt et al. 2006).
benchmark-rule-unlike = It was read under “{ $rule }”, which isn't your protocol. Two ways of applying the method differed by up to { $times } times on the same ground (Wambolt et al. 2006).
benchmark-nest-to-stand = It speaks of the ground around nests, where cover was { $least } to { $most } times that of the stand (Miller et al. 2003).
benchmark-stand-to-nest = It speaks of stands; around nests cover was { $least } to { $most } times that (Miller et al. 2003).
benchmark-scale-unlike = It speaks of { $theirs }, you of { $yours }: nothing follows from one for the other.
benchmark-from-memory = Known from memory: look it up before you judge by it.
benchmark-fits = Scale and rule are yours. As a goal: --goal "{ $goal }"
benchmark-range = { $low } to { $high }
benchmark-could-be = No match. Read your way, its numbers could be anything in { $ranges }. Agree on the rule with whoever set the goal before you judge by it.
benchmarks-not-official = None of these is an official tolerance, and none was made for your ground. Which plants count, season and region are yours to compare.
