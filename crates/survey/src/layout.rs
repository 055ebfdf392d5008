//! A layout as data: lines with both ends and bearings, how they were drawn, what was given up.

use crate::date::Date;
use serde::Serialize;

/// What `tautline plan lines --json` prints.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LayoutOutput {
    /// `tautline.plan-lines`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The site.
    pub site: String,
    /// The seed: the same boundary, settings and seed give the same layout.
    pub seed: u64,
    /// How points were drawn: balanced, random, systematic, or baseline.
    pub design: String,
    /// What happened at the edge: turn, redraw.
    pub edge: String,
    /// Why the area was chosen by judgement; none where chance or nobody chose it.
    pub judged: Option<String>,
    /// Length of each line in metres, as typed.
    pub line_length: String,
    /// Length of each line in whole millimetres.
    pub line_length_mm: i64,
    /// Least distance between lines of different points in whole millimetres.
    pub apart_mm: i64,
    /// Area of each stratum.
    pub strata: Vec<StratumOutput>,
    /// How many metres positions may be off for the sake of the datum that the boundary was handed in on.
    pub position_error_m: u32,
    /// What a compass shows, where a date was given.
    pub declination: Option<DeclinationOutput>,
    /// The lines, those in reserve last and in their order.
    pub lines: Vec<LaidLine>,
    /// The names of the lines to read in the order in which they are walked; in batches, where they are read so.
    pub walk: Vec<String>,
    /// The ways between them, in that order.
    pub legs: Vec<Leg>,
    /// Points given up because a line would have left its stratum.
    pub given_up_at_the_edge: usize,
    /// Points given up because a line would have come into what is kept out of.
    pub given_up_kept_out: usize,
    /// Points given up because a line would have come too near to another.
    pub given_up_too_near: usize,
}

/// A stratum of a layout.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StratumOutput {
    /// Its name; none where the site has no strata.
    pub name: Option<String>,
    /// Area in square metres, keep-out areas included.
    pub area_m2: f64,
    /// Lines or plots wanted.
    pub wanted: usize,
    /// Lines or plots placed.
    pub placed: usize,
    /// Drawn points to the hectare, none from a baseline: with `balanced` and `random` every place of the stratum was as likely as any other to be one of
    /// them, but for the strip along its edge (docs/plan.md).
    pub points_per_hectare: Option<f64>,
}

/// Declination at the middle of the site.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DeclinationOutput {
    /// The date.
    pub date: Date,
    /// Degrees from true to magnetic north, to the east above zero.
    pub degrees: f64,
    /// Its change in a year.
    pub yearly: f64,
    /// One standard deviation of the model's error, in degrees.
    pub uncertainty: f64,
    /// The field is weak: a compass is not to be trusted.
    pub weak_field: bool,
}

/// One end of a line.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct End {
    /// Degrees north on WGS 84, rounded to 1e-9.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// The same as UTM, such as `12 N 345678 4567890`; empty near the poles.
    pub utm: String,
}

/// One line of a layout.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LaidLine {
    /// Its name.
    pub line: String,
    /// Its stratum.
    pub stratum: Option<String>,
    /// Its plot, where lines are spokes of one.
    pub plot: Option<String>,
    /// Held in reserve.
    pub reserve: bool,
    /// Where the tape's zero is.
    pub start: End,
    /// Where the tape ends.
    pub end: End,
    /// Degrees clockwise from true north.
    pub true_bearing: u16,
    /// Degrees as a compass shows them, to a tenth.
    pub magnetic_bearing: Option<f64>,
    /// The point's place in the order in which points were tried.
    pub draw: usize,
    /// Whether the line was turned at the edge.
    pub turned: bool,
    /// It was there before and was taken in with its old coordinates; nothing of it was drawn.
    pub staked: bool,
}

/// A way from the end of one line to the zero of the next.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Leg {
    /// The line that it leaves; none where the walk begins.
    pub from: Option<String>,
    /// The line that it leads to.
    pub to: String,
    /// How long it is in metres, as if the ground were level.
    pub metres: f64,
    /// Where it begins, the corners that it goes round, where it ends.
    pub points: Vec<End>,
    /// What it leads over that no way was found round.
    pub over: Option<Over>,
}

/// Ground that a leg should not lead over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Over {
    /// Ground outside of the site's boundary.
    Outside,
    /// Something that is kept out of; the leg is straight then.
    KeptOut,
}

/// A site and its lines on the plane: metres to the east and to the north of the middle of the site.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MapOutput {
    /// The strata.
    pub strata: Vec<MapStratum>,
    /// What to keep out of.
    pub keep_out: Vec<MapKeepOut>,
    /// The lines, as in the layout.
    pub lines: Vec<MapLine>,
    /// The ways that are walked between lines.
    pub way: Vec<Vec<[f64; 2]>>,
    /// Lines of latitude and longitude.
    pub degrees: Vec<MapDegree>,
}

/// A stratum on the plane.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MapStratum {
    /// Its name; empty where the site has no strata.
    pub name: String,
    /// Its rings, those of holes too.
    pub rings: Vec<Vec<[f64; 2]>>,
}

/// What to keep out of, on the plane.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MapKeepOut {
    /// Its corners.
    pub places: Vec<[f64; 2]>,
    /// An area, not a way.
    pub closed: bool,
    /// How far to stay away, in whole millimetres.
    pub buffer_mm: i64,
}

/// A line on the plane.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MapLine {
    /// Its name.
    pub line: String,
    /// Where the tape's zero is.
    pub from: [f64; 2],
    /// Where the tape ends.
    pub to: [f64; 2],
    /// Held in reserve.
    pub reserve: bool,
}

/// A line of latitude or longitude on the plane.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MapDegree {
    /// Degrees north or east.
    pub degree: f64,
    /// Its two ends.
    pub way: [[f64; 2]; 2],
    /// It is one of latitude.
    pub latitude: bool,
}
