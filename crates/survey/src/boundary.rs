//! The outline of a site as it was handed in: areas, what to keep out of, lines that are there already.

/// Longitude and latitude in degrees on WGS 84, in the order of GeoJSON.
pub type Degrees = [f64; 2];

/// One part of a boundary.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its number in the file, from 1.
    pub number: usize,
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
    },
    /// A line that is there already and stays: its name.
    Line(String),
}

/// A shape in degrees.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Polygons, each an outer ring and its holes.
    Areas(Vec<Vec<Vec<Degrees>>>),
    /// A way along points; a single point is a place.
    Way(Vec<Degrees>),
}

/// A boundary as it was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Boundary {
    /// The site's name, where the file gives one.
    pub site: Option<String>,
    /// Its parts.
    pub parts: Vec<Part>,
}
