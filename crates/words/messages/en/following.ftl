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
