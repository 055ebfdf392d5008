//! Where names stand on a map: each at the place of several where it covers least of what was drawn and named before.

use crate::svg::{Anchor, Area, Lettering};

/// A point of the picture.
pub(super) type Point = (f64, f64);

/// What a name should not lie on, and how bad that is.
const OUTSIDE: f64 = 1000.0;
const ON_NAME: f64 = 40.0;
const ON_MARK: f64 = 30.0;
pub(super) const ON_TAPE: f64 = 12.0;
pub(super) const ON_BORDER: f64 = 6.0;
pub(super) const ON_WAY: f64 = 2.0;

/// The map with what stands on it so far.
pub(super) struct Sheet {
    frame: Area,
    taken: Vec<(Area, f64)>,
    strokes: Vec<([Point; 2], f64)>,
}

/// A name at its place.
pub(super) struct Placed {
    pub(super) at: Point,
    pub(super) anchor: Anchor,
}

/// How far a name stands from its mark, and from other names.
const AIR: f64 = 5.0;
const BETWEEN: f64 = 1.5;

impl Sheet {
    pub(super) fn new(frame: Area) -> Self {
        Self { frame, taken: Vec::new(), strokes: Vec::new() }
    }

    /// A way that was drawn, from point to point.
    pub(super) fn way(&mut self, points: &[Point], weight: f64) {
        let pieces = points.windows(2).filter_map(|pair| Some([*pair.first()?, *pair.last()?]));
        self.strokes.extend(pieces.map(|piece| (piece, weight)));
    }

    /// A way that ends where it began.
    pub(super) fn ring(&mut self, points: &[Point], weight: f64) {
        self.way(points, weight);
        self.strokes.extend(points.last().zip(points.first()).map(|(&a, &b)| ([a, b], weight)));
    }

    /// A mark that no name should lie on.
    pub(super) fn mark(&mut self, area: Area) {
        self.taken.push((area, ON_MARK));
    }

    /// The name of a line, about its mark; of equal places the one away from the tape.
    pub(super) fn beside(&mut self, mark: Point, away: Point, lettering: Lettering, name: &str) -> Placed {
        let (wide, high) = (lettering.width(name), lettering.size * 0.72);
        let mut best: Option<(f64, Placed, Area)> = None;
        for far in [1.0, 2.4, 4.0] {
            for (east, north) in AROUND {
                let air = AIR * far;
                let anchor = match east {
                    0 => Anchor::Middle,
                    1 => Anchor::Start,
                    _ => Anchor::End,
                };
                let x = mark.0 + f64::from(east) * air;
                let y = mark.1 + high / 2.0 - f64::from(north) * (air + high / 2.0);
                let left = match anchor {
                    Anchor::Start => x,
                    Anchor::Middle => x - wide / 2.0,
                    Anchor::End => x - wide,
                };
                let area = Area { x: left, y: y - high, width: wide, height: high };
                // to the side of the mark that the tape leaves free
                let toward = f64::from(east) * away.0 - f64::from(north) * away.1;
                let cost = self.covered(area) + 2.0 * (far - 1.0) + if toward > 0.0 { 0.0 } else { 0.5 };
                if best.as_ref().is_none_or(|(least, ..)| cost < *least) {
                    best = Some((cost, Placed { at: (x, y), anchor }, area));
                }
            }
        }
        let (placed, area) = best.map_or_else(
            || (Placed { at: mark, anchor: Anchor::Middle }, self.frame),
            |(_, placed, area)| (placed, area),
        );
        self.taken.push((area, ON_NAME));
        placed
    }

    /// The name of ground, inside of its rings where there is room, else above their highest corner; rather high than low.
    pub(super) fn within(&mut self, rings: &[Vec<Point>], lettering: Lettering, name: &str) -> Option<Point> {
        let corners = || rings.iter().flatten();
        let least = |pick: fn(&Point) -> f64| corners().map(pick).min_by(f64::total_cmp);
        let most = |pick: fn(&Point) -> f64| corners().map(pick).max_by(f64::total_cmp);
        let (west, east) = (least(|one| one.0)?, most(|one| one.0)?);
        let (top, bottom) = (least(|one| one.1)?, most(|one| one.1)?);
        let (wide, high) = (lettering.width(name), lettering.size * 0.8);
        let area = |x: f64, y: f64| Area { x: x - wide / 2.0, y: y - high, width: wide, height: high };
        let mut best: Option<(f64, Point)> = None;
        for down in 0..STEPS {
            for across in 0..STEPS {
                let x = west + (east - west) * (f64::from(across) + 0.5) / f64::from(STEPS);
                let y = top + high + (bottom - top) * (f64::from(down) + 0.5) / f64::from(STEPS);
                let area = area(x, y);
                let ends = [area.x, area.x + area.width];
                let inside =
                    ends.iter().all(|&x| [area.y, area.y + high].iter().all(|&y| holds(rings, (x, y))));
                if !inside {
                    continue;
                }
                let cost = self.covered(area) + 0.1 * f64::from(down);
                if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                    best = Some((cost, (x, y)));
                }
            }
        }
        let above = || {
            let x = corners().min_by(|a, b| a.1.total_cmp(&b.1)).map_or(west, |corner| corner.0);
            let half = wide / 2.0;
            let (left, right) = (self.frame.x + half, self.frame.x + self.frame.width - half);
            (x.clamp(left, right.max(left)), top - AIR)
        };
        let at = best.map_or_else(above, |(_, at)| at);
        self.taken.push((area(at.0, at.1), ON_NAME));
        Some(at)
    }

    fn covered(&self, area: Area) -> f64 {
        let inside = area.x >= self.frame.x
            && area.x + area.width <= self.frame.x + self.frame.width
            && area.y >= self.frame.y
            && area.y + area.height <= self.frame.y + self.frame.height;
        let wider = Area {
            x: area.x - BETWEEN,
            y: area.y - BETWEEN,
            width: area.width + 2.0 * BETWEEN,
            height: area.height + 2.0 * BETWEEN,
        };
        let taken: f64 =
            self.taken.iter().filter(|(other, _)| meet(wider, *other)).map(|(_, weight)| weight).sum();
        let strokes: f64 =
            self.strokes.iter().filter(|(piece, _)| crosses(*piece, wider)).map(|(_, weight)| weight).sum();
        taken + strokes + if inside { 0.0 } else { OUTSIDE }
    }
}

/// East and north of a mark, in the order in which places are taken.
const AROUND: [(i32, i32); 8] = [(-1, 1), (1, 1), (1, 0), (-1, 0), (-1, -1), (1, -1), (0, 1), (0, -1)];

/// So many places are tried for the name of ground, each way.
const STEPS: u32 = 14;

fn meet(one: Area, other: Area) -> bool {
    one.x < other.x + other.width
        && other.x < one.x + one.width
        && one.y < other.y + other.height
        && other.y < one.y + one.height
}

/// Whether a piece of a way enters an area: it is cut off at each side in turn (Liang and Barsky 1984).
fn crosses([from, to]: [Point; 2], area: Area) -> bool {
    let (east, south) = (to.0 - from.0, to.1 - from.1);
    let sides = [
        (-east, from.0 - area.x),
        (east, area.x + area.width - from.0),
        (-south, from.1 - area.y),
        (south, area.y + area.height - from.1),
    ];
    let (mut first, mut last) = (0.0_f64, 1.0_f64);
    for (toward, room) in sides {
        if toward == 0.0 {
            if room < 0.0 {
                return false;
            }
        } else if toward < 0.0 {
            first = first.max(room / toward);
        } else {
            last = last.min(room / toward);
        }
    }
    first <= last
}

/// Whether a point lies inside of the rings an odd number of times.
fn holds(rings: &[Vec<Point>], (x, y): Point) -> bool {
    let mut inside = false;
    for ring in rings {
        let Some(&last) = ring.last() else { continue };
        let mut before = last;
        for &corner in ring {
            if (corner.1 > y) != (before.1 > y)
                && x < (before.0 - corner.0) * (y - corner.1) / (before.1 - corner.1) + corner.0
            {
                inside = !inside;
            }
            before = corner;
        }
    }
    inside
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: Area = Area { x: 0.0, y: 0.0, width: 300.0, height: 200.0 };

    /// By hand: a stroke through the middle, one beside, one that ends before, one that only touches the corner's outside.
    #[test]
    fn a_stroke_crosses_an_area_or_does_not() {
        let area = Area { x: 10.0, y: 10.0, width: 20.0, height: 10.0 };
        assert!(crosses([(0.0, 15.0), (40.0, 15.0)], area));
        assert!(crosses([(15.0, 12.0), (16.0, 13.0)], area));
        assert!(!crosses([(0.0, 25.0), (40.0, 25.0)], area));
        assert!(!crosses([(0.0, 15.0), (9.0, 15.0)], area));
        assert!(!crosses([(0.0, 18.0), (14.0, 25.0)], area));
    }

    #[test]
    fn names_of_near_marks_stand_apart_and_inside_the_frame() {
        let mut sheet = Sheet::new(FRAME);
        let marks = [(3.0, 3.0), (12.0, 5.0), (9.0, 14.0), (297.0, 197.0)];
        for (x, y) in marks {
            sheet.mark(Area { x: x - 3.0, y: y - 3.0, width: 6.0, height: 6.0 });
        }
        for mark in marks {
            sheet.beside(mark, (-1.0, 0.0), Lettering::NAME, "12");
        }
        let names: Vec<Area> =
            sheet.taken.iter().filter(|(_, weight)| *weight == ON_NAME).map(|(area, _)| *area).collect();
        assert_eq!(names.len(), 4);
        for (at, one) in names.iter().enumerate() {
            assert!(one.x >= 0.0 && one.y >= 0.0, "{one:?}");
            assert!(one.x + one.width <= 300.0 && one.y + one.height <= 200.0, "{one:?}");
            assert!(names[at + 1..].iter().all(|other| !meet(*one, *other)), "{one:?}");
        }
    }

    #[test]
    fn the_name_of_ground_stands_inside_of_it() {
        let square = vec![(100.0, 50.0), (200.0, 50.0), (200.0, 150.0), (100.0, 150.0)];
        let hole = vec![(110.0, 60.0), (190.0, 60.0), (190.0, 110.0), (110.0, 110.0)];
        let mut sheet = Sheet::new(FRAME);
        let (x, y) = sheet.within(&[square, hole], Lettering::FIGURE, "flat").unwrap();
        assert!((100.0..200.0).contains(&x) && (115.0..150.0).contains(&y), "{x} {y}");
        // too small for its name: above
        let small = vec![(100.0, 50.0), (104.0, 50.0), (104.0, 54.0)];
        let (_, y) = sheet.within(&[small], Lettering::FIGURE, "a long name").unwrap();
        assert!(y < 50.0);
    }
}
