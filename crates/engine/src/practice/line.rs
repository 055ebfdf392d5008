//! A practice line: what stands along and over an invented tape, to the division.

use crate::cover::{Intercept, Life, LineCover, line_cover};
use crate::length::{Length, Notation, Unit};
use crate::num::math::{cos, sin, sqrt};
use crate::rule::ReadingRule;
use crate::stretch::{Stretch, union, without};

/// A round outline seen from above, known by what it cuts off the edge of the tape that is read.
///
/// # Example
/// A cut of 8 cm three centimetres beside the middle is that of a circle of radius 5 cm.
/// ```
/// use tautline_engine::{length::{Length, Unit}, practice::line::Round, stretch::Stretch};
/// let cm = |n| Length::from_units(n, Unit::Centimetre);
/// let round = Round { cut: Stretch::new(cm(10), cm(18)).unwrap(), aside: cm(3) };
/// assert!((round.radius() - 0.05).abs() < 1e-12);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Round {
    /// What it covers of the tape's edge.
    pub cut: Stretch,
    /// How far its middle stands to the left of the edge, looking from the tape's zero; below zero to the right.
    pub aside: Length,
}

impl Round {
    /// Where its middle stands along the tape.
    ///
    /// # Units
    /// metres
    pub fn middle(&self) -> f64 {
        f64::midpoint(self.cut.start().in_unit(Unit::Metre), self.cut.stop().in_unit(Unit::Metre))
    }

    /// Its radius: √((cut/2)² + aside²).
    ///
    /// # Units
    /// metres
    pub fn radius(&self) -> f64 {
        let half = self.cut.length().in_unit(Unit::Metre) / 2.0;
        let aside = self.aside.in_unit(Unit::Metre);
        sqrt(half * half + aside * aside)
    }

    /// What it seems to cover of the tape's edge when it is seen moved, to the nearest `step`.
    pub fn seen(&self, moved: Moved, step: Length) -> Option<Stretch> {
        if moved == Moved::default() {
            return Some(self.cut);
        }
        let aside = self.aside.in_unit(Unit::Metre) + moved.aside;
        let square = self.radius() * self.radius() - aside * aside;
        if square <= 0.0 {
            return None;
        }
        let (middle, half) = (self.middle() + moved.along, sqrt(square));
        Stretch::new(nearest(middle - half, step), nearest(middle + half, step))
    }
}

/// How far something seems to stand from where it stands.
///
/// # Units
/// metres
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Moved {
    /// Along the tape.
    pub along: f64,
    /// To the left of it.
    pub aside: f64,
}

/// The multiple of `step` that lies nearest.
pub(super) fn nearest(metres: f64, step: Length) -> Length {
    let steps = metres / step.in_unit(Unit::Metre);
    #[expect(clippy::cast_possible_truncation, reason = "places on a tape")]
    let whole = steps.round() as i64;
    Length::from_nanometres(whole * step.nanometres())
}

/// How far a point at a height seems moved against the tape below it when the eye isn't straight above: h · tan α.
///
/// # Units
/// metres; the angle in degrees from straight down
/// # Range
/// angles below 90
/// # Source
/// plane trigonometry
/// # Example
/// From 45° a canopy edge one metre up is read one metre off.
/// ```
/// use tautline_engine::{length::{Length, Unit}, practice::line::parallax};
/// assert!((parallax(Length::from_units(1, Unit::Metre), 45.0) - 1.0).abs() < 1e-12);
/// ```
pub fn parallax(height: Length, degrees: f64) -> f64 {
    let angle = degrees.to_radians();
    height.in_unit(Unit::Metre) * sin(angle) / cos(angle)
}

/// One shrub over the tape.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shrub {
    /// Its species, as a number within the line.
    pub species: u32,
    /// The outline of its crown.
    pub crown: Round,
    /// Openings in the crown.
    pub openings: Vec<Round>,
    /// Dead parts of the crown.
    pub dead: Vec<Round>,
    /// Whether any of it is alive.
    pub alive: bool,
    /// How high its canopy stands over the tape.
    pub height: Length,
}

/// What lies along a tape and is no canopy of a shrub.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Other {
    /// A tuft of grass.
    Grass,
    /// A flowering forb.
    Flower,
    /// Flower stalks that stand out beyond a shrub's canopy.
    Stalks,
    /// Litter.
    Litter,
    /// A rock.
    Rock,
}

impl Other {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Grass, Self::Flower, Self::Stalks, Self::Litter, Self::Rock];

    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Grass => "practice-grass",
            Self::Flower => "practice-flower",
            Self::Stalks => "practice-stalks",
            Self::Litter => "practice-litter",
            Self::Rock => "practice-rock",
        }
    }
}

/// A practice line with everything that stands along it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PracticeLine {
    /// How long the tape is.
    pub length: Length,
    /// How the tape is numbered, and its finest division.
    pub tape: Notation,
    /// How wide the tape is.
    pub width: Length,
    /// The grade of the ground along it, in per cent.
    pub slope: u8,
    /// How many species there are.
    pub species: u32,
    /// The shrubs, along the tape.
    pub shrubs: Vec<Shrub>,
    /// What doesn't count, along the tape.
    pub others: Vec<(Other, Round)>,
}

impl PracticeLine {
    /// The tape's finest division.
    pub fn step(&self) -> Length {
        self.tape.step()
    }

    /// What stands over the tape's edge, every edge as it is; each shrub is a plant of its own.
    pub fn intercepts(&self) -> Vec<Intercept> {
        self.seen(|_| Moved::default())
    }

    /// What seems to stand over the tape's edge to an eye to which shrubs seem moved.
    pub fn seen(&self, moved: impl Fn(&Shrub) -> Moved) -> Vec<Intercept> {
        let mut found = Vec::new();
        for (plant, shrub) in (0..).zip(&self.shrubs) {
            let moved = moved(shrub);
            let cut = |round: &Round| round.seen(moved, self.step());
            let Some(crown) = cut(&shrub.crown) else { continue };
            let openings = union(shrub.openings.iter().filter_map(cut));
            let canopy = without(&[crown], &openings);
            let dead = if shrub.alive { union(shrub.dead.iter().filter_map(cut)) } else { vec![crown] };
            let live = without(&canopy, &dead);
            let dead = without(&canopy, &live);
            for (life, stretches) in [(Life::Live, live), (Life::Dead, dead)] {
                found.extend(stretches.into_iter().map(|stretch| Intercept {
                    stretch,
                    species: shrub.species,
                    plant: Some(plant),
                    life,
                }));
            }
        }
        found
    }

    /// The right reading under a rule.
    pub fn cover(&self, rule: &ReadingRule) -> LineCover {
        line_cover(self.length, &self.intercepts(), rule)
    }

    /// What may explain a slip: dead wood, and what doesn't count.
    pub fn facts(&self) -> Facts {
        let intercepts = self.intercepts();
        let of = |life: Life| union(intercepts.iter().filter(|i| i.life == life).map(|i| i.stretch));
        Facts {
            dead: without(&of(Life::Dead), &of(Life::Live)),
            others: self.others.iter().map(|(other, round)| (*other, round.cut)).collect(),
        }
    }
}

/// What stands along a line and may explain a slip.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Facts {
    /// Tape under dead canopy and no live canopy.
    pub dead: Vec<Stretch>,
    /// What doesn't count, and where.
    pub others: Vec<(Other, Stretch)>,
}
