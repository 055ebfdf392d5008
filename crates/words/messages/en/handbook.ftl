## The method handbook, on a terminal and in the app
help-explain-page = Print a page of the method handbook, or find pages by words
help-explain-words = A page's name, such as “verdict”, or words to look for; nothing lists all pages
handbook-not-found = No page of the handbook has “{ $words }”. “tautline explain” lists all pages.
handbook-how = “tautline explain NAME” prints a page.
handbook-english = The handbook is written in English so far.

## What the words of a report mean, each with the labels of its picture
meanings = What the words mean
meanings-jump = What do these words mean?
meaning-more = More in the method handbook, page “{ $page }”.
meaning-picture-title = What “{ $term }” means

meaning-cover-term = Cover
meaning-cover-is = The share of the tape that has live shrub above it, seen from straight above. Where two crowns lie over each other the tape below them counts once.
meaning-cover-is-not = It is the outline of the shrubs, small openings included: leaves alone would give less. It says nothing of grass or bare ground, and nothing of how the shrubs do.
meaning-cover-picture = Three crowns stand over a tape, two of them overlapping; below, the same canopy is pushed together to the left and fills 44 of 100 parts of the tape.
meaning-cover-on-the-tape = Canopy over the tape
meaning-cover-together = The same pushed together: cover

meaning-gap-rule-term = Gap rule
meaning-gap-rule-is = How small an opening inside a shrub is still read as shrub. Shorter than the rule: it is canopy. As long as the rule, or longer: the canopy ends there and begins again.
meaning-gap-rule-is-not = It is a choice, not a fact of nature, and it moves cover more than most years do. So figures under different rules are never compared as they stand.
meaning-gap-rule-picture = Three pieces of canopy over a tape. The first gap is shorter than the rule and is written as canopy; the second is longer and stays open.
meaning-gap-rule-rule = The length of the rule
meaning-gap-rule-seen = As it stands over the tape
meaning-gap-rule-written = As it is read

meaning-sum-of-species-term = Sum of species
meaning-sum-of-species-is = Each species' own cover, added up. Tape under two species counts twice, so the sum can pass 100 %.
meaning-sum-of-species-is-not = It isn't canopy cover, which counts overlap once. Both are called “total cover” in places: a goal must say which one it means.
meaning-sum-of-species-picture = Two species overlap over a tape. Counted once they fill 65 of 100 parts, added up 80.
meaning-sum-of-species-one = One species
meaning-sum-of-species-other = Another, partly over the same tape
meaning-sum-of-species-once = Canopy cover: overlap once
meaning-sum-of-species-twice = Sum of species: overlap twice

meaning-interval-term = Interval
meaning-interval-is = Other lines on the same site would have given another figure. The interval says which covers of the whole site go with the lines that were read. Made at 90 %, nine of ten such surveys give one that holds the site's own cover.
meaning-interval-is-not = It isn't the range in which single lines lie. It holds chance alone: a reader's habit, another rule or a slack tape is not in it.
meaning-interval-picture = Ten intervals of ten surveys beside a line for the site's own cover: nine cross the line, one, drawn dashed, doesn't.
meaning-interval-own = The site's own cover, which nobody knows
meaning-interval-surveys = Ten surveys at 90 %: nine hold it, one doesn't

meaning-verdict-term = Verdict
meaning-verdict-is = Met and not met are said only where the readings show it, at the confidence that was asked for. Everything else is not yet shown: the lines go with a site on either side of the goal.
meaning-verdict-is-not = Not yet shown is no failure and no tie; it says that more lines are needed, and how many. No verdict says why the cover is what it is, or what should be done: people decide that.
meaning-verdict-picture = Three figures with their bounds beside a goal: one wholly beyond it is met, one across it is not yet shown, one wholly short of it is not met.
meaning-verdict-goal = The goal, and the side that meets it
meaning-verdict-met = Met
meaning-verdict-open = Not yet shown
meaning-verdict-not-met = Not met

meaning-smallest-change-term = Smallest change
meaning-smallest-change-is = Every survey has a change so small that it would mostly be missed. This is the change that these lines would have shown four times in five.
meaning-smallest-change-is-not = “No change is shown” doesn't say that nothing changed: something smaller than this may have. More lines, or the same staked lines again, show smaller changes.
meaning-smallest-change-picture = A scale with no change in its middle. A hatched part around it would mostly be missed; beyond it, on either side, changes would mostly be shown.
meaning-smallest-change-none = No change
meaning-smallest-change-missed = Would mostly be missed
meaning-smallest-change-shown = Would mostly be shown

meaning-trend-term = Trend
meaning-trend-is = What stays when the swing of single years is taken away: so many points of cover a year. The years are the sample, since all lines share a dry one; six years of thirty lines are six years.
meaning-trend-is-not = It knows of no rain, fire or grazing to come, and it says nothing of why. With few years even a steady rise may be chance.
meaning-trend-picture = Seven years, each a dot higher or lower than the last, about a straight line that rises.
meaning-trend-years = A year, all lines together
meaning-trend-line = The trend

## The handbook in the app
handbook-about = What each figure is, its formula and source, an example that can be worked out by hand, and when not to trust it.
handbook-find = Find in the handbook
handbook-found = { $pages ->
    [0] No page has these words.
    [one] One page
   *[other] { $pages } pages
}
handbook-fetching = Fetching the handbook …
handbook-missing = The handbook could not be fetched. Open the app once with a network, then it is here for good.
handbook-all = All pages
handbook-beside = The pages before and after
handbook-before = Before
handbook-after = Next
handbook-no-page = The handbook has no page “{ $page }”.
