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
