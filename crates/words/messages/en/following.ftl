### Words of tautline: what is followed, as pages and on screens.

## Pages
follow-parts-of = Parts: { $title }
follow-checks = How it was worked out, and checks that ask for no bell curve
follow-sources-about = How much of what varies is readers, lines, plots, sites and years, and what would make the mean surer.
follow-sources-of = The mean of { $year }
follow-sources-parts = What varies
follow-sources-picture = How much of what varies each part is
follow-sources-axis = share of all variance, %
help-sources-report = Write the page of where the doubt comes from, as HTML

## Change
pairing-lost = Lines of one name were taken as new ones: a standard error of { $own }. As the same lines they would have one of { $same }; to be as sure, new ones take { $times } times as many.
pairing-lost-nothing = Lines of one name were taken as new ones, which cost nothing here: a standard error of { $own }, and of { $same } as the same lines.

## In the app
follow-all-sites = All sites over the years
follow-what = What is asked
follow-two-visits = what changed between two visits
follow-all-visits = the trend over all visits
follow-earlier-visit = Earlier visit
follow-later-visit = Later visit
follow-ask-more = Ask more closely
follow-by = Split by
follow-by-nothing = not at all
follow-by-species = species
follow-by-form = growth form
follow-by-group = group of the plant list
follow-matters = The change that matters, in points of cover
follow-chance = Chance to see a change
follow-untreated = A neighbour that was left untreated
follow-untreated-what = Its change in the same years is taken off, so that a dry year isn’t taken for the treatment.
follow-new-lines = lines of the same name are new ones: the stakes were lost
follow-points-not-read = Points of cover, such as 5 or 2.5, above 0 and at most 100.
follow-one-year = This site was read in one year only. Change needs two; a trend needs four.
follow-working = Working it out …
follow-stop = Stop here
follow-take-page = The page as a file
follow-file-change = change
follow-file-trend = trend
follow-file-readers = readers side by side
follow-file-sources = where the doubt comes from
follow-so-many = { $sites ->
    [one] 1 site was read in years enough
   *[other] { $sites } sites were read in years enough
}
follow-no-site = No site was read in the years that are asked about.
follow-too-many = So many sites are too long for one page here: the command writes it.
follow-onward = Further
follow-to-site = The site’s report
follow-to-all = All sites over the years
follow-to-agree = Readers side by side
follow-agree-screen = Readers side by side
follow-agree-parts = Readers
follow-agree-readers = The same lines
follow-agree-log = Log and certificates
follow-agree-sources = Where doubt comes from
follow-agree-what = Lines that two people read in the same year, set side by side. Nobody’s fault: who is right is for the rule book and the plant.
follow-agree-how = Let a second person read a line without the first sheet: on the screen of lines, “a second reader of the same line”. Practice and calibration lines count like any other.
follow-against = Set beside
follow-first-pass = whoever read first
follow-which = Where and when
follow-all-places = everywhere
follow-more-pairs = { $more } more pairs of readers: choose a place above.
follow-tolerance = Your office’s tolerance, in points of cover
follow-log-heading = Into the log
follow-log-what = What is shown above is judged by the tolerance and kept in this notebook: who, beside whom, on which day and lines. Three lines or more with their day are the fewest.
follow-judge = Judged by
follow-log-write = Write it into the log
follow-to-log = Open the log
follow-log-needs-tolerance = A calibration is judged by your office’s tolerance: write it above, such as 3.
follow-log-known = Nothing new for the log.
follow-logged = { $records ->
    [one] One calibration is in the log.
   *[other] { $records } calibrations are in the log.
}
follow-log-empty = The log is empty. Under “The same lines” what readers came to is written into it.
follow-span = Days that a calibration lasts in your office
follow-span-what = None is built in. Without one nobody is due who has passed once.
follow-span-not-read = A whole number of days.
follow-due = Due.
follow-in-time = In time.
follow-all-readers = all readers
follow-certificates = Certificates to print and sign
follow-print = Print
follow-sources-what = How much of what varies is lines, readers and years, and whether an hour is better spent on another line or on a day of calibration.
follow-year = Readings of
follow-all-years = all years
follow-costs = What things cost you
follow-costs-what = In minutes of a crew. Empty fields count as nothing; without any, what helps most at once comes first.
follow-cost-walk = To walk to the next line
follow-cost-lay = To lay the tape and take it up
follow-cost-read = To read one metre
follow-cost-travel = To get to a further site
follow-cost-day = A day of calibration, of each reader (480)
follow-minutes-not-read = Minutes as a number, such as 12.
