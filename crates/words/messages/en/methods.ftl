### Words of tautline: the methods paragraph of a report, in sentences that can stand in somebody's own report.

## How it was read
methods-read = { $lines ->
    [one] One straight line was read by line intercept on { $site } { $when }.
   *[other] { $lines } straight lines were read by line intercept on { $site } { $when }.
}
methods-on = on { $day }
methods-between = between { $first } and { $last }
methods-undated = on days that were not written down
methods-protocol = The protocol was “{ $name }” (fingerprint of its meaning begins { $fingerprint }; { $source }).
methods-source = source: { $source }
methods-source-memory = source, from memory: { $source }
methods-source-none = no source named
methods-no-protocol = No protocol was handed in.
methods-silence = Where the protocol is silent, this was taken: { $taken }.

## How a line was worked out
methods-counts = What counts: { $what }.
methods-except = { $what }, except { $except }
methods-no-gap = No gap was closed; every edge counts as written.
methods-gap = A gap shorter than { $limit } was read as canopy.
methods-gap-asked = That limit was asked for and is coarser than the one read under, or the same.
methods-gap-bridged = These were read as canopy where shorter: { $cases }.
methods-gap-breaks = These stayed open: { $cases }.
methods-dead-left-out = Dead canopy is part of no figure.
methods-dead-apart = Dead canopy was worked out apart from live.
methods-dead-joins = Dead canopy was worked out apart from live; a dead stretch shorter than the gap limit that touches live canopy was read as live (Boyd, Bates and Miller 2007).
methods-dead-counts = Dead canopy counts like live.
methods-line = The cover of a line is the length of tape under live canopy of what counts, overlap once, over the length that was read. Lengths are kept exactly, and only what is shown is rounded, once.
methods-lengths-only = { $lines ->
    [one] For one line only lengths were written down
   *[other] For { $lines } lines only lengths were written down
}; where several species could overlap, canopy cover lies between a low and a high end, and both ends were carried through.
methods-nothing-found = { $lines ->
    [one] On one line nothing was found; it counts as zero.
   *[other] On { $lines } lines nothing was found; they count as zero.
}
methods-partly = { $lines ->
    [one] Of one line a part was read, and that part was taken.
   *[other] Of { $lines } lines a part was read, and those parts were taken.
}

## How the site was worked out
methods-unit-lines = The line is the sampling unit ({ $lines ->
    [one] one line
   *[other] { $lines } lines
}).
methods-unit-lines-of-plot = The claim is about this plot alone, and its lines are the sampling units ({ $lines ->
    [one] one line
   *[other] { $lines } lines
}).
methods-unit-plots = The plot is the sampling unit: { $lines } lines in { $units } plots.
methods-estimator = The estimate is the { $estimator } ({ $source }).
methods-strata = The site is cut into strata, weighted by their area: { $strata } ({ $source }).
methods-stratum = { $stratum } { $weight }
methods-within = Within a stratum the estimate is the { $estimators }.
methods-by = { $estimator } ({ $source })
methods-on-the-level = Gap classes and plants per area are those on the level, by the slope of each line; cover needs no such thing.
methods-interval = Two-sided { $confidence } intervals of { $what }: { $method }.
methods-bounds = Verdicts rest on one-sided { $confidence } bounds: a goal is met or not met only where the bound lies beyond it, and not yet shown otherwise.
methods-more = How many more lines would settle a verdict comes from the power of the same test by the noncentral t distribution, if the site is as estimated.
interval-by-student-t = Student t (Cochran 1977, 2.8)
interval-by-logit-t = Student t on the logit, with the delta method, taken back (Korn and Graubard 1998)
interval-by-log-t = Student t on the logarithm, with the delta method, taken back
interval-by-logit-t-effective = Student t on the logit, with the delta method, taken back (Korn and Graubard 1998), its degrees of freedom cut down by how far the error of a small cover wavers with the cover itself (docs/intervals.md of tautline)
interval-by-log-t-effective = Student t on the logarithm, with the delta method, taken back, its degrees of freedom cut down by how far the error of a small figure wavers with the figure itself (docs/intervals.md of tautline)
interval-by-bca = bias-corrected and accelerated bootstrap of the sampling units: every draw there is, or 10,000 seeded by the data where those are too many (Efron 1987)

## With what
methods-software = Worked out with tautline { $version } from files with the common fingerprint { $fingerprint }.
methods-software-no-files = Worked out with tautline { $version }.
