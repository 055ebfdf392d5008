//! The outline of a site as it was handed in: areas, what to keep out of, lines that are there already.

use core::fmt;

/// Longitude and latitude in degrees, in the order of GeoJSON; easting and northing in metres where the grid is UTM.
pub type Pair = [f64; 2];

/// In which coordinates a part was handed in.
///
/// # Example
/// ```
/// use tautline_survey::boundary::Reference;
/// let old = Reference::read("NAD27 UTM 12 N").unwrap();
/// assert_eq!(old.to_string(), "NAD27 UTM 12 N");
/// assert_eq!(Reference::read("wgs 84"), Some(Reference::default()));
/// assert_eq!(Reference::read("NAD27 UTM 61"), None);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Reference {
    /// The datum.
    pub datum: Datum,
    /// The zone and half of the earth of a UTM grid; none where the pairs are degrees.
    pub utm: Option<(u8, Half)>,
}

/// A datum: where on earth a pair of degrees lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Datum {
    /// The datum of GPS.
    #[default]
    Wgs84,
    /// North American Datum of 1983, a metre or two from it.
    Nad83,
    /// North American Datum of 1927, up to 100 m from it in the contiguous United States.
    Nad27,
}

/// A half of the earth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// North of the equator.
    North,
    /// South of it.
    South,
}

impl Datum {
    /// A datum by its name, spaces and hyphens aside.
    pub fn read(text: &str) -> Option<Self> {
        let bare: String = text.chars().filter(char::is_ascii_alphanumeric).collect();
        Some(match bare.to_lowercase().as_str() {
            "wgs84" | "wgs1984" | "dwgs1984" => Self::Wgs84,
            "nad83" | "dnorthamerican1983" | "northamericandatum1983" => Self::Nad83,
            "nad27" | "dnorthamerican1927" | "northamericandatum1927" => Self::Nad27,
            _ => return None,
        })
    }

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Wgs84 => "WGS84",
            Self::Nad83 => "NAD83",
            Self::Nad27 => "NAD27",
        }
    }
}

impl Reference {
    /// Reads `NAD27`, or `NAD27 UTM 12 N`: a datum, and a UTM zone where pairs are metres; north where no half is said.
    pub fn read(text: &str) -> Option<Self> {
        let lower = text.to_lowercase();
        let Some((datum, grid)) = lower.split_once("utm") else {
            return Some(Self { datum: Datum::read(text)?, utm: None });
        };
        let grid = grid.trim();
        let (zone, half) = match grid.strip_suffix('s') {
            Some(zone) => (zone, Half::South),
            None => (grid.strip_suffix('n').unwrap_or(grid), Half::North),
        };
        let zone = zone.trim().parse().ok().filter(|zone| (1..=60).contains(zone))?;
        Some(Self { datum: Datum::read(datum)?, utm: Some((zone, half)) })
    }
}

impl fmt::Display for Reference {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.utm {
            None => out.write_str(self.datum.name()),
            Some((zone, half)) => {
                let half = if half == Half::North { 'N' } else { 'S' };
                write!(out, "{} UTM {zone} {half}", self.datum.name())
            }
        }
    }
}

/// A place as people type it, and the reference of its pair: `42.3, -113.7` in degrees, latitude first, or `12 N 278494 4687150` as UTM.
///
/// # Range
/// `None` where it is neither; whether such a place is on earth isn't looked at
/// # Example
/// ```
/// use tautline_survey::boundary::{Datum, typed};
/// let (pair, reference) = typed("12 N 278494 4687150", Datum::Nad27).unwrap();
/// assert_eq!((pair, reference.to_string().as_str()), ([278_494.0, 4_687_150.0], "NAD27 UTM 12 N"));
/// assert_eq!(typed("42.3, -113.7", Datum::Wgs84).unwrap().0, [-113.7, 42.3]);
/// assert_eq!(typed("42.3", Datum::Wgs84), None);
/// ```
pub fn typed(text: &str, datum: Datum) -> Option<(Pair, Reference)> {
    let number = |text: &str| text.trim().parse().ok().filter(|number: &f64| number.is_finite());
    if let Some((latitude, longitude)) = text.split_once(',') {
        return Some(([number(longitude)?, number(latitude)?], Reference { datum, utm: None }));
    }
    let [zone, half, easting, northing]: [&str; 4] =
        text.split_whitespace().collect::<Vec<_>>().try_into().ok()?;
    let utm = Reference::read(&format!("{} UTM {zone} {half}", datum.name()))?.utm?;
    Some(([number(easting)?, number(northing)?], Reference { datum, utm: Some(utm) }))
}

/// One part of a boundary.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its number in the file, from 1.
    pub number: usize,
    /// In which coordinates it is.
    pub reference: Reference,
    /// What it is.
    pub role: Role,
    /// Its shape.
    pub shape: Shape,
}

/// What a part of a boundary is.
#[derive(Clone, Debug, PartialEq)]
pub enum Role {
    /// Ground on which lines may lie, of this stratum if it has strata.
    Stratum(Option<String>),
    /// Ground to keep out of, and so many millimetres about it.
    KeepOut {
        /// The buffer in millimetres.
        buffer: i64,
        /// Whether people walk across it between lines; where nobody says, ways are crossed and areas aren't.
        crossed: Option<bool>,
    },
    /// A line that is there already and stays: its name.
    Line(String),
}

/// A shape in the coordinates of its part.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Polygons, each an outer ring and its holes.
    Areas(Vec<Vec<Vec<Pair>>>),
    /// Rings in any order, outer ones and holes alike: what lies inside of an odd number of them is inside.
    Rings(Vec<Vec<Pair>>),
    /// A way along points; a single point is a place.
    Way(Vec<Pair>),
}

/// A boundary as it was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Boundary {
    /// The site's name, where the file gives one.
    pub site: Option<String>,
    /// Its parts.
    pub parts: Vec<Part>,
    /// Numbers of features that are marks and no ground: single points of which nothing says what they are.
    pub left_out: Vec<usize>,
}

impl Boundary {
    /// Adds what another file holds.
    pub fn join(&mut self, other: Self) {
        self.site = self.site.take().or(other.site);
        self.parts.extend(other.parts);
        self.left_out.extend(other.left_out);
    }
}
