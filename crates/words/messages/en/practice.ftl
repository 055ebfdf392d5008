### Practice: lines with a key, marks, drills, the coach's paper.

## Help
help-practice = Practise until everybody reads alike: lines with a key, marks, drills, paper for a class
help-practice-line = A practice line to read, drawn to scale, with or without its key
help-practice-grade = Set sheets beside the key, intercept by intercept
help-practice-drill = Arithmetic by hand, where lines start, what is in or out; with the solution
help-practice-set = Different lines on paper, the keys apart
help-practice-class = Mark a class: places, ties, groups, which mistakes cost what
help-practice-level = How hard, from 1 (whole shrubs, clear ground) to 5 (overlap, dead wood, slopes) (1)
help-practice-number = The number of the line; the same number is the same line (1)
help-practice-length = How long the line is (50 ft, or 15 m)
help-practice-tape = How the tape is numbered: ft-in, decimal-ft or metric (ft-in)
help-practice-key = Show the key
help-practice-drawing = Write the line as a page to look at or print
help-practice-sheets = Tables of sheets: name, line, species, start, stop (or length), percent; group and date if you like
help-practice-tolerance = How far an edge may lie off and still be right (two divisions)
help-practice-bands = Marks for cover by percentage points off the key, such as 1=10,2=7,4=4
help-practice-marks = Marks for edges, species and arithmetic, such as 20,10,10
help-practice-real = Table of what experts read on real lines, in place of practice lines
help-practice-again = Table of what experts read on the same lines later in the day
help-practice-best = How many of a group's learners count (3)
help-practice-kind = What is practised: add, feet-to-inches, subtract, whole, line-starts, in-or-out or sight (whole)
help-practice-solution = Show the solution
help-practice-answer = Your answer, to be looked at: a number; lengths, or “in” and “out”, with commas
help-practice-lines = How many different lines (6)
help-practice-page = Write a page to look at or print
help-practice-forget = Remove the tables of sheets when done: the class list is gone

## The line
practice-title = Practice line { $line }
practice-line-about = { $length } of tape, level { $level }. Rules: { $protocol }.
practice-line-slope = The ground rises { $slope } %. The tape lies along it and is read as it lies; cover in per cent is the same on the level.
practice-made-up = An invented line in salt-desert shrubland at Hollow Flat. No real place, no official exercise.
practice-drawing-title = Practice line { $line }, seen from straight above
practice-drawing-about = A tape of { $length } in strips from left to right, with shrubs of { $species } species beside and over it, as far as the level has them also dead parts, grass, flowers, litter and rock. The key says where canopy starts and stops; this text doesn't.
practice-edge = Read along the dark line, the edge of the tape. Dashed outlines lie under another canopy.
practice-key-title = Key of line { $line }
practice-key-cover = Canopy { $canopy } of the line; sum of species { $sum }.
practice-grass = grass
practice-flower = flower
practice-stalks = flower stalks
practice-litter = litter
practice-rock = rock
practice-dead = dead

## Intercepts beside the key
practice-right = right
practice-start-off = start off
practice-stop-off = stop off
practice-both-off = both edges off
practice-other-species = another species
practice-in-parts = in parts
practice-as-one = as one
practice-missed = missed
practice-invented = not there
practice-row-right = { $species } { $start } to { $stop }: right.
practice-row-start-off = { $species } { $start } to { $stop }: its start was read at { $read-start }. { $because }
practice-row-stop-off = { $species } { $start } to { $stop }: its stop was read at { $read-stop }. { $because }
practice-row-both-off = { $species } { $start } to { $stop }: read from { $read-start } to { $read-stop }. { $because }
practice-row-other-species = { $species } { $start } to { $stop }: written as another species.
practice-row-in-parts = { $species } { $start } to { $stop }: one intercept by the rule, written in parts. { $because }
practice-row-as-one = { $species } { $start } to { $stop }: several intercepts by the rule, written as one. { $because }
practice-row-missed = { $species } { $start } to { $stop }: not on the sheet. { $because }
practice-row-invented = { $species } { $start } to { $stop }: no canopy that counts here. { $because }
practice-because-dead = Dead wood stands there; under these rules it isn't live canopy.
practice-because-other = What stands there is { $what }, and that doesn't count.
practice-because-gap-closed = A gap of { $gap } stays open under these rules.
practice-because-gap-left-open = A gap of { $gap } is read as canopy under these rules.
practice-because-overlap = It stands over or under another species; each species is written in full.
practice-because-along = Its length is right; it lies { $by } along the tape from where it stands.

## Marks
practice-sheet-title = { $name }, line { $line }
practice-sheet-cover = Canopy by the rows { $rows }, by the key { $key }: { $off } percentage points apart.
practice-sums-up = The per cent that was worked out, { $stated }, is what the rows come to.
practice-sums-up-not = The per cent that was worked out, { $stated }, is not what the rows come to; they come to { $rows }.
practice-marks = Marks { $all } of { $most }: edges { $edges }, species { $species }, cover { $cover }, arithmetic { $arithmetic }.
practice-example-marks = These marks and bands are an example. Type in those of the year's rules; nobody's official tolerance is offered here.
practice-lengths-right = { $right } of { $all } lengths agree with the key.
practice-named = One habit would explain { $explained } of the { $faults } rows that differ: { $mistake }.
practice-alike = The sheet can't tell it from: { $alike }.
practice-one-expert = Line { $line }: only one expert read it. A key wants two or more.
practice-band-narrow = Line { $line }: a band of { $band } percentage points is narrower than the { $spread } by which the experts themselves differ. Nobody can be held to it.
practice-key-moved = Line { $line }: read again, the experts' cover moved by { $off } percentage points. The tape or the plants may have moved; look before you mark.

## Mistakes
mistake-closes-gaps = gaps were closed that the rules leave open
mistake-leaves-gaps-open = gaps were left open that the rules read as canopy
mistake-counts-dead = dead wood was counted as live
mistake-counts-grass = grass was read as canopy
mistake-counts-flowers = flowers were read as canopy
mistake-counts-stalks = flower stalks were read as canopy
mistake-counts-litter = litter was read as canopy
mistake-counts-rock = rock was read as canopy
mistake-from-far-end = the tape was read from its far end
mistake-other-edge = the tape was read along its other edge
mistake-tape-off = everything was read further along the tape, or back, by the same length
mistake-wider = edges were seen too far out
mistake-narrower = edges were seen too far in
mistake-misses-overlap = where two species overlap, only the upper one was written
mistake-confuses = one species was written as another
mistake-from-beside = the eye was beside the tape, not straight above it
mistake-from-behind = the eye was behind or ahead of the edge, not straight above it
mistake-whole-crown = the whole width of crowns was written that only hang over the tape
mistake-drops-last-digit = the last digit was dropped
mistake-inches-as-tenths = inches were written as tenths of a foot
mistake-rounds = readings were rounded too coarsely
mistake-leaves-out-small = small intercepts were left out

## Parallax
practice-sight-title = Why you look straight down
practice-sight-about = A canopy edge above the tape, seen straight from above and from an eye that leans.
practice-sight-height = { $height } high
practice-sight-angle = { $degrees }° from straight down
practice-sight-right = straight above
practice-sight-off = An edge { $height } above the tape is read { $off } off from an eye that leans { $degrees }°: { $height } × tan { $degrees }°.

## Drills
practice-drill-add = Add up these intercepts, in inches.
practice-drill-feet-to-inches = Turn each into inches and add them up.
practice-drill-subtract = Each intercept is given by its start and its stop. Find the lengths and add them up, in inches.
practice-drill-whole = How much of a line of { $line } do these intercepts cover? Per cent, one decimal.
practice-starts-title = Where lines start
practice-starts-asked = Along a baseline of { $baseline } { $lines } lines start at equal steps from a random start; drawn was { $first }. Where does each line start?
practice-starts-solved = One step is { $baseline } over { $lines }, { $step }. The lines start at { $starts }.
practice-in-or-out-title = In or out
practice-in-or-out-asked = A plant is in where its canopy reaches over the edge of the tape; one that only touches it is out. Which are in?
practice-in-or-out-drawn = A plant is in where its canopy reaches over the dark line, the edge of the tape; one that only touches it is out. Write in or out for each.
practice-in = in
practice-out = out
practice-to-the-left = { $length } to the left
practice-to-the-right = { $length } to the right
practice-column-line = line
practice-column-plant = plant
practice-column-along = middle along the tape
practice-column-aside = middle from the edge
practice-column-radius = radius of the canopy
practice-column-in-or-out = in or out
practice-place-right = { $some } of { $all } are right.
practice-place-wrong = Look again at { $numbers }.
practice-answer-starts = “{ $found }” are no lengths with commas, such as “7 m, 23 m, 39 m”.
practice-answer-in-or-out = “{ $found }” are not “in” and “out” with commas, in the order of the plants.
practice-drill-right = Right.
practice-drill-wrong = Not this time. --solution shows the way, line by line.
practice-solution = Solution

## A class
practice-class-title = Class
practice-groups-title = Groups
practice-mistakes-title = What cost marks
practice-mistakes-about = Each habit that was named, on how many sheets, and the marks that those sheets lost in all.
practice-column-place = place
practice-column-name = name
practice-column-group = group
practice-column-lines = line by line
practice-column-marks = marks
practice-column-best = best { $best }
practice-column-all = all
practice-column-mistake = habit
practice-column-sheets = sheets
practice-column-lost = marks lost
practice-column-species = species
practice-column-start = start
practice-column-stop = stop
practice-column-length = length
practice-tied = shared
practice-no-sheets = No sheet could be marked.
practice-line-unknown = “{ $found }” is no practice line. Lines are called by level and number, such as 3-17; real lines need --experts.
practice-columns = The table needs the columns name, line and species, and start and stop or length.
practice-cell-length = “{ $found }” is no length. Write it as 5'3", 10.5 in, 3.2 m, or put the unit in the heading.
practice-cell-edges = The stop has to lie beyond the start.
practice-cell-date = “{ $found }” isn't a date. Write it as 2026-06-01.
practice-option-bands = “{ $found }” isn't understood. Narrowest first, such as 1=10,2=7,4=4.
practice-option-marks = “{ $found }” isn't understood. Three numbers, such as 20,10,10.
practice-option-level = “{ $found }” isn't a level. Levels go from 1 to 5.
practice-written = Written to { $file }.
practice-not-forgotten = No sheet was taken away, since not every row on them was read.
practice-forgotten = { $file } is removed. Nothing else was kept of the class.

## Paper
practice-set-title = Practice lines
practice-set-about = Print the lines and keep the keys. On paper a strip is to scale along its own ruler; lay nothing beside it but the page itself.
practice-set-keys = Keys: keep apart
practice-set-sheet = Sheet for line { $line }
practice-set-name = Name
practice-set-total = Total
practice-set-percent = Per cent of the line
practice-set-tally = Tally
practice-set-protests = Protests
practice-set-protest-columns = time, raised by, line, row, what, decided and why, by whom
practice-set-placard = Line { $line }
practice-set-placard-about = Don't touch or move the tape. Look before you reach under a shrub. Read along the edge that is marked, straight from above.
practice-set-cautions = Walk the site first: heat, lightning, snakes, ticks, uneven ground, roads. Local rules and the landholder's word come first.
practice-cost-title = What each habit would cost on this line
practice-to-print = for printing

## Protests
help-practice-protests = A table of protests: raised by, line, row, about, decided (open, upheld, turned down), why, decided by
protests-columns = A table of protests needs the columns “raised by” and “about”; “line”, “row”, “decided”, “why” and “decided by” go with them.
protests-decision = “{ $found }” is no decision. “open”, “upheld” or “turned down” would do; the protest stands as open.
protests-open = { $protests ->
        [one] One protest is open
       *[other] { $protests } protests are open
    }: places may still change.
protests-strange-lines = Nobody handed in the lines that these protests name: { $lines }.
protest-open = open
protest-upheld = upheld
protest-turned-down = turned down
protest-by = raised by
protest-line = line
protest-row = row
protest-about = about
protest-decided = decided
protest-why = why
protest-judge = decided by
protests-about = Raised by a learner or a group, about a row of a sheet or of the key. A decision changes no marks by itself: put the sheet or the key right and mark again. The list goes when the class list goes.
protests-more = One more protest
protests-out = Hand out the protests as a table
protests-take-away = Take this protest away
