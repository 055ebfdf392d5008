//! A boundary brought to a local plane, repaired where that is safe, and checked.

use crate::datum::{Moved, to_wgs84};
use crate::local::Local;
use crate::mend::{inside_of_odd, put_together};
use crate::position::Position;
use crate::utm::degrees;
use tautline_engine::place::plane::{Point, Segment};
use tautline_engine::place::region::{KeepOut, Polygon, Region, RingFault, Shape as OnPlane, fault};
use tautline_survey::boundary::{Boundary, Datum, Pair, Part, Reference, Role, Shape};

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
    /// Lines that are there already.
    pub there: Vec<There>,
    /// What was repaired.
    pub repaired: Vec<Repair>,
    /// How many metres positions may be off because of the datum they were handed in on.
    pub error: u32,
}

/// A line that is there already.
#[derive(Clone, Debug, PartialEq)]
pub struct There {
    /// Its name.
    pub name: String,
    /// Where it lies on the plane.
    pub segment: Segment,
    /// Its first and its last point as they were handed in.
    pub ends: [Position; 2],
}

/// Something that was repaired, or should be: the part's number or the stratum, and what.
#[derive(Clone, Debug, PartialEq)]
pub enum Repair {
    /// A ring ended elsewhere than it began and was closed.
    Closed {
        /// The part.
        part: usize,
        /// From its end to its beginning.
        metres: f64,
    },
    /// An outline crossed or touched itself and was cut apart there: what lies inside an odd number of times is inside.
    CutApart {
        /// The part.
        part: usize,
        /// Where it did so first.
        at: Position,
        /// The polygons it makes.
        polygons: usize,
    },
    /// Points that lie on one another to the millimetre were taken once.
    TakenOnce {
        /// The part.
        part: usize,
        /// How many were left out.
        points: usize,
    },
    /// Areas of one stratum covered the same ground, which counts once.
    Overlap {
        /// The stratum; none where the site has none.
        stratum: Option<String>,
        /// The ground that was covered again.
        square_metres: f64,
    },
    /// Ground that two strata claim. It stays in both, since nobody here can say whose it is.
    InTwoStrata {
        /// The ground.
        square_metres: f64,
    },
}

/// Less than a square metre covered twice is what rounding to the millimetre leaves along shared sides.
const OVERLAP: u128 = 1_000_000;

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
        found: Pair,
    },
    /// NAD 27 outside of the contiguous United States, where its mean values don't hold.
    OldDatum {
        /// The part.
        part: usize,
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
            error: 0,
        };
        for part in &boundary.parts {
            let number = part.number;
            let polygons = site.polygons(part)?;
            match (&part.role, &part.shape) {
                (Role::Stratum(name), Shape::Areas(_) | Shape::Rings(_)) => {
                    match site.strata.iter_mut().find(|(known, _)| known == name) {
                        Some((_, region)) => region.polygons.extend(polygons),
                        None => site.strata.push((name.clone(), Region { polygons })),
                    }
                }
                (Role::Stratum(_), Shape::Way(_)) => {
                    return Err(BoundaryError::StratumNotAnArea { part: number });
                }
                (&Role::KeepOut { buffer, crossed }, Shape::Areas(_) | Shape::Rings(_)) => {
                    let crossed = crossed.unwrap_or(false);
                    let areas = polygons.into_iter().map(OnPlane::Area);
                    site.keep_out.extend(areas.map(|shape| KeepOut { shape, buffer, crossed }));
                }
                (&Role::KeepOut { buffer, crossed }, Shape::Way(way)) => {
                    let shape = OnPlane::Way(site.on_plane(part, way)?);
                    site.keep_out.push(KeepOut { shape, buffer, crossed: crossed.unwrap_or(true) });
                }
                (Role::Line(name), Shape::Way(way)) if way.len() > 1 => {
                    let place = |pair| moved(number, part.reference, pair).map(|moved| moved.position);
                    let ends = [place(way[0])?, place(way[way.len() - 1])?];
                    let way = site.on_plane(part, way)?;
                    let segment = Segment { from: way[0], to: way[way.len() - 1] };
                    site.there.push(There { name: name.clone(), segment, ends });
                }
                (Role::Line(_), _) => return Err(BoundaryError::LineNotAWay { part: number }),
            }
        }
        if site.strata.iter().all(|(_, region)| region.area() == 0) {
            return Err(BoundaryError::NoArea);
        }
        site.count_once();
        Ok(site)
    }

    /// Ground that areas of one stratum cover again counts once; what two strata claim is said.
    fn count_once(&mut self) {
        for (name, region) in self.strata.iter_mut().filter(|(_, region)| region.polygons.len() > 1) {
            let once = put_together(&region.polygons);
            let again = region.area().saturating_sub(once.iter().map(Polygon::area).sum());
            if again > OVERLAP {
                self.repaired.push(Repair::Overlap { stratum: name.clone(), square_metres: metres(again) });
                region.polygons = once;
            }
        }
        if self.strata.len() > 1 {
            let all: Vec<Polygon> =
                self.strata.iter().flat_map(|(_, region)| region.polygons.iter().cloned()).collect();
            let once: u128 = put_together(&all).iter().map(Polygon::area).sum();
            let twice =
                self.strata.iter().map(|(_, region)| region.area()).sum::<u128>().saturating_sub(once);
            if twice > OVERLAP {
                self.repaired.push(Repair::InTwoStrata { square_metres: metres(twice) });
            }
        }
    }

    /// The pairs of a part on the plane.
    fn on_plane(&mut self, part: &Part, pairs: &[Pair]) -> Result<Vec<Point>, BoundaryError> {
        let onto = |&found: &Pair| {
            let moved = moved(part.number, part.reference, found)?;
            self.error = self.error.max(moved.error);
            Ok(self.local.onto(moved.position))
        };
        pairs.iter().map(onto).collect()
    }

    /// The areas of a part, mended where an outline crosses itself.
    fn polygons(&mut self, part: &Part) -> Result<Vec<Polygon>, BoundaryError> {
        let (areas, nested) = match &part.shape {
            Shape::Way(_) => return Ok(Vec::new()),
            Shape::Areas(areas) => (areas.as_slice(), true),
            Shape::Rings(rings) => (core::slice::from_ref(rings), false),
        };
        let mut polygons = Vec::new();
        for area in areas {
            let mut crossed = None;
            let mut rings = Vec::new();
            for ring in area {
                let points = self.on_plane(part, ring)?;
                let (points, fault) = self.ring(part.number, points);
                if let Some(fault) = fault {
                    let at = self.place(&points, fault);
                    if !matches!(fault, RingFault::MeetsItself { .. }) {
                        return Err(BoundaryError::Ring { part: part.number, fault, at });
                    }
                    crossed = crossed.or(Some((fault, at)));
                }
                rings.push(points);
            }
            match crossed {
                None if nested || rings.len() == 1 => polygons.push(Polygon { rings }),
                None => polygons.extend(inside_of_odd(&rings)),
                Some((fault, at)) => {
                    let mended = inside_of_odd(&rings);
                    let sound =
                        |polygon: &Polygon| polygon.rings.iter().all(|ring| self::fault(ring).is_none());
                    if mended.is_empty() || !mended.iter().all(sound) {
                        return Err(BoundaryError::Ring { part: part.number, fault, at });
                    }
                    self.repaired.push(Repair::CutApart { part: part.number, at, polygons: mended.len() });
                    polygons.extend(mended);
                }
            }
        }
        Ok(polygons)
    }

    /// A ring closed and without what was repeated, and what is wrong with it.
    fn ring(&mut self, part: usize, mut points: Vec<Point>) -> (Vec<Point>, Option<RingFault>) {
        if points.first() == points.last() {
            points.pop();
        } else if let [first, .., last] = points.as_slice() {
            let (first, last) = (self.local.back(*first), self.local.back(*last));
            self.repaired.push(Repair::Closed { part, metres: last.to(first).0 });
        }
        let before = points.len();
        points.dedup();
        if points.len() < before {
            self.repaired.push(Repair::TakenOnce { part, points: before - points.len() });
        }
        let fault = fault(&points);
        (points, fault)
    }

    /// Where a fault is.
    fn place(&self, points: &[Point], fault: RingFault) -> Position {
        let corner = match fault {
            RingFault::MeetsItself { side, .. } => side,
            RingFault::TooFar { at } => at,
            RingFault::TooFewPoints | RingFault::NoArea => 0,
        };
        points.get(corner).map_or(self.middle, |&point| self.local.back(point))
    }

    /// Area of all strata in square metres.
    pub fn area(&self) -> f64 {
        self.strata.iter().map(|(_, region)| square_metres(region)).sum()
    }
}

/// Area of a region in square metres.
pub fn square_metres(region: &Region) -> f64 {
    metres(region.area())
}

fn metres(square_millimetres: u128) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "an area for people and for weights")]
    let millimetres = square_millimetres as f64;
    millimetres / 1e6
}

/// A pair of any reference as a position on WGS 84.
fn moved(part: usize, reference: Reference, found: Pair) -> Result<Moved, BoundaryError> {
    let not_on_earth = BoundaryError::NotOnEarth { part, found };
    let [latitude, longitude] = match reference.utm {
        None => [found[1], found[0]],
        Some((zone, half)) => degrees(reference.datum, zone, half, found).ok_or(not_on_earth)?,
    };
    let on_earth = Position::new(latitude, longitude).ok_or(not_on_earth)?;
    to_wgs84(reference.datum, on_earth.latitude(), on_earth.longitude()).ok_or(match reference.datum {
        Datum::Nad27 => BoundaryError::OldDatum { part },
        Datum::Wgs84 | Datum::Nad83 => not_on_earth,
    })
}

/// The middle of the frame of all areas.
fn middle(boundary: &Boundary) -> Result<Position, BoundaryError> {
    let mut frame: Option<[f64; 4]> = None;
    for part in boundary.parts.iter().filter(|part| matches!(part.role, Role::Stratum(_))) {
        let pairs: Vec<Pair> = match &part.shape {
            Shape::Areas(areas) => areas.iter().flatten().flatten().copied().collect(),
            Shape::Rings(rings) => rings.iter().flatten().copied().collect(),
            Shape::Way(_) => continue,
        };
        for found in pairs {
            let position = moved(part.number, part.reference, found)?.position;
            let (x, y) = (position.longitude(), position.latitude());
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
    use tautline_survey::boundary::Half;

    fn of(reference: Reference, shape: Shape) -> Boundary {
        let part = Part { number: 1, reference, role: Role::Stratum(None), shape };
        Boundary { parts: vec![part], ..Boundary::default() }
    }

    fn boundary(rings: Vec<Vec<Pair>>) -> Boundary {
        of(Reference::default(), Shape::Areas(vec![rings]))
    }

    /// A hundredth of a degree at the equator: 1113.19 m east by 1105.74 m north on WGS 84, 123.1 ha (a degree of
    /// longitude there is a · π/180; the meridian's first degree is 110.574 km: Snyder 1987, table 3).
    #[test]
    fn an_area_by_hand_and_an_open_ring_closed() {
        let ring = vec![[0.0, 0.0], [0.01, 0.0], [0.01, 0.01], [0.01, 0.01], [0.0, 0.01]];
        let site = Site::of(&boundary(vec![ring])).unwrap();
        assert!((site.area() / (1113.19 * 1105.74) - 1.0).abs() < 1e-4, "{}", site.area());
        // the side that was missing is a hundredth of a degree of the meridian
        let [Repair::Closed { part: 1, metres }, Repair::TakenOnce { part: 1, points: 1 }] =
            site.repaired[..]
        else {
            panic!("{:?}", site.repaired)
        };
        assert!((metres - 1105.74).abs() < 0.01);
    }

    /// Two squares of a hundredth of a degree at the equator (123.09 ha each, as above) that share half of each: one and a half
    /// squares, whether the second has its own file or not; a hole of one that the other covers is ground.
    #[test]
    fn ground_that_is_covered_again_counts_once() {
        let square =
            |west: f64| vec![[west, 0.0], [west + 0.01, 0.0], [west + 0.01, 0.01], [west, 0.01], [west, 0.0]];
        let hole = vec![[0.006, 0.004], [0.008, 0.004], [0.008, 0.006], [0.006, 0.006], [0.006, 0.004]];
        let one = 1113.19 * 1105.74;
        let both = |rings: Vec<Vec<Pair>>| {
            Site::of(&of(Reference::default(), Shape::Areas(vec![rings, vec![square(0.005)]]))).unwrap()
        };
        for site in [both(vec![square(0.0)]), both(vec![square(0.0), hole])] {
            assert!((site.area() / (1.5 * one) - 1.0).abs() < 1e-4, "{}", site.area());
            let [Repair::Overlap { stratum: None, .. }] = site.repaired[..] else {
                panic!("{:?}", site.repaired)
            };
        }
        let beside =
            Site::of(&of(Reference::default(), Shape::Areas(vec![vec![square(0.0)], vec![square(0.01)]])));
        let beside = beside.unwrap();
        assert!(
            beside.repaired.is_empty() && beside.strata[0].1.polygons.len() == 2,
            "a shared side is none"
        );
        let part = |number, name: &str, west: f64| Part {
            number,
            reference: Reference::default(),
            role: Role::Stratum(Some(name.to_owned())),
            shape: Shape::Areas(vec![vec![square(west)]]),
        };
        let parts = vec![part(1, "flat", 0.0), part(2, "wash", 0.0075)];
        let two = Site::of(&Boundary { parts, ..Boundary::default() }).unwrap();
        let [Repair::InTwoStrata { square_metres }] = two.repaired[..] else { panic!("{:?}", two.repaired) };
        assert!((square_metres / (0.25 * one) - 1.0).abs() < 1e-4);
    }

    #[test]
    fn what_cannot_be_used_is_named() {
        let swapped = vec![[43.0, -116.0], [43.1, -116.0], [43.1, -116.1]];
        let refused = BoundaryError::NotOnEarth { part: 1, found: [43.0, -116.0] };
        assert_eq!(Site::of(&boundary(vec![swapped])), Err(refused));
        assert_eq!(Site::of(&Boundary::default()), Err(BoundaryError::NoArea));
    }

    /// Half of a bow tie of 1113.19 by 2 · 1105.74 m at the equator: each side crosses in the middle.
    #[test]
    fn a_bow_tie_is_two_triangles_and_rings_may_wind_either_way() {
        let bow = vec![[0.0, 0.0], [0.01, 0.02], [0.01, 0.0], [0.0, 0.02], [0.0, 0.0]];
        let site = Site::of(&boundary(vec![bow])).unwrap();
        assert!((site.area() / (1113.19 * 2.0 * 1105.74 / 2.0) - 1.0).abs() < 1e-4);
        assert!(matches!(site.repaired[..], [Repair::CutApart { part: 1, polygons: 2, .. }]));
        let square =
            |low: f64, high: f64| vec![[low, low], [high, low], [high, high], [low, high], [low, low]];
        let holed = Site::of(&boundary(vec![square(0.0, 0.01), square(0.004, 0.006)])).unwrap().area();
        let turned = |mut ring: Vec<Pair>| {
            ring.reverse();
            ring
        };
        for rings in [
            vec![square(0.004, 0.006), square(0.0, 0.01)],
            vec![turned(square(0.0, 0.01)), square(0.004, 0.006)],
        ] {
            let site = Site::of(&of(Reference::default(), Shape::Rings(rings))).unwrap();
            assert!((site.area() / holed - 1.0).abs() < 1e-9 && site.repaired.is_empty());
        }
    }

    /// A square of 1 km in the grid covers 1/0.9996² square kilometres of ground on the zone's middle.
    #[test]
    fn utm_and_old_datums() {
        let square = [[500_000.0, 4.7e6], [501_000.0, 4.7e6], [501_000.0, 4.701e6], [500_000.0, 4.701e6]];
        let rings = vec![square.to_vec()];
        let site = |datum| {
            let reference = Reference { datum, utm: Some((12, Half::North)) };
            Site::of(&of(reference, Shape::Rings(rings.clone())))
        };
        let new = site(Datum::Wgs84).unwrap();
        assert!((new.area() / (1e6 / (0.9996 * 0.9996)) - 1.0).abs() < 1e-6, "{}", new.area());
        let old = site(Datum::Nad27).unwrap();
        assert_eq!((new.error, old.error), (0, 10));
        // in the grid an old place lies some 200 m from the new one of the same numbers, for the ellipsoids' sake
        let (metres, _) = new.middle.to(old.middle);
        assert!((150.0..250.0).contains(&metres), "{metres}");
        let alaska = Reference { datum: Datum::Nad27, utm: None };
        let far = vec![vec![[-150.0, 64.0], [-149.9, 64.0], [-149.9, 64.1]]];
        assert_eq!(Site::of(&of(alaska, Shape::Rings(far))), Err(BoundaryError::OldDatum { part: 1 }));
    }
}
