//! A layout as a record: the ground, how its lines were drawn, those in reserve, and which of them took another's place.
//!
//! Lines that are to be read stand in the plan as always. What stands here beside them is what else somebody must know in years to
//! come: that chance chose them and how, which came next, and why one was not read. A reserve taken in its order keeps the ground
//! as likely as it was, as long as the reason has nothing to do with the shrubs on it.
//!
//! # Source
//! points in order, later ones in place of those that can't be read: Stevens and Olsen 2004, Journal of the American Statistical
//! Association 99:262 (from memory)

use crate::boundary::{Boundary, Pair, Part, Reference, Role, Shape};
use crate::date::Date;
use crate::input::Input;
use crate::measure::Measure;
use crate::place::{LinePlace, Position};
use crate::plan::{PlannedLine, Stratum};
use serde::{Deserialize, Serialize};
use tautline_engine::length::DecimalMark;

/// A layout that was drawn. Its identity is its site and what its lines' names begin with.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default)]
pub struct DrawnLayout {
    /// The site.
    pub site: String,
    /// What the names of its lines begin with; often nothing.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub names: String,
    /// The day it was drawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
    /// Why so many lines.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub reason: String,
    /// The seed in digits: the same boundary, settings and seed give the same layout.
    pub seed: String,
    /// How points were drawn: balanced, random, systematic, baseline.
    pub design: String,
    /// What happened at the edge: turn, redraw.
    pub edge: String,
    /// Length of each line as typed.
    pub length: String,
    /// The same in whole millimetres.
    pub length_mm: i64,
    /// Least distance between lines of different points in whole millimetres.
    pub apart_mm: i64,
    /// Why the area was chosen by judgement.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub judged: Option<String>,
    /// How many metres positions may be off for the sake of the boundary's datum.
    pub position_error_m: u32,
    /// The ground, stratum by stratum.
    pub ground: Vec<Ground>,
    /// What was kept out of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub keep_out: Vec<KeptOut>,
    /// The lines, those in reserve last and in their order.
    pub lines: Vec<DrawnLine>,
    /// The names of the lines to read in the order of the walk.
    pub walk: Vec<String>,
    /// Where the walk begins; at the first line's zero where nobody says.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Position>,
    /// Points given up at the edge, at what is kept out of, and too near to another line.
    pub given_up: [u32; 3],
}

/// The ground of a stratum, or of a site without strata.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Ground {
    /// The stratum's name; none where the site has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stratum: Option<String>,
    /// Its area in whole square millimetres.
    pub area: u64,
    /// Lines or plots wanted in it.
    pub wanted: u32,
    /// Lines or plots placed in it.
    pub placed: u32,
    /// Its polygons, each an outer ring and its holes.
    pub polygons: Vec<Vec<Vec<Position>>>,
}

/// What lines were kept out of.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KeptOut {
    /// How far to stay away, in whole millimetres.
    pub buffer: i64,
    /// It is an area, not a way.
    pub area: bool,
    /// Whether people walk across it between lines, where that isn't so of its shape: areas aren't crossed, ways are.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub crossed: Option<bool>,
    /// Its rings, or the one way.
    pub rings: Vec<Vec<Position>>,
}

/// A drawn line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DrawnLine {
    /// Its name.
    pub line: String,
    /// Its stratum.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stratum: Option<String>,
    /// Its plot, where lines are spokes of one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plot: Option<String>,
    /// Where the tape's zero is.
    pub start: Position,
    /// Where the tape ends.
    pub end: Position,
    /// Whole degrees clockwise from true north.
    pub bearing: u16,
    /// Held in reserve.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub reserve: bool,
    /// The point's place in the order of drawing; 0 for a line that was there before.
    pub draw: u32,
    /// It was turned at the edge.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub turned: bool,
    /// It was there before.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub staked: bool,
}

/// A drawn line that can't be read, why, and what takes its place. Its identity is its site and its line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Replaced {
    /// The site.
    pub site: String,
    /// The line.
    pub line: String,
    /// The reserve that is read in its place; none where none was left.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<String>,
    /// Why.
    pub why: Why,
    /// The same in a person's own words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// When that was found.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
}

/// Why a drawn line can't be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Why {
    /// It isn't ground that the answer is about: a road, water, another vegetation.
    OtherGround,
    /// Nobody gave permission to enter.
    NoPermission,
    /// It isn't safe.
    NotSafe,
    /// It can't be reached.
    OutOfReach,
    /// The shrubs on it are in the way, which makes what is left thinner than the ground is.
    Shrubs,
    /// Something else.
    Other,
}

impl Why {
    /// All of them, as they are offered.
    pub const ALL: [Self; 6] =
        [Self::OtherGround, Self::NoPermission, Self::NotSafe, Self::OutOfReach, Self::Shrubs, Self::Other];

    /// The word in options, which is also how records hold it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::OtherGround => "other-ground",
            Self::NoPermission => "no-permission",
            Self::NotSafe => "not-safe",
            Self::OutOfReach => "out-of-reach",
            Self::Shrubs => "shrubs",
            Self::Other => "other",
        }
    }

    /// The code of its words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::OtherGround => "why-other-ground",
            Self::NoPermission => "why-no-permission",
            Self::NotSafe => "why-not-safe",
            Self::OutOfReach => "why-out-of-reach",
            Self::Shrubs => "why-shrubs",
            Self::Other => "why-other",
        }
    }

    /// The reason that a word stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|why| why.word() == word.trim())
    }

    /// What follows for the figures, by its code.
    pub const fn follows(self) -> &'static str {
        match self {
            Self::OtherGround => "replaced-other-ground",
            Self::Shrubs => "replaced-shrubs",
            Self::NoPermission | Self::NotSafe | Self::OutOfReach | Self::Other => "replaced-not-entered",
        }
    }
}

impl DrawnLayout {
    /// What it adds to the plan: its lines with their places, and its strata with their areas; none of the reserve.
    pub fn input(&self) -> Input {
        let read = || self.lines.iter().filter(|line| !line.reserve);
        let strata = self.ground.iter().filter_map(|ground| {
            Some(Stratum { site: self.site.clone(), name: ground.stratum.clone()?, area: ground.area })
        });
        Input {
            plan: read().map(|line| self.planned(line)).collect(),
            places: read().map(|line| self.place(line)).collect(),
            strata: strata.collect(),
            ..Input::default()
        }
    }

    /// A line of it as a planned line.
    pub fn planned(&self, line: &DrawnLine) -> PlannedLine {
        PlannedLine {
            site: self.site.clone(),
            line: line.line.clone(),
            length: Measure::read(&self.length, None, DecimalMark::Point).ok(),
            stratum: line.stratum.clone(),
            plot: line.plot.clone(),
            judgement: self.judged.clone(),
            slope: None,
            permission: None,
        }
    }

    /// Where a line of it lies.
    pub fn place(&self, line: &DrawnLine) -> LinePlace {
        LinePlace { site: self.site.clone(), line: line.line.clone(), start: line.start, end: Some(line.end) }
    }

    /// Its ground, and what was kept out of, as a boundary.
    pub fn boundary(&self) -> Boundary {
        let pair = |position: &Position| -> Pair {
            let [latitude, longitude] = position.degrees();
            [longitude, latitude]
        };
        let ring = |ring: &Vec<Position>| ring.iter().map(pair).collect::<Vec<Pair>>();
        let ground = self.ground.iter().map(|ground| {
            let areas = ground.polygons.iter().map(|rings| rings.iter().map(ring).collect()).collect();
            (Role::Stratum(ground.stratum.clone()), Shape::Areas(areas))
        });
        let kept = self.keep_out.iter().map(|kept| {
            let rings: Vec<_> = kept.rings.iter().map(ring).collect();
            let shape = if kept.area {
                Shape::Areas(vec![rings])
            } else {
                Shape::Way(rings.into_iter().next().unwrap_or_default())
            };
            (Role::KeepOut { buffer: kept.buffer, crossed: kept.crossed }, shape)
        });
        let parts = (1..).zip(ground.chain(kept)).map(|(number, (role, shape))| Part {
            number,
            reference: Reference::default(),
            role,
            shape,
        });
        Boundary { site: Some(self.site.clone()), parts: parts.collect(), left_out: Vec::new() }
    }

    /// The layout as it is read once lines were replaced: those are gone, and what takes their place is walked in it.
    #[must_use]
    pub fn with(&self, replaced: &[Replaced]) -> Self {
        let mut layout = self.clone();
        for word in replaced.iter().filter(|word| word.site == self.site) {
            let by = word.by.as_deref();
            layout.lines.retain(|line| line.line != word.line);
            for line in layout.lines.iter_mut().filter(|line| Some(line.line.as_str()) == by) {
                line.reserve = false;
            }
            let at = layout.walk.iter().position(|line| *line == word.line);
            match (at, by) {
                (Some(at), Some(by)) => by.clone_into(&mut layout.walk[at]),
                (Some(at), None) => {
                    layout.walk.remove(at);
                }
                // a reserve that was replaced before it was walked
                (None, _) => {}
            }
        }
        // a reserve that itself was replaced leaves its place to the one after it, whichever word comes first
        let names: Vec<&str> = layout.lines.iter().map(|line| line.line.as_str()).collect();
        let gone = |line: &String| !names.contains(&line.as_str());
        while let Some(at) = layout.walk.iter().position(gone) {
            let next = replaced.iter().find(|word| word.site == self.site && word.line == layout.walk[at]);
            match next.and_then(|word| word.by.clone()) {
                Some(by) => layout.walk[at] = by,
                None => {
                    layout.walk.remove(at);
                }
            }
        }
        layout
    }

    /// The reserve that comes next in place of a line: the first of its stratum that took nobody's place and wasn't itself replaced.
    pub fn next_in_place_of(&self, line: &str, replaced: &[Replaced]) -> Option<&DrawnLine> {
        let own = self.lines.iter().find(|one| one.line == line)?;
        let used = |name: &str| {
            let of_ours = replaced.iter().filter(|word| word.site == self.site);
            of_ours.clone().any(|word| word.line == name || word.by.as_deref() == Some(name))
        };
        self.lines.iter().find(|one| one.reserve && one.stratum == own.stratum && !used(&one.line))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(name: &str, stratum: &str, reserve: bool) -> DrawnLine {
        let at = Position { latitude: 42_300_000_000, longitude: -113_700_000_000 };
        DrawnLine {
            line: name.into(),
            stratum: Some(stratum.into()),
            plot: None,
            start: at,
            end: at,
            bearing: 90,
            reserve,
            draw: 1,
            turned: false,
            staked: false,
        }
    }

    fn layout() -> DrawnLayout {
        DrawnLayout {
            site: "Invented".into(),
            length: "50 m".into(),
            lines: vec![
                line("1", "flat", false),
                line("2", "draw", false),
                line("R1", "flat", true),
                line("R2", "draw", true),
                line("R3", "flat", true),
            ],
            ..DrawnLayout::default()
        }
    }

    fn replaced(line: &str, by: &str) -> Replaced {
        Replaced {
            site: "Invented".into(),
            line: line.into(),
            by: Some(by.into()),
            why: Why::NoPermission,
            note: String::new(),
            date: None,
        }
    }

    /// Reserve points are taken in their order and within their stratum (Stevens and Olsen 2004).
    #[test]
    fn the_next_of_the_same_stratum_takes_the_place() {
        let layout = layout();
        let next = |line: &str, words: &[Replaced]| {
            layout.next_in_place_of(line, words).map(|line| line.line.clone())
        };
        assert_eq!(next("1", &[]).as_deref(), Some("R1"));
        assert_eq!(next("2", &[]).as_deref(), Some("R2"));
        let first = replaced("1", "R1");
        assert_eq!(next("R1", core::slice::from_ref(&first)).as_deref(), Some("R3"));
        assert_eq!(next("R3", &[first, replaced("R1", "R3")]), None, "none is left");
        let elsewhere = Replaced { site: "Elsewhere".into(), ..replaced("1", "R1") };
        assert_eq!(next("1", &[elsewhere]).as_deref(), Some("R1"));
    }

    /// 1 gave way to R1, and R1 to R3, in whichever order that is told.
    #[test]
    fn the_walk_goes_to_what_took_the_place() {
        let layout = DrawnLayout { walk: vec!["2".into(), "1".into()], ..layout() };
        let words = [replaced("R1", "R3"), replaced("1", "R1")];
        for words in [words.to_vec(), words.iter().rev().cloned().collect()] {
            let now = layout.with(&words);
            assert_eq!(now.walk, ["2", "R3"]);
            let read: Vec<&str> =
                now.lines.iter().filter(|line| !line.reserve).map(|line| line.line.as_str()).collect();
            assert_eq!(read, ["2", "R3"]);
        }
        let none = Replaced { by: None, ..replaced("2", "") };
        assert_eq!(layout.with(&[none]).walk, ["1"]);
    }

    #[test]
    fn the_plan_holds_no_reserve_and_records_survive() {
        let layout = layout();
        let input = layout.input();
        assert_eq!(input.plan.iter().map(|line| line.line.as_str()).collect::<Vec<_>>(), ["1", "2"]);
        assert_eq!(input.places.len(), 2);
        let value = serde_json::to_value(&layout).unwrap();
        assert!(crate::canonical::bytes(&value).is_some(), "a record holds no floats");
        assert_eq!(serde_json::from_value::<DrawnLayout>(value).unwrap(), layout);
        for why in Why::ALL {
            assert_eq!(Why::from_word(why.word()), Some(why));
            assert_eq!(serde_json::to_value(why).unwrap(), why.word());
        }
    }
}
