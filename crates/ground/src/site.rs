//! A boundary brought to a local plane, repaired where that is safe, and checked.

use crate::local::Local;
use crate::position::Position;
use tautline_engine::place::plane::{Point, Segment};
use tautline_engine::place::region::{KeepOut, Polygon, Region, RingFault, Shape as OnPlane, fault};
use tautline_survey::boundary::{Boundary, Degrees, Role, Shape};

/// A site on its plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Site {
    /// The plane.
    pub local: Local,
    /// Where the plane has its origin: the middle of the boundary's frame.
    pub middle: Position,
    /// Each stratum, in the order in which it was met, or the one region of a site without strata.
    pub strata: Vec<(Option<String>, Region)>,
    /// What to keep out of.
    pub keep_out: Vec<KeepOut>,
    /// Lines that are there already, by name.
    pub there: Vec<(String, Segment)>,
    /// What was repaired.
    pub repaired: Vec<Repair>,
}

/// Something that was repaired: the part's number, and what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Repair {
    /// A ring ended elsewhere than it began and was closed.
    Closed {
        /// The part.
        part: usize,
    },
    /// Points that lie on one another to the millimetre were taken once.
    TakenOnce {
        /// The part.
        part: usize,
        /// How many were left out.
        points: usize,
    },
}

/// Why a boundary can't be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoundaryError {
    /// It has no area.
    NoArea,
    /// A position that is none on earth: the part, and what was found.
    NotOnEarth {
        /// The part.
        part: usize,
        /// What was found.
        found: Degrees,
    },
    /// A ring that can't be used: the part, what is wrong, and where.
    Ring {
        /// The part.
        part: usize,
        /// What is wrong.
        fault: RingFault,
        /// The first corner in question.
        at: Position,
    },
    /// A line that is there already must be a way of two points or more.
    LineNotAWay {
        /// The part.
        part: usize,
    },
    /// An area is wanted for a stratum.
    StratumNotAnArea {
        /// The part.
        part: usize,
    },
}

impl Site {
    /// Brings a boundary to the plane about its middle.
    ///
    /// # Errors
    /// [`BoundaryError`] for the first part that can't be used
    pub fn of(boundary: &Boundary) -> Result<Self, BoundaryError> {
        let middle = middle(boundary)?;
        let local = Local::about(middle);
        let mut site = Self {
            local,
            middle,
            strata: Vec::new(),
            keep_out: Vec::new(),
            there: Vec::new(),
            repaired: Vec::new(),
        };
        for part in &boundary.parts {
            let number = part.number;
            let on_plane = |degrees: &[Degrees]| -> Result<Vec<Point>, BoundaryError> {
                degrees.iter().map(|&found| Ok(local.onto(position(number, found)?))).collect()
            };
            let mut polygons = Vec::new();
            if let Shape::Areas(areas) = &part.shape {
                for area in areas {
                    let mut rings = Vec::new();
                    for ring in area {
                        rings.push(site.ring(number, on_plane(ring)?)?);
                    }
                    polygons.push(Polygon { rings });
                }
            }
            match (&part.role, &part.shape) {
                (Role::Stratum(name), Shape::Areas(_)) => {
                    match site.strata.iter_mut().find(|(known, _)| known == name) {
                        Some((_, region)) => region.polygons.append(&mut polygons),
                        None => site.strata.push((name.clone(), Region { polygons })),
                    }
                }
                (Role::Stratum(_), Shape::Way(_)) => {
                    return Err(BoundaryError::StratumNotAnArea { part: number });
                }
                (Role::KeepOut { buffer }, Shape::Areas(_)) => {
                    let areas = polygons.into_iter().map(OnPlane::Area);
                    site.keep_out.extend(areas.map(|shape| KeepOut { shape, buffer: *buffer }));
                }
                (Role::KeepOut { buffer }, Shape::Way(way)) => {
                    let shape = OnPlane::Way(on_plane(way)?);
                    site.keep_out.push(KeepOut { shape, buffer: *buffer });
                }
                (Role::Line(name), Shape::Way(way)) if way.len() > 1 => {
                    let way = on_plane(way)?;
                    let segment = Segment { from: way[0], to: way[way.len() - 1] };
                    site.there.push((name.clone(), segment));
                }
                (Role::Line(_), _) => return Err(BoundaryError::LineNotAWay { part: number }),
            }
        }
        if site.strata.iter().all(|(_, region)| region.area() == 0) {
            return Err(BoundaryError::NoArea);
        }
        Ok(site)
    }

    /// A ring without what was repeated, checked.
    fn ring(&mut self, part: usize, mut points: Vec<Point>) -> Result<Vec<Point>, BoundaryError> {
        if points.first() == points.last() {
            points.pop();
        } else {
            self.repaired.push(Repair::Closed { part });
        }
        let before = points.len();
        points.dedup();
        if points.len() < before {
            self.repaired.push(Repair::TakenOnce { part, points: before - points.len() });
        }
        match fault(&points) {
            None => Ok(points),
            Some(fault) => {
                let corner = match fault {
                    RingFault::MeetsItself { side, .. } => side,
                    RingFault::TooFar { at } => at,
                    RingFault::TooFewPoints | RingFault::NoArea => 0,
                };
                let at = points.get(corner).map_or(self.middle, |&point| self.local.back(point));
                Err(BoundaryError::Ring { part, fault, at })
            }
        }
    }

    /// Area of all strata in square metres.
    pub fn area(&self) -> f64 {
        self.strata.iter().map(|(_, region)| square_metres(region)).sum()
    }
}

/// Area of a region in square metres.
pub fn square_metres(region: &Region) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "an area for people and for weights")]
    let millimetres = region.area() as f64;
    millimetres / 1e6
}

fn position(part: usize, found: Degrees) -> Result<Position, BoundaryError> {
    Position::new(found[1], found[0]).ok_or(BoundaryError::NotOnEarth { part, found })
}

/// The middle of the frame of all areas.
fn middle(boundary: &Boundary) -> Result<Position, BoundaryError> {
    let mut frame: Option<[f64; 4]> = None;
    for part in boundary.parts.iter().filter(|part| matches!(part.role, Role::Stratum(_))) {
        let Shape::Areas(areas) = &part.shape else { continue };
        for &found in areas.iter().flatten().flatten() {
            position(part.number, found)?;
            let [x, y] = found;
            frame = Some(match frame {
                None => [x, y, x, y],
                Some([west, south, east, north]) => [west.min(x), south.min(y), east.max(x), north.max(y)],
            });
        }
    }
    let [west, south, east, north] = frame.ok_or(BoundaryError::NoArea)?;
    Position::new(f64::midpoint(south, north), f64::midpoint(west, east)).ok_or(BoundaryError::NoArea)
}

#[cfg(test)]
mod tests {
    use super::*;
    use tautline_survey::boundary::Part;

    fn boundary(rings: Vec<Vec<Degrees>>) -> Boundary {
        let part = Part { number: 1, role: Role::Stratum(None), shape: Shape::Areas(vec![rings]) };
        Boundary { site: None, parts: vec![part] }
    }

    /// A hundredth of a degree at the equator: 1113.19 m east by 1105.74 m north on WGS 84, 123.1 ha (a degree of
    /// longitude there is a · π/180; the meridian's first degree is 110.574 km: Snyder 1987, table 3).
    #[test]
    fn an_area_by_hand_and_an_open_ring_closed() {
        let ring = vec![[0.0, 0.0], [0.01, 0.0], [0.01, 0.01], [0.01, 0.01], [0.0, 0.01]];
        let site = Site::of(&boundary(vec![ring])).unwrap();
        assert!((site.area() / (1113.19 * 1105.74) - 1.0).abs() < 1e-4, "{}", site.area());
        assert_eq!(site.repaired, [Repair::Closed { part: 1 }, Repair::TakenOnce { part: 1, points: 1 }]);
    }

    #[test]
    fn what_cannot_be_used_is_named() {
        let bow = vec![[0.0, 0.0], [0.01, 0.01], [0.01, 0.0], [0.0, 0.02], [0.0, 0.0]];
        assert!(matches!(
            Site::of(&boundary(vec![bow])),
            Err(BoundaryError::Ring { part: 1, fault: RingFault::MeetsItself { side: 0, other: 2 }, .. })
        ));
        let swapped = vec![[43.0, -116.0], [43.1, -116.0], [43.1, -116.1]];
        let refused = BoundaryError::NotOnEarth { part: 1, found: [43.0, -116.0] };
        assert_eq!(Site::of(&boundary(vec![swapped])), Err(refused));
        assert_eq!(Site::of(&Boundary::default()), Err(BoundaryError::NoArea));
    }
}
