//! Where every plant of an invented stand is, and what its crown looks like.

use super::{Pattern, Species};
use crate::num::math::{cos, sin, sqrt};
use crate::seed::{Random, Seed};
use core::f64::consts::PI;

/// A disc on the ground, in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Easting of the centre.
    pub x: f64,
    /// Northing of the centre.
    pub y: f64,
    /// Radius.
    pub radius: f64,
}

/// The crown of one plant.
#[derive(Clone, Debug, PartialEq)]
pub struct Crown {
    /// Number of the plant in its stand; a crown over the region's edge is there once on each side, under one number.
    pub plant: usize,
    /// Position of its species in the list that the stand was drawn from.
    pub species: usize,
    /// Whether the plant lives.
    pub live: bool,
    /// Outline.
    pub outline: Disc,
    /// Openings inside the outline.
    pub openings: Vec<Disc>,
}

/// An invented stand of shrubs on a rectangle.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// Extent to the east, in metres.
    pub width: f64,
    /// Extent to the north, in metres.
    pub height: f64,
    /// Every crown that reaches into the rectangle.
    pub crowns: Vec<Crown>,
}

impl Stand {
    /// Draws a stand.
    ///
    /// The draws depend on densities, patterns and numbers of openings alone: the same seed with other diameters
    /// or another share of dead gives the same plants in the same places, grown or gone, as in a later year.
    ///
    /// # Units
    /// metres
    /// # Range
    /// crowns far smaller than the rectangle, which joins at opposite edges
    pub fn draw(species: &[Species], width: f64, height: f64, seed: Seed) -> Self {
        let mut random = seed.stream();
        let mut stand = Self { width, height, crowns: Vec::new() };
        let mut plant = 0;
        for (number, species) in species.iter().enumerate() {
            for (x, y) in stand.places(species, &mut random) {
                stand.add(&crown(plant, number, species, (x, y), &mut random));
                plant += 1;
            }
        }
        stand
    }

    fn places(&self, species: &Species, random: &mut Random) -> Vec<(f64, f64)> {
        let area = self.width * self.height;
        match species.pattern {
            Pattern::Random => {
                (0..random.poisson(species.density * area)).map(|_| self.anywhere(random)).collect()
            }
            Pattern::Clumped { clumps, spread } => {
                let mut places = Vec::new();
                for _ in 0..random.poisson(clumps * area) {
                    let (x, y) = self.anywhere(random);
                    for _ in 0..random.poisson(species.density / clumps) {
                        let (east, north) = (spread * random.normal(), spread * random.normal());
                        places.push(((x + east).rem_euclid(self.width), (y + north).rem_euclid(self.height)));
                    }
                }
                places
            }
        }
    }

    fn anywhere(&self, random: &mut Random) -> (f64, f64) {
        (self.width * random.uniform(), self.height * random.uniform())
    }

    /// Adds a crown, and its other side where it reaches over an edge.
    fn add(&mut self, crown: &Crown) {
        let reaches =
            |at: f64, extent: f64| at + crown.outline.radius > 0.0 && at - crown.outline.radius < extent;
        for east in [-self.width, 0.0, self.width] {
            for north in [-self.height, 0.0, self.height] {
                let moved = |disc: Disc| Disc { x: disc.x + east, y: disc.y + north, ..disc };
                let outline = moved(crown.outline);
                if reaches(outline.x, self.width) && reaches(outline.y, self.height) {
                    let openings = crown.openings.iter().copied().map(moved).collect();
                    self.crowns.push(Crown { outline, openings, ..crown.clone() });
                }
            }
        }
    }
}

fn crown(plant: usize, number: usize, species: &Species, (x, y): (f64, f64), random: &mut Random) -> Crown {
    let radius = random.lognormal(species.diameter, species.diameter_spread) / 2.0;
    let live = random.uniform() >= species.dead;
    let opening = radius * species.openings.diameter;
    let openings = (0..random.poisson(species.openings.number))
        .map(|_| {
            // even over the disc of centres that keep the opening inside
            let away = (radius - opening) * sqrt(random.uniform());
            let turn = 2.0 * PI * random.uniform();
            Disc { x: x + away * cos(turn), y: y + away * sin(turn), radius: opening }
        })
        .collect();
    Crown { plant, species: number, live, outline: Disc { x, y, radius }, openings }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::simulate::Openings;

    fn shrub(pattern: Pattern) -> Species {
        let openings = Openings { number: 2.0, diameter: 0.1 };
        Species { density: 0.3, diameter: 0.8, diameter_spread: 0.4, dead: 0.2, pattern, openings }
    }

    fn stand(species: Species, seed: u64) -> Stand {
        Stand::draw(&[species], 30.0, 20.0, Seed::from_purpose("test stand", &[seed]))
    }

    #[test]
    fn the_same_seed_gives_the_same_stand() {
        for pattern in [Pattern::Random, Pattern::Clumped { clumps: 0.05, spread: 1.0 }] {
            assert_eq!(stand(shrub(pattern), 7), stand(shrub(pattern), 7));
            assert_ne!(stand(shrub(pattern), 7), stand(shrub(pattern), 8));
        }
    }

    #[test]
    fn a_later_year_is_the_same_plants_grown_or_gone() {
        let plants = |diameter, dead| {
            let mut crowns = stand(Species { diameter, dead, ..shrub(Pattern::Random) }, 7).crowns;
            crowns.sort_by_key(|crown| crown.plant);
            crowns.dedup_by_key(|crown| crown.plant);
            crowns
        };
        let (before, after) = (plants(0.8, 0.2), plants(0.88, 0.3));
        assert_eq!(before.len(), after.len());
        for (then, now) in before.iter().zip(&after) {
            assert!((now.outline.radius / then.outline.radius - 1.1).abs() < 1e-12);
            assert!(then.live || !now.live, "a dead plant doesn't come back");
            assert_eq!(then.openings.len(), now.openings.len());
        }
    }

    #[test]
    fn openings_lie_inside_the_crown() {
        let crowns = stand(shrub(Pattern::Random), 7).crowns;
        assert!(crowns.iter().any(|crown| !crown.openings.is_empty()));
        for crown in crowns {
            for opening in crown.openings {
                let away = crate::num::math::hypot(opening.x - crown.outline.x, opening.y - crown.outline.y);
                assert!(away + opening.radius <= crown.outline.radius + 1e-12);
            }
        }
    }
}
