//! Where a line's zero stake stands, as a device said while somebody stood beside it.
//!
//! It is noted with the visit under a heading of its own, which reports leave out: a stake's place is nobody's business but the crew's.

use crate::date::Date;
use crate::input::Input;
use crate::visit::Visit;

/// The heading that it stands under among a visit's conditions.
pub const ZERO_STAKE: &str = "zero stake";

/// So many parts of a degree are kept: a tenth of a millimetre.
const PARTS: i64 = 1_000_000_000;

/// A position and how far it may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stake {
    latitude: i64,
    longitude: i64,
    within: u32,
}

impl Stake {
    /// A stake at degrees north and east on WGS 84, right within so many metres; nothing where that is no place on earth.
    pub fn at(latitude: f64, longitude: f64, within: f64) -> Option<Self> {
        let on_earth = (-90.0..=90.0).contains(&latitude) && (-180.0..=180.0).contains(&longitude);
        #[expect(clippy::cast_possible_truncation, reason = "180 degrees are far within i64")]
        #[expect(clippy::cast_precision_loss, reason = "a power of ten")]
        let parts = |degrees: f64| (degrees * PARTS as f64).round() as i64;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held within the earth")]
        let within = within.clamp(1.0, 1e7).ceil() as u32;
        on_earth.then(|| Self { latitude: parts(latitude), longitude: parts(longitude), within })
    }

    /// Degrees north and east.
    #[expect(clippy::cast_precision_loss, reason = "180 degrees in these parts are exact")]
    pub fn degrees(self) -> (f64, f64) {
        (self.latitude as f64 / PARTS as f64, self.longitude as f64 / PARTS as f64)
    }

    /// How far it may be off, in whole metres.
    pub const fn within(self) -> u32 {
        self.within
    }

    /// As it is noted.
    ///
    /// # Example
    /// An invented place.
    /// ```
    /// use tautline_survey::stake::Stake;
    /// let stake = Stake::at(39.25, -113.500_000_1, 4.2).unwrap();
    /// assert_eq!(stake.text(), "39.25, -113.5000001 ± 5 m");
    /// assert_eq!(Stake::read(&stake.text()), Some(stake));
    /// ```
    pub fn text(self) -> String {
        format!("{}, {} ± {} m", degrees(self.latitude), degrees(self.longitude), self.within)
    }

    /// Reads it back; what a person wrote otherwise is no position.
    pub fn read(text: &str) -> Option<Self> {
        let (place, within) = text.split_once('±')?;
        let (latitude, longitude) = place.split_once(',')?;
        let number = |text: &str| text.trim().parse::<f64>().ok();
        Self::at(number(latitude)?, number(longitude)?, number(within.trim().strip_suffix('m')?)?)
    }
}

/// Degrees with as many decimals as they have.
fn degrees(parts: i64) -> String {
    let sign = if parts < 0 { "-" } else { "" };
    let (whole, rest) = (parts.abs() / PARTS, parts.abs() % PARTS);
    let decimals = format!("{rest:09}");
    match decimals.trim_end_matches('0') {
        "" => format!("{sign}{whole}"),
        decimals => format!("{sign}{whole}.{decimals}"),
    }
}

/// How good a place is taken to be of which nobody noted it, in metres: a hand-held receiver under open sky.
///
/// # Source
/// common practice, no source
pub const TAKEN_AS_GOOD_TO: u32 = 10;

/// Where the zero stake of a line was noted last, and when; else where the notebook has its line, with no day.
pub fn known(input: &Input, site: &str, line: &str) -> Option<(Stake, Option<Date>)> {
    let own = input.visits.iter().filter(|visit| visit.site == site && visit.line == line);
    let noted = own.filter_map(|visit| Some((noted(visit)?, visit.date))).max_by_key(|&(_, date)| date);
    let place = || input.places.iter().find(|place| place.site == site && place.line == line);
    noted.or_else(|| {
        let start = place()?.start;
        let (latitude, longitude) = (start.latitude, start.longitude);
        Some((Stake { latitude, longitude, within: TAKEN_AS_GOOD_TO }, None))
    })
}

fn noted(visit: &Visit) -> Option<Stake> {
    visit.conditions.iter().find(|(heading, _)| heading == ZERO_STAKE).and_then(|(_, text)| Stake::read(text))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_is_no_position_is_none() {
        for text in ["", "by the gate", "91, 0 ± 5 m", "39.2, -113 ± wide m", "39.2 ± 5 m"] {
            assert_eq!(Stake::read(text), None, "{text}");
        }
    }

    #[test]
    fn a_stakes_place_is_told_to_nobody() {
        let mut visit = Visit {
            site: "Hollow Flat".into(),
            line: "1".into(),
            date: None,
            reader: String::new(),
            recorder: String::new(),
            pass: String::new(),
            protocol: String::new(),
            length: None,
            outcome: crate::visit::Outcome::Read,
            intercepts: Vec::new(),
            set_aside: 0,
            conditions: vec![("wind".into(), "none".into())],
            place: None,
        };
        let stake = Stake::at(39.25, -113.5, 4.0).unwrap();
        visit.conditions.push((ZERO_STAKE.into(), stake.text()));
        assert_eq!(visit.told().collect::<Vec<_>>(), [&("wind".to_owned(), "none".to_owned())]);
        let input = Input { visits: vec![visit], ..Input::default() };
        assert_eq!(known(&input, "Hollow Flat", "1"), Some((stake, None)));
        assert_eq!(known(&input, "Hollow Flat", "2"), None);
    }

    #[test]
    fn a_line_that_the_notebook_has_a_place_for_is_found_by_that() {
        use crate::place::{LinePlace, Position};
        let start = Position { latitude: 39_250_000_000, longitude: -113_500_000_000 };
        let place = LinePlace { site: "Hollow Flat".into(), line: "1".into(), start, end: None };
        let input = Input { places: vec![place], ..Input::default() };
        assert_eq!(known(&input, "Hollow Flat", "1"), Some((Stake::at(39.25, -113.5, 10.0).unwrap(), None)));
    }

    proptest! {
        #[test]
        fn a_stake_is_read_back_where_it_stands(
            latitude in -90_000_000_000_i64..=90_000_000_000, longitude in -180_000_000_000_i64..=180_000_000_000, within in 1_u32..1000,
        ) {
            let stake = Stake { latitude, longitude, within };
            prop_assert_eq!(Stake::read(&stake.text()), Some(stake));
        }
    }
}
