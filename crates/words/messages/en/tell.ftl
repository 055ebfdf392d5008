### Words of tautline: photos and places in reports.

report-photos = Photos, year by year
report-photos-line = Line { $line }, { $shows }
report-photos-site = The site, { $shows }
report-photos-met = Met on the visits of this year
report-photos-places = Where these photos were taken is kept back, as the site's setting says. What can be seen on one may still give the place away: look at each before it is handed on.
report-photo-said = { $view }, photographed on { $day }
report-photo-place = taken at { $latitude } { $longitude } (latitude, longitude, WGS 84)
report-photo-bearing = looking { $degrees }° from true north
report-photo-lacking = the picture itself isn't in this copy of the notebook
report-photo-too-large = the picture is too large to stand here with the others; one that is 1600 pixels wide or less would do
report-photo-damaged = the picture is damaged and can't be shown
help-report-full = tell all places as they are, and say on the report that it isn't for handing on
report-finding-kept-back = A cell that should say where a line of this site lies isn't understood. What stands in it is kept back, as the site's setting says.

## Where the lines lie
report-map = Where the lines lie
report-map-said = The lines of { $site } to scale, north up: { $lines }. A line whose end wasn't written down is the square of its zero alone.
report-map-table = Where each line begins and ends (degrees, WGS 84)
report-column-end = end (latitude, longitude)
report-map-withheld = Where the lines lie was written down and is kept back, as the site's setting says. Ask whoever looks after the site.
report-map-blurred = Where the lines lie is told no closer than a square { $width } km wide, as the site's setting says. The middle of the square (latitude, longitude, WGS 84): { $middle }. A line may begin up to { $metres } m from there.
holds-exact-places = This holds exact places that the site's setting keeps back from others: it is not for handing on.

## Sheets of which nobody knows how they were read
rule-unknown = what is unknown
rule-gap-limit-unknown-up-to = how wide an unknown gap rule may have been
rule-unknown-gap = Nobody knows any more which gaps were read as canopy under “{ $protocol }”. Each figure is shown between every edge as written and all gaps up to { $most } closed: whatever the rule was, it lies between.
rule-unknown-gap-closed = Nobody knows any more which gaps up to { $most } were read as canopy under “{ $protocol }”. Here all gaps up to { $limit } are read as canopy, which comes to the same whatever the rule was.
brought-to-widest = They were brought to the widest rule that any of them may have been read under: gaps up to { $limit } closed, also those that handbooks leave open; what counts under all of them.
finer-than-it-may-have-been = { $site }, line { $line }: a gap rule of { $asked } is finer than { $most }, which nobody can rule out for this line. Gaps that small may never have been written down, so it can't be worked out. Without --gap-rule the figures are shown between the two.
rule-unknown-dead = Nobody knows any more whether dead canopy was counted under “{ $protocol }”. Each figure is shown between dead canopy that is marked left out and counted. Dead canopy that was written down without a mark can't be told from live.
rule-unknown-cover = Nobody knows any more which meaning of cover “{ $protocol }” had in mind: outline, the leaves and twigs themselves, or the ground. No arithmetic tells them apart, so these figures stand for themselves.
protocols-apart-unknown = These readings can't be set side by side: nobody knows any more which rule some of them had for { $rules }, and no arithmetic undoes that. Each year stands for itself.
methods-gap-unknown = Which gaps were read as canopy isn't known any more. The figures lie between every edge as written and all gaps up to { $most } closed, also those that handbooks leave open.
methods-dead-unknown = Whether dead canopy was counted isn't known any more. The figures lie between marked dead canopy left out and counted.
report-curve-said-unknown = With all gaps under { $recorded } closed, whatever rule the lines were read under, canopy cover is { $cover }; closing gaps up to { $widest } would make it { $most } on the same lines. A finer rule can't be worked out: nobody knows which gaps that small were written down.
report-curve-dead-unknown = Nobody knows any more whether dead canopy was counted on these lines, so there is no one curve.
report-next-visit-agree = To follow change, agree on rules and write them down as a protocol first, since nobody knows any more by which these lines were read. Then read the same lines again at the same time of the year ({ $day } was the last day of reading) and at the same stage of growth.
report-next-visit-agree-undated = To follow change, agree on rules and write them down as a protocol first, since nobody knows any more by which these lines were read. Then read the same lines again at the same time of the year and at the same stage of growth, and write down the day.
packet-gap-unknown = The gap rule of this protocol is unknown. Lines can't be read under it: choose a rule and write it down.

## Exports
export-column-gap-limit-high-m = The widest that the gap limit may have been, where nobody knows it any more; the limit beside it is then the least
help-export-publisher = who gives the data out, for the description of a data package or a Darwin Core archive
