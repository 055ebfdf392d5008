//! A record as others may be told it: what a site's setting keeps back stands in no list that is shown around.

use super::payload::Payload;
use crate::place::{Openness, Site, says_where};

impl Payload {
    /// The site that the record is of, where it is of one.
    pub fn site(&self) -> Option<&str> {
        let site = match self {
            Self::Line(line) => &line.site,
            Self::Site(site) => &site.site,
            Self::Place(place) => &place.site,
            Self::Stratum(stratum) => &stratum.site,
            Self::Visit(visit) => &visit.site,
            Self::Photo(photo) => &photo.site,
            Self::Decision(decision) => &decision.site,
            Self::Layout(layout) => &layout.site,
            Self::Replaced(word) => &word.site,
            Self::Calibration(one) => &one.site,
            Self::Objective(one) => &one.site,
            Self::Trigger(one) => &one.site,
            Self::Goal(goal) => goal.site.as_ref()?,
            Self::Headings(_)
            | Self::Plants(_)
            | Self::Protocol(_)
            | Self::Settlement(_)
            | Self::Import(_) => return None,
        };
        Some(site)
    }

    /// What is left of it where the site is told so openly: as [`crate::input::Input::told`] does it for everything. Nothing,
    /// where all of it says where something lies.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::notebook::payload::Payload;
    /// use tautline_survey::place::{LinePlace, Openness, Position};
    /// let start = Position { latitude: 38_500_000_000, longitude: -113_250_000_000 };
    /// let place = Payload::Place(LinePlace { site: "Rim Draw".into(), line: "1".into(), start, end: None });
    /// assert_eq!(place.told(Openness::Exact).as_ref(), Some(&place));
    /// assert_eq!(place.told(Openness::Withheld), None);
    /// ```
    #[must_use]
    pub fn told(&self, openness: Openness) -> Option<Self> {
        let mut told = self.clone();
        if openness == Openness::Exact {
            return Some(told);
        }
        match &mut told {
            Self::Place(_) | Self::Layout(_) => return None,
            Self::Site(site) => {
                *site = Site { site: site.site.clone(), places: site.places, ..Site::default() };
            }
            // whoever gives permission lives there
            Self::Line(line) => line.permission = None,
            Self::Visit(visit) => {
                let kept: Vec<_> =
                    visit.told().filter(|(heading, _)| !says_where(heading)).cloned().collect();
                visit.conditions = kept;
                for intercept in &mut visit.intercepts {
                    intercept.note.clear();
                }
            }
            Self::Photo(photo) => {
                (photo.place, photo.bearing) = (None, None);
                photo.caption.clear();
            }
            Self::Replaced(word) => word.note.clear(),
            Self::Objective(objective) => objective.place.clear(),
            _ => {}
        }
        Some(told)
    }
}
