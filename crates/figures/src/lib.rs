//! Pictures as SVG, from typed data, for the screen and for print alike.
//!
//! - [`mod@line`]: lines drawn to scale as tapes, with the canopy over them
//! - [`change`]: two readings of each staked line above each other
//! - [`cover`]: cover with its bound against the goal
//! - [`curve`]: cover under every gap rule that the reading can answer
//! - [`costs`]: what designs of each length of line cost, and the cheapest
//! - [`map`]: a site with its lines to scale, in the order of the walk
//! - [`meaning`]: small drawings that say what a word means
//! - [`practice`]: a practice line seen from above, and why the reading depends on where you stand
//! - [`trend`]: cover over the years, each line, the model and its band, the goal
//! - [`control`]: one reader's differences over a season
//! - [`gaps`]: how much of the line lies in gaps of each class
//! - [`ruler`]: the tape as one walks along it
//! - [`rules`]: small drawings of reading rules
//!
//! Every picture takes its data and a [`Frame`]. Every word that a reader sees comes in with the data; numbers
//! that carry meaning do too, and only the numbers of an axis are written here. A picture on a screen carries
//! classes, and the page includes [`STYLESHEET`] once; a picture for print carries its colours itself.
//!
//! Nothing here computes: a share, a bound or a union of canopy arrives finished.
#![forbid(unsafe_code)]

mod axis;
pub mod control;
pub mod costs;
pub mod cover;
pub mod curve;
mod frame;
pub mod gaps;
mod goal;
mod hatch;
mod heading;
mod legend;
pub mod line;
pub mod map;
pub mod meaning;
mod palette;
pub mod practice;
pub mod ruler;
pub mod rules;
mod scale;
mod share;
mod svg;
mod text;
pub mod trend;

pub use frame::Frame;
pub use goal::{Goal, Relation};
pub use line::change;
pub use palette::{Palette, STYLESHEET, Tone};
pub use share::Share;
