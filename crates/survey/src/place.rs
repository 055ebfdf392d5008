//! Where lines lie, and how much of that others may be told.
//!
//! A place is a record of its own, apart from the plan of its line: it can be blanked or kept back alone.

use crate::assess::natural_order;
use crate::input::Input;
use crate::visit::Visit;
use serde::{Deserialize, Serialize};
use tautline_engine::length::DecimalMark;
use tautline_engine::slope::cosine_of_degrees;

/// A degree in whole billionths.
const DEGREE: i64 = 1_000_000_000;

/// Kilometres of a degree of latitude: a fortieth-thousandth part and more of the meridian, 10 001.966 km for 90 degrees
/// of WGS 84 (NGA.STND.0036, 2014); the grid that places are blurred to needs no more than that.
const KILOMETRES_PER_DEGREE: f64 = 10_001.966 / 90.0;

/// A position on WGS 84.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Position {
    /// Degrees north, in whole 1e-9 degree.
    pub latitude: i64,
    /// Degrees east, in whole 1e-9 degree.
    pub longitude: i64,
}

impl Position {
    /// Degrees north and east.
    #[expect(clippy::cast_precision_loss, reason = "180 degrees are 1.8e11, far below 2^53")]
    pub fn degrees(self) -> [f64; 2] {
        [self.latitude as f64 / 1e9, self.longitude as f64 / 1e9]
    }

    /// Reads latitude and longitude in decimal degrees, exactly; at most nine decimals.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::length::DecimalMark;
    /// use tautline_survey::place::Position;
    /// let read = |north, east| Position::read(north, east, DecimalMark::Point);
    /// assert_eq!(read("38.5", "-113.25").unwrap().degrees(), [38.5, -113.25]);
    /// assert!(read("91", "0").is_none());
    /// ```
    pub fn read(latitude: &str, longitude: &str, mark: DecimalMark) -> Option<Self> {
        Some(Self { latitude: billionths(latitude, 90, mark)?, longitude: billionths(longitude, 180, mark)? })
    }
}

/// Decimal degrees in whole billionths, no more than so many degrees either way.
fn billionths(text: &str, most: i64, mark: DecimalMark) -> Option<i64> {
    let text = text.trim().trim_end_matches('°').trim_end();
    let (sign, digits) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1, rest),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    let point = if mark == DecimalMark::Comma { ',' } else { '.' };
    let (whole, decimals) = digits.split_once(point).unwrap_or((digits, ""));
    let all_digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty()
        || whole.len() > 3
        || decimals.len() > 9
        || !all_digits(whole)
        || !all_digits(decimals)
    {
        return None;
    }
    let found = whole.parse::<i64>().ok()? * DEGREE + format!("{decimals:0<9}").parse::<i64>().ok()?;
    (found <= most * DEGREE).then_some(sign * found)
}

/// Where a line lies. Its identity is its site and its line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LinePlace {
    /// The site.
    pub site: String,
    /// The line.
    pub line: String,
    /// Where the tape's zero is.
    pub start: Position,
    /// Where the tape ends, if it was noted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end: Option<Position>,
}

/// How much of a site's places others may be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Openness {
    /// As they are.
    Exact,
    /// Moved to the middle of a square so many kilometres wide.
    Blurred(u16),
    /// Not at all.
    Withheld,
}

/// The widest square that a place may be blurred to, in kilometres.
pub const WIDEST_BLUR: u16 = 100;

impl Openness {
    /// Reads `exact`, `withheld`, or `blurred 5 km` (the word `to` may stand in it).
    ///
    /// # Example
    /// ```
    /// use tautline_survey::place::Openness;
    /// assert_eq!(Openness::read("blurred to 5 km"), Some(Openness::Blurred(5)));
    /// assert_eq!(Openness::read("blurred"), None); // to what?
    /// ```
    pub fn read(text: &str) -> Option<Self> {
        let text = text.trim().to_lowercase();
        match text.as_str() {
            "exact" => Some(Self::Exact),
            "withheld" => Some(Self::Withheld),
            _ => {
                let width = text.strip_prefix("blurred")?.trim().trim_start_matches("to ");
                let width: u16 = width.strip_suffix("km")?.trim().parse().ok()?;
                (1..=WIDEST_BLUR).contains(&width).then_some(Self::Blurred(width))
            }
        }
    }
}

impl core::fmt::Display for Openness {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Exact => f.write_str("exact"),
            Self::Blurred(width) => write!(f, "blurred {width} km"),
            Self::Withheld => f.write_str("withheld"),
        }
    }
}

/// What is known of a site as a whole. Its identity is its name.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Site {
    /// The site's name.
    pub site: String,
    /// Whose land it is, in the office's own words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub ownership: String,
    /// A nest, den or other place to be left in peace is on it.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub nest: bool,
    /// How much of its places others may be told, where somebody decided it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub places: Option<Openness>,
}

impl Site {
    /// What somebody decided; else private land and nests are kept back, and all else is told as it is.
    pub fn openness(&self) -> Openness {
        let mut words = self.ownership.split(|c: char| !c.is_alphanumeric());
        let is_private =
            words.any(|word| word.eq_ignore_ascii_case("private") || word.eq_ignore_ascii_case("privately"));
        self.places.unwrap_or(if self.nest || is_private { Openness::Withheld } else { Openness::Exact })
    }
}

/// A place as others may be told it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Told {
    /// As it is.
    Exact(Position, Option<Position>),
    /// The middle of the square it lies in, and how many metres it may lie from there.
    Blurred(Position, u32),
    /// Kept back.
    Withheld,
}

/// The middle of the square of a fixed grid in which a position lies; half its diagonal, rounded up to ten metres, is how
/// far off that may be. The grid is the same for all, so that many lines of one site don't give it away between them.
///
/// # Source
/// Chapman A.D., 2020, Current Best Practices for Generalizing Sensitive Species Occurrence Data, GBIF, §3 (a grid, its
/// cell's middle and the uncertainty told), from memory
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "degrees and metres of a grid of 1 to 100 km"
)]
fn blurred(position: Position, width: u16) -> (Position, u32) {
    let [latitude, longitude] = position.degrees();
    let width_km = f64::from(width);
    let north = width_km / KILOMETRES_PER_DEGREE;
    let middle = ((latitude / north).floor() + 0.5) * north;
    let middle = middle.clamp(-90.0, 90.0);
    // at the poles a degree of longitude is nothing wide
    let east = (north / cosine_of_degrees(middle).max(0.001)).min(360.0);
    let around = ((longitude / east).floor() + 0.5) * east;
    let around = if around > 180.0 {
        around - 360.0
    } else if around < -180.0 {
        around + 360.0
    } else {
        around
    };
    // three decimals, about a hundred metres, so that the middle doesn't pretend to be a place somebody stood on
    let rounded = |degrees: f64| (degrees * 1000.0).round() as i64 * (DEGREE / 1000);
    // half of √2 of the width, and the rounding of both: at most 79 m
    let off = (width_km * 1000.0 * core::f64::consts::FRAC_1_SQRT_2 + 79.0) / 10.0;
    (Position { latitude: rounded(middle), longitude: rounded(around) }, (off.ceil() * 10.0) as u32)
}

/// How many metres two positions lie apart at most, in whole hundreds: on a plane, and a twentieth more for what that leaves out.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "no more than around the earth")]
fn apart(one: Position, other: Position) -> u32 {
    let ([a, b], [c, d]) = (one.degrees(), other.degrees());
    let nearer = if a.abs() < c.abs() { a } else { c };
    let across = (d - b).abs();
    let east = across.min(360.0 - across) * cosine_of_degrees(nearer);
    let degrees = ((c - a) * (c - a) + east * east).sqrt();
    (degrees * KILOMETRES_PER_DEGREE * 10.0 * 1.05).ceil() as u32 * 100
}

impl Input {
    /// How much of a site's places others may be told.
    pub fn openness(&self, site: &str) -> Openness {
        self.sites.iter().find(|known| known.site == site).map_or(Openness::Exact, Site::openness)
    }

    /// What others may be told of where a line lies, as open as this. Blurred, all lines of a site are told by the square in
    /// which its first one lies: two squares side by side would give away that the site lies on the edge between them.
    ///
    /// # Example
    /// Invented: two lines 1 km apart, on both sides of an edge of the grid.
    /// ```
    /// use tautline_survey::{input::Input, place::{LinePlace, Openness, Position, Told}};
    /// let line = |line: &str, latitude| LinePlace {
    ///     site: "Hollow Flat".into(),
    ///     line: line.into(),
    ///     start: Position { latitude, longitude: -113_250_000_000 },
    ///     end: None,
    /// };
    /// let places = vec![line("10", 38_517_000_000), line("2", 38_508_000_000)];
    /// let input = Input { places, ..Input::default() };
    /// let told = |line: &str| input.told_of(input.place("Hollow Flat", line).unwrap(), Openness::Blurred(5));
    /// let (Told::Blurred(first, near), Told::Blurred(second, far)) = (told("2"), told("10")) else { panic!() };
    /// assert_eq!((first, near + 1_100), (second, far));
    /// ```
    pub fn told_of(&self, place: &LinePlace, openness: Openness) -> Told {
        let width = match openness {
            Openness::Exact => return Told::Exact(place.start, place.end),
            Openness::Withheld => return Told::Withheld,
            Openness::Blurred(width) => width,
        };
        let own = self.places.iter().filter(|one| one.site == place.site);
        let first = own.min_by(|a, b| natural_order(&a.line, &b.line)).unwrap_or(place).start;
        let (middle, metres) = blurred(first, width);
        Told::Blurred(middle, metres.saturating_add(apart(first, place.start)))
    }

    /// What was noted at a visit, as far as others may be told: never where its stake stands, and nothing that speaks of a place
    /// where the site keeps it back.
    pub(crate) fn noted_at<'a>(
        &self,
        visit: &'a Visit,
    ) -> impl Iterator<Item = &'a (String, String)> + use<'a> {
        let keeps_back = self.openness(&visit.site) != Openness::Exact;
        visit.told().filter(move |(heading, _)| !(keeps_back && says_where(heading)))
    }

    /// Where a line lies.
    pub fn place(&self, site: &str, line: &str) -> Option<&LinePlace> {
        self.places.iter().find(|place| place.site == site && place.line == line)
    }

    /// What others may be told: places blurred or taken out, and with them whose land it is, what nests there, and the
    /// notes and conditions of a visit that may say in words where it was.
    #[must_use]
    pub fn told(&self) -> Self {
        let mut told = self.clone();
        let kept_back: Vec<&str> = self
            .sites
            .iter()
            .filter(|site| site.openness() != Openness::Exact)
            .map(|site| site.site.as_str())
            .collect();
        for site in told.sites.iter_mut().filter(|site| kept_back.contains(&site.site.as_str())) {
            // whose land it is and what nests there is what the place was kept back for; that it is kept back stays
            *site = Site { site: site.site.clone(), places: Some(site.openness()), ..Site::default() };
        }
        told.places.retain(|place| !kept_back.contains(&place.site.as_str()));
        for visit in told.visits.iter_mut().filter(|visit| kept_back.contains(&visit.site.as_str())) {
            visit.conditions.retain(|(heading, _)| !says_where(heading));
            for intercept in &mut visit.intercepts {
                intercept.note.clear();
            }
        }
        told
    }
}

/// Whether what stands under a heading of a sheet most likely says where the line is.
///
/// # Example
/// ```
/// use tautline_survey::place::says_where;
/// assert!(says_where("start UTM") && !says_where("wind"));
/// ```
pub fn says_where(heading: &str) -> bool {
    const WHERE: [&str; 27] = [
        "utm",
        "ownership",
        "owner",
        "nest",
        "lat",
        "latitude",
        "lon",
        "long",
        "longitude",
        "easting",
        "northing",
        "coordinates",
        "coordinate",
        "gps",
        "legal",
        "location",
        "directions",
        "access",
        "place",
        "note",
        "comment",
        "remark",
        "description",
        "address",
        "township",
        "waypoint",
        "stake",
    ];
    heading
        .to_lowercase()
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| WHERE.contains(&word) || word.strip_suffix('s').is_some_and(|word| WHERE.contains(&word)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn degrees_are_read_exactly_or_not_at_all() {
        let read = |text| billionths(text, 180, DecimalMark::Point);
        assert_eq!(read("-113.123456789"), Some(-113_123_456_789));
        assert_eq!(read("180"), Some(180_000_000_000));
        for refused in ["", "180.000000001", "12,5", "12.1234567891", "1e3", "12 30", "N38", "--1"] {
            assert_eq!(read(refused), None, "{refused}");
        }
        assert_eq!(billionths("12,5", 90, DecimalMark::Comma), Some(12_500_000_000));
    }

    #[test]
    fn private_land_and_nests_are_kept_back_unless_somebody_says_otherwise() {
        let site = |ownership: &str, nest, places| Site {
            site: "Hollow Flat".into(),
            ownership: ownership.into(),
            nest,
            places,
        };
        assert_eq!(site("Private, one family", false, None).openness(), Openness::Withheld);
        assert_eq!(site("state", true, None).openness(), Openness::Withheld);
        assert_eq!(site("state", false, None).openness(), Openness::Exact);
        assert_eq!(site("private", false, Some(Openness::Exact)).openness(), Openness::Exact);
        assert_eq!(site("state", false, Some(Openness::Blurred(5))).openness(), Openness::Blurred(5));
    }

    #[test]
    fn headings_that_say_where() {
        for heading in ["start UTM", "Ownership", "GPS", "Legal description", "lat", "Notes", "crew comments"]
        {
            assert!(says_where(heading), "{heading}");
        }
        for heading in ["wind", "growth stage", "flat"] {
            assert!(!says_where(heading), "{heading}");
        }
    }

    proptest! {
        /// A blurred place lies no farther from the real one than it says, by the haversine formula, the earth half a per cent
        /// out of round (common practice, no source); and all places of one square are told alike.
        #[test]
        fn a_blurred_place_is_as_far_off_as_it_says(north in -80_000_000_000_i64..80_000_000_000, east in -179_000_000_000_i64..179_000_000_000, width in 1_u16..=100) {
            let position = Position { latitude: north, longitude: east };
            let (middle, metres) = blurred(position, width);
            let ([a, b], [c, d]) = (position.degrees(), middle.degrees());
            let (dn, de) = ((c - a).to_radians() / 2.0, (d - b).to_radians() / 2.0);
            let h = dn.sin().powi(2) + a.to_radians().cos() * c.to_radians().cos() * de.sin().powi(2);
            let apart = 2.0 * 6_371_000.0 * h.sqrt().asin();
            prop_assert!(apart <= f64::from(metres) * 1.02 + f64::from(width) * 10.0, "{apart} m and {metres} m");
            prop_assert!(middle.latitude % 1_000_000 == 0 && middle.longitude % 1_000_000 == 0);
        }
    }
}
