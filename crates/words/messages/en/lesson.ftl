### Lessons: a line read on the screen, drills, and progress from lesson to lesson.

## Progress
help-practice-progress = Progress over time, from graded results: one learner's lessons in their order
help-practice-results = Results as practice grade --json or the app writes them: files, or folders of them
help-practice-within = Percentage points from the key within which a lesson is unmarked on the picture (1)
help-practice-learner = Only this learner
lesson-progress-title = Progress
lesson-progress-about = Each lesson beside its key. Cover is the one that was worked out, else what the rows come to.
lesson-progress-none = No lesson has been graded yet.
lesson-progress-lessons = { $lessons ->
    [one] One lesson.
   *[other] { $lessons } lessons.
}
lesson-progress-lessons-from = { $lessons ->
    [one] One lesson.
   *[other] { $lessons } lessons, from { $from } to { $to }.
}
lesson-progress-ends = { $number ->
    [one] Cover was { $first } percentage points from the key in the first lesson, { $last } in the last.
   *[other] Cover was { $first } percentage points from the key on average over the first { $number } lessons, { $last } over the last { $number }.
}
lesson-progress-levels = They are not of one level: a harder line is further off for everybody.
lesson-progress-habit = { $lessons ->
    [one] Named in the last lesson: { $habit }.
   *[other] Named in { $lessons } lessons, the last among them: { $habit }.
}
lesson-progress-habit-gone = { $since ->
    [one] Named in { $lessons }, not in the last lesson: { $habit }.
   *[other] Named in { $lessons }, not in the last { $since } lessons: { $habit }.
}
lesson-progress-picture = How far { $name } was from the key, lesson by lesson
lesson-progress-axis = Percentage points of cover from the key; above zero is too much
lesson-progress-when = line
lesson-progress-band = the band
lesson-progress-outside = outside the band
lesson-progress-table = Lessons of { $name }
lesson-progress-right = { $right } of { $all }
lesson-column-line = line
lesson-column-day = day
lesson-column-off = points off
lesson-column-right = right
lesson-column-edges = edges
lesson-column-species = species
lesson-column-cover = cover
lesson-column-arithmetic = arithmetic
lesson-column-marks = marks
lesson-column-habit = habit
practice-not-results = These are no graded results. practice grade --json writes them.
practice-newer-results = These results are of a newer version. A newer tautline reads them.
practice-broken-results = These results break off or lack something; grade the sheets again.
practice-no-results = No graded lesson was found.
practice-option-within = “{ $found }” is no number of percentage points, such as 1.5.

## Sheets
practice-sheets-title = Sheets beside the key
practice-rows-all-right = { $all ->
    [one] The one intercept is right.
   *[other] All { $all } intercepts are right.
}
practice-rows-right = { $right } of { $all } intercepts are right.
practice-rows-none = There is nothing on this line, and nothing was written: that is right.
lesson-row-left = { $row ->
    [0] { $name }, line { $line }: { $why }
   *[other] { $name }, line { $line }, row { $row }: { $why }
}
lesson-key-spread = Line { $line }, read by { $readers }: the key's cover is { $cover }; those who read it lie { $spread } percentage points apart.

## Sight from above
lesson-sight-asked = A canopy edge stands { $height } above the tape, and the eye leans { $degrees }° from straight down. How far off is the edge read? { $unit ->
    [in] Answer in whole inches.
   *[other] Answer in whole centimetres.
}
lesson-sight-solved = { $height } × tan { $degrees }° = { $off } { $unit }. From straight above it would be nothing.
lesson-sight = Why you look straight down
lesson-sight-about = An eye that leans reads an edge off; see how far, and work it out.
lesson-sight-what = Lean the eye and see where the edge is read. The higher the canopy, the further off.
lesson-sight-question = How far off?
lesson-lean = How far the eye leans
lesson-degrees = { $degrees }° from straight down

## Practice on the screen
lesson-practice = Practice
lesson-practice-about = Read invented lines until you read as the key does. All of it works without a network.
lesson-name = Your name, as you choose it
lesson-name-about = It stays on this device and stands on your results alone. Practice never enters the notebook, and is never shared with it.
lesson-nobody = no name
lesson-coach = For a coach
lesson-read = A line to read
lesson-read-about = Walk along a line seen from above, mark where canopy starts and stops, and see it beside its key.
lesson-arithmetic = Arithmetic by hand
lesson-arithmetic-about = Add up, turn feet into inches, subtract, work out per cent; with the solution line by line.
lesson-starts = Where lines start
lesson-starts-about = Equal steps along a baseline from a random start.
lesson-in-or-out = In or out
lesson-in-or-out-about = Does a plant's canopy reach over the edge of the tape?
lesson-progress-title-about = Your lessons in their order: how far from the key, marks by part, habits.
lesson-paper = Paper for a class
lesson-paper-about = Different lines, sheets, tally, protests, placards; the keys apart.
lesson-paper-what = Choose what the lines are to be. Each has a number of its own, counted on from the first.
lesson-class = Mark a class
lesson-class-about = Sheets typed fast, keys that experts agreed on, places, and which habits cost points.
lesson-class-what = Type the sheets, or take in tables of them. Practice lines are called by level and number, such as 3-17; any other name is a real line, and its key is what experts read on it.

## Which line
lesson-level = How hard
lesson-level-1 = 1: whole shrubs of two species, clear ground
lesson-level-2 = 2: openings under and over the gap rule, grass
lesson-level-3 = 3: dead parts, dead shrubs, litter, rock
lesson-level-4 = 4: overlap, overhang, small under large, flowers, stalks
lesson-level-5 = 5: four species, a slope, neighbours closer than the gap rule
lesson-tape = Numbers on the tape
lesson-tape-ft-in = feet and inches, to the half inch
lesson-tape-decimal-ft = feet in tenths and hundredths
lesson-tape-metric = metres and centimetres
lesson-length = Length of the line
lesson-rules = Rules that it is read by
lesson-number = Number of the line; the same number is the same line
lesson-way = How you write it down
lesson-way-picture = set edges on the picture
lesson-way-sheet = type starts and stops, as on a sheet
lesson-read-what = The line is drawn to scale, seen from straight above. Everything on it is invented.
lesson-begin = Begin
lesson-year = Bands and marks
lesson-year-bands = Marks for cover by percentage points off the key
lesson-year-marks = Marks for edges, species and arithmetic
lesson-year-tolerance = How far an edge may lie off and still be right (two divisions of the tape)

## Reading it
lesson-about = Level { $level }. Rules: { $protocol }.
lesson-meaning = What the marks mean
lesson-piece = Practice line { $line }, seen from straight above: piece { $piece } of { $pieces }
lesson-walk = Place on the tape
lesson-walk-look = The line, seen from straight above
lesson-how = How to set edges
lesson-walk-how = Push the picture along; touch where an edge is, then drag the handle or step a division. By keyboard: arrows step, with Shift further, Enter sets, 1 to 4 choose the species, Backspace takes back.
lesson-at = { $place } · { $species }
lesson-at-open = { $place } · { $species } from { $since }
lesson-at-held = { $place } · { $species }, this edge is being moved
lesson-species = Species
lesson-steps = Step along the tape
lesson-far-back = further back
lesson-back = one division back
lesson-on = one division on
lesson-far-on = further on
lesson-start-here = Start here
lesson-stop-here = Stop here
lesson-put-down = Put it here
lesson-started = Starts at { $place }.
lesson-stopped = { $species } { $start } to { $stop }
lesson-no-length = A stop has to lie beyond its start.
lesson-undo = Take back
lesson-undone = Taken back.
lesson-leave = Leave it
lesson-larger = Larger
lesson-move-start = Move start
lesson-move-stop = Move stop
lesson-take-away = Take away
lesson-lengths-only = lengths only, without starts and stops
lesson-hint-inches = A number alone is inches, such as 40 1/2; 3'4" is understood too.
lesson-hint-decimal-feet = A number alone is feet in tenths and hundredths, such as 3.38.
lesson-hint-metres = A number alone is metres, such as 1.03; 103 cm is understood too.
lesson-row = Row
lesson-cell = { $column }, row { $row }
lesson-percent = Per cent of the line, worked out by hand
lesson-percent-about = May stay empty; then there are no marks for arithmetic.
lesson-hand-in = Hand it in
lesson-another-choice = Choose another line

## Beside the key
lesson-beside = What you read, and the key
lesson-beside-about = Above the ground what was written, below it the key.
lesson-look-again = Nobody reads like the key at once. Look at each row that was off on the picture below, then read the same line again.
lesson-next = Another line
lesson-again = The same line again

## Drills
lesson-kind = What is practised
lesson-kind-add = add
lesson-kind-feet-to-inches = feet to inches
lesson-kind-subtract = subtract
lesson-kind-whole = the whole of it
lesson-answer = Your answer
lesson-check = Check
lesson-solve = Show the solution
lesson-next-exercise = Next exercise
lesson-drill-wrong = Not this time. Look at it again, or at the solution.
lesson-start-of = Start of line { $line }
lesson-plant = Plant { $number }

## Results
lesson-results = Results as files
lesson-results-about = They stay on this device until you take them away. “tautline practice progress” reads the same files.
lesson-results-of-others = Look at results from files too; they aren't kept
lesson-results-out = Hand out as a file
lesson-forget-lessons = Take all lessons away
lesson-forget-sure = Yes, take it all away

## A coach's desk
lesson-lines = How many lines
lesson-make = Draw them
lesson-drawing = Drawing: { $done } of { $all } lines.
lesson-stop = Stop
lesson-print = Print
lesson-as-file = As a file
lesson-laid = { $length } of tape, { $tape }; { $protocol }
lesson-laid-about = All lines of the day are laid alike.
lesson-best = How many of a group's learners count
lesson-sheets = Sheets
lesson-sheet = The open sheet
lesson-sheets-whose = Whose sheets
lesson-sheets-learners = learners' ({ $sheets })
lesson-sheets-experts = experts' ({ $sheets })
lesson-sheets-again = experts', read again ({ $sheets })
lesson-sheets-experts-about = Two or more who read the same real line make its key: their mean cover, and the rows of the first of them.
lesson-sheet-of = { $name }, line { $line }, { $rows ->
    [one] one row
   *[other] { $rows } rows
}
lesson-sheet-more = One more sheet
lesson-sheet-next = Next sheet
lesson-sheet-enter = Enter goes to the next cell, and from an empty last row to the next sheet.
lesson-group = Group or team
lesson-line = Line
lesson-tables = Tables of sheets
lesson-tables-about = The same tables that the command reads: name, group, line, species, start, stop or length, percent.
lesson-tables-in = Take tables in
lesson-tables-out = Hand out as a table
lesson-mark = Mark them
lesson-marking = Marking: { $done ->
    [one] one sheet
   *[other] { $done } sheets
} done.
lesson-forget-class = Take the class list away
lesson-forgotten = The class list is gone; nothing of it was kept elsewhere.

## What to do about a habit
lesson-advice-gaps = Next time, lay the rule's length into each gap before you write.
lesson-advice-dead = Next time, look for live leaves or buds; what has none stays off the sheet.
lesson-advice-others = Next time, pass over whatever is no canopy of a shrub that counts.
lesson-advice-tape = Next time, find zero and the edge that is read before the first intercept.
lesson-advice-sight = Next time, bring your eye straight above the edge; a plumb line shows it.
lesson-advice-overlap = Next time, write both in full where two stand over each other.
lesson-advice-species = Next time, look at leaves and stems once more before you name it.
lesson-advice-crown = Next time, write only what stands over the edge of the tape itself.
lesson-advice-numbers = Next time, read the tape to its last division and say the number aloud.
lesson-advice-small = Next time, go slowly: what covers one division is an intercept too.
