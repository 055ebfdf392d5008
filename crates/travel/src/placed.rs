//! Lines that lie somewhere, with what a map wants to know of each.

use crate::Whole;
use tautline_survey::date::Date;
use tautline_survey::message::Message;
use tautline_survey::place::Told;

/// A line of which a place was noted.
#[derive(Clone, Debug)]
pub(crate) struct Placed<'a> {
    pub(crate) site: &'a str,
    pub(crate) line: &'a str,
    pub(crate) stratum: Option<&'a str>,
    pub(crate) plot: Option<&'a str>,
    pub(crate) told: Told,
    /// The day on which the cover was read.
    pub(crate) date: Option<Date>,
    /// Live canopy as a share of the line, where it is known, at the latest reading that speaks for the site.
    pub(crate) cover: Option<f64>,
}

/// Every line of which a place was noted, also those whose place is withheld.
pub(crate) fn all<'a>(whole: &Whole<'a>) -> Vec<Placed<'a>> {
    let lines = |site: &str, line: &str| {
        let all = whole.assessments.iter().flat_map(|assessment| &assessment.lines);
        let own: Vec<_> = all.filter(|one| one.site == site && one.line == line && !one.unsettled).collect();
        own.into_iter().max_by_key(|one| one.date)
    };
    let places = whole.input.places.iter();
    places
        .filter_map(|place| {
            let planned = whole.input.planned(&place.site, &place.line);
            let latest = lines(&place.site, &place.line);
            Some(Placed {
                site: &place.site,
                line: &place.line,
                stratum: planned.and_then(|line| line.stratum.as_deref()),
                plot: planned.and_then(|line| line.plot.as_deref()),
                told: whole.told(&place.site, &place.line)?,
                date: latest.and_then(|line| line.date),
                cover: latest.filter(|line| line.canopy.is_known()).map(|line| line.share(line.canopy.low)),
            })
        })
        .collect()
}

/// Those that can be drawn: a map without anything on it is no map.
///
/// # Errors
/// nobody noted a place, or all are withheld
pub(crate) fn drawable<'a>(
    whole: &Whole<'a>,
    draws: impl Fn(&Told) -> bool,
) -> Result<Vec<Placed<'a>>, Message> {
    let all = all(whole);
    if all.iter().any(|one| draws(&one.told)) {
        Ok(all)
    } else {
        Err(Message::new(if all.is_empty() { "export-nothing-placed" } else { "export-all-withheld" }))
    }
}
