//! Cover of one line under a reading rule: each species, the canopy, the dead wood, and every gap that was closed.
//!
//! The order is fixed: clip to the line; join each plant's or species' stretches; let short dead stretches join
//! live ones where the rule says so; close gaps; leave out what is too short; then take the union of the species
//! (the canopy) and close gaps between species where the rule says so. The sum of species is taken on the same
//! closed stretches, so the union never passes it by more than what closed between species.

mod canopy;
mod close;

pub use canopy::{Canopy, CanopyLength};

use crate::length::Length;
use crate::rule::{Bridging, DeadRule, ReadingRule};
use crate::stretch::{Stretch, any_overlaps, total, union, without};
use close::{Blockers, close_gaps};

/// Alive or dead.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Life {
    /// Alive by the protocol's definition.
    Live,
    /// Dead wood.
    Dead,
}

/// One intercept of a counted plant, read with positions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Intercept {
    /// From where to where on the tape.
    pub stretch: Stretch,
    /// The species, as a number of the caller's.
    pub species: u32,
    /// The plant within its species; without a mark an intercept is a plant of its own.
    pub plant: Option<u32>,
    /// Alive or dead.
    pub life: Life,
}

/// Why a stretch that nobody recorded is part of the figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Closure {
    /// A gap under the rule inside live canopy.
    Gap,
    /// A short dead stretch that was read as live.
    DeadJoined,
    /// A gap under the rule at the line's end.
    LineEnd,
    /// A gap under the rule between two species.
    BetweenSpecies,
}

/// A stretch that became live canopy by the rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Closed {
    /// From where to where.
    pub stretch: Stretch,
    /// Why.
    pub closure: Closure,
}

/// A stretch of the figure and the intercepts it came from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// From where to where, gaps closed.
    pub stretch: Stretch,
    /// Indices into the intercepts of the line.
    pub from: Vec<usize>,
}

/// Cover of one species on one line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SpeciesCover {
    /// The species, as given.
    pub species: u32,
    /// Live stretches after closing.
    pub live: Vec<Piece>,
    /// Dead stretches that are not under live canopy of the same species.
    pub dead: Vec<Piece>,
    /// What the rule closed.
    pub closed: Vec<Closed>,
    /// Intercepts left out because the whole canopy piece was shorter than the shortest that is read.
    pub too_short: Vec<usize>,
}

impl SpeciesCover {
    /// Length under live canopy of this species.
    pub fn live_length(&self) -> Length {
        self.live.iter().map(|piece| piece.stretch.length()).sum()
    }

    /// Length under dead canopy of this species and no live canopy of it.
    pub fn dead_length(&self) -> Length {
        self.dead.iter().map(|piece| piece.stretch.length()).sum()
    }
}

/// Cover of one line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineCover {
    /// The length that was read.
    pub length: Length,
    /// Each species, by number.
    pub species: Vec<SpeciesCover>,
    /// The tape under live canopy of any species; overlap counted once.
    pub canopy: Vec<Stretch>,
    /// What closed between species, part of the canopy and of no species.
    pub between: Vec<Closed>,
    /// The tape under dead canopy and no live canopy.
    pub dead: Vec<Stretch>,
}

impl LineCover {
    /// Length under live canopy, overlap counted once. Never more than the line.
    pub fn canopy_length(&self) -> Length {
        total(&self.canopy)
    }

    /// The species' live lengths added up. Can pass the line's length.
    pub fn sum_length(&self) -> Length {
        self.species.iter().map(SpeciesCover::live_length).sum()
    }

    /// Length under dead canopy only.
    pub fn dead_length(&self) -> Length {
        total(&self.dead)
    }

    /// Length that the rule closed between species.
    pub fn between_length(&self) -> Length {
        self.between.iter().map(|closed| closed.stretch.length()).sum()
    }
}

/// Works out the cover of one line of `length` from the intercepts of the plants that count.
///
/// Intercepts beyond the line are clipped to it.
///
/// # Units
/// exact lengths; divide by `length` for cover
/// # Range
/// canopy within 0 and `length`; canopy less [`LineCover::between_length`] never passes the sum of species
/// # Source
/// species cover and sum: Coulloudon et al. 1999, *Sampling Vegetation Attributes*, Interagency Technical
/// Reference 1734-4, V.E.9.a; union: length of tape under any canopy, the complement of the tape under none
/// # Example
/// ```
/// use tautline_engine::{cover::{Intercept, Life, line_cover}, length::{Length, Unit}};
/// use tautline_engine::{rule::ReadingRule, stretch::Stretch};
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let shrub = |species, from, to| Intercept {
///     stretch: Stretch::new(at(from), at(to)).unwrap(), species, plant: None, life: Life::Live,
/// };
/// // two species overlap from 20 to 30 cm
/// let cover = line_cover(at(100), &[shrub(0, 0, 30), shrub(1, 20, 50)], &ReadingRule::AS_WRITTEN);
/// assert_eq!(cover.canopy_length(), at(50));
/// assert_eq!(cover.sum_length(), at(60));
/// ```
pub fn line_cover(length: Length, intercepts: &[Intercept], rule: &ReadingRule) -> LineCover {
    let on_line = clipped(length, intercepts, rule.dead);
    let mut numbers: Vec<u32> = on_line.iter().map(|(_, intercept)| intercept.species).collect();
    numbers.sort_unstable();
    numbers.dedup();

    let species: Vec<SpeciesCover> =
        numbers.iter().map(|&number| species_cover(number, &on_line, length, rule)).collect();

    let live = union(species.iter().flat_map(|one| one.live.iter().map(|piece| piece.stretch)));
    let dead_wood = union(species.iter().flat_map(|one| one.dead.iter().map(|piece| piece.stretch)));
    let mut canopy = live.clone();
    let mut between = Vec::new();
    if rule.gap.between_species == Bridging::Bridged {
        // dead wood as it was read: what closes around it is no wood and blocks nothing
        let read_dead = union(on_line.iter().filter(|(_, i)| i.life == Life::Dead).map(|(_, i)| i.stretch));
        let standing = without(&read_dead, &live);
        let dead_blocks = if rule.gap.across_dead == Bridging::Breaks { &standing[..] } else { &[] };
        canopy = close_gaps(&live, &rule.gap, length, &Blockers { dead: dead_blocks, others: &[] });
        between = without(&canopy, &live)
            .into_iter()
            .map(|stretch| Closed { stretch, closure: Closure::BetweenSpecies })
            .collect();
    }
    let dead = without(&dead_wood, &canopy);
    LineCover { length, species, canopy, between, dead }
}

/// The intercepts on the line with their indices, clipped to it; dead ones dropped or made live as the rule says.
fn clipped(length: Length, intercepts: &[Intercept], dead: DeadRule) -> Vec<(usize, Intercept)> {
    let Some(line) = Stretch::new(Length::ZERO, length) else { return Vec::new() };
    intercepts
        .iter()
        .enumerate()
        .filter_map(|(index, &intercept)| {
            let stretch = intercept.stretch.within(line)?;
            let life = if dead == DeadRule::CountsAsLive { Life::Live } else { intercept.life };
            Some((index, Intercept { stretch, life, ..intercept }))
        })
        .collect()
}

fn species_cover(
    species: u32,
    on_line: &[(usize, Intercept)],
    length: Length,
    rule: &ReadingRule,
) -> SpeciesCover {
    let own: Vec<(usize, Intercept)> =
        on_line.iter().copied().filter(|(_, i)| i.species == species).collect();
    let others = union(
        on_line.iter().filter(|(_, i)| i.species != species && i.life == Life::Live).map(|(_, i)| i.stretch),
    );
    let mut live = Vec::new();
    let mut whole = Vec::new();
    for plant in plants(&own, rule) {
        let (plant_live, plant_whole) = plant_canopy(&plant, &others, length, rule);
        live.extend(plant_live);
        whole.extend(plant_whole);
    }
    let mut whole = union(whole);
    let mut too_short = Vec::new();
    whole.retain(|piece| {
        let long_enough = piece.length() >= rule.shortest;
        if !long_enough {
            too_short.extend(sources(*piece, &own));
        }
        long_enough
    });
    let mut live = union(live);
    live.retain(|piece| any_overlaps(&whole, *piece));
    let dead = if rule.dead == DeadRule::LeftOut { Vec::new() } else { without(&whole, &live) };
    let closed = closures(&live, &own, length);
    let with_sources = |stretches: Vec<Stretch>| {
        stretches.into_iter().map(|stretch| Piece { stretch, from: sources(stretch, &own) }).collect()
    };
    SpeciesCover { species, live: with_sources(live), dead: with_sources(dead), closed, too_short }
}

/// The intercepts between which gaps may close: all of a species, or plant by plant.
fn plants(own: &[(usize, Intercept)], rule: &ReadingRule) -> Vec<Vec<Intercept>> {
    if rule.gap.two_plants == Bridging::Bridged {
        return vec![own.iter().map(|(_, intercept)| *intercept).collect()];
    }
    let mut marked: Vec<u32> = own.iter().filter_map(|(_, intercept)| intercept.plant).collect();
    marked.sort_unstable();
    marked.dedup();
    let by_mark = marked
        .into_iter()
        .map(|mark| own.iter().map(|(_, i)| *i).filter(|i| i.plant == Some(mark)).collect::<Vec<_>>());
    let unmarked = own.iter().map(|(_, i)| *i).filter(|i| i.plant.is_none()).map(|i| vec![i]);
    by_mark.chain(unmarked).collect()
}

/// Live canopy, and live and dead canopy together, of intercepts between which gaps may close.
fn plant_canopy(
    plant: &[Intercept],
    others: &[Stretch],
    length: Length,
    rule: &ReadingRule,
) -> (Vec<Stretch>, Vec<Stretch>) {
    let of = |life: Life| union(plant.iter().filter(|i| i.life == life).map(|i| i.stretch));
    let mut live = of(Life::Live);
    let mut dead = without(&of(Life::Dead), &live);
    if rule.dead == DeadRule::ShortJoinsLive {
        let (joins, stays): (Vec<Stretch>, Vec<Stretch>) = dead.iter().partition(|stretch| {
            rule.gap.closes(stretch.length()) && live.iter().any(|l| l.touches(**stretch))
        });
        live = union(live.into_iter().chain(joins));
        dead = stays;
    }
    let others = if rule.gap.across_species == Bridging::Breaks { others } else { &[] };
    let dead_blocks = if rule.gap.across_dead == Bridging::Breaks { &dead[..] } else { &[] };
    let closed_live = close_gaps(&live, &rule.gap, length, &Blockers { dead: dead_blocks, others });
    if rule.dead == DeadRule::LeftOut {
        return (closed_live.clone(), closed_live);
    }
    let canopy = union(live.into_iter().chain(dead.iter().copied()));
    let whole = close_gaps(&canopy, &rule.gap, length, &Blockers { dead: &[], others });
    (closed_live, whole)
}

/// What is live by the rule and was not recorded as live.
fn closures(live: &[Stretch], own: &[(usize, Intercept)], length: Length) -> Vec<Closed> {
    let of = |life: Life| union(own.iter().filter(|(_, i)| i.life == life).map(|(_, i)| i.stretch));
    let dead = of(Life::Dead);
    without(live, &of(Life::Live))
        .into_iter()
        .map(|stretch| {
            let closure = if without(&[stretch], &dead).is_empty() {
                Closure::DeadJoined
            } else if stretch.start() == Length::ZERO || stretch.stop() == length {
                Closure::LineEnd
            } else {
                Closure::Gap
            };
            Closed { stretch, closure }
        })
        .collect()
}

fn sources(piece: Stretch, own: &[(usize, Intercept)]) -> Vec<usize> {
    own.iter().filter(|(_, intercept)| intercept.stretch.overlaps(piece)).map(|(index, _)| *index).collect()
}

#[cfg(test)]
mod tests;
