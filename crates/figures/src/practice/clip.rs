//! Shapes cut off at the edge of a strip.

use crate::svg::Area;

/// The part of a polygon inside an area.
///
/// # Source
/// Sutherland and Hodgman 1974, Communications of the ACM 17:32–42
pub(super) fn polygon(points: &[(f64, f64)], area: Area) -> Vec<(f64, f64)> {
    let sides: [(bool, f64, bool); 4] = [
        (true, area.x, true),
        (true, area.x + area.width, false),
        (false, area.y, true),
        (false, area.y + area.height, false),
    ];
    let mut left = points.to_vec();
    for (across, limit, above) in sides {
        let value = |point: (f64, f64)| if across { point.0 } else { point.1 };
        let inside = |point: (f64, f64)| if above { value(point) >= limit } else { value(point) <= limit };
        let mut kept = Vec::with_capacity(left.len() + 4);
        for (at, &point) in left.iter().enumerate() {
            let before = left[(at + left.len() - 1) % left.len()];
            if inside(point) != inside(before) {
                let share = (limit - value(before)) / (value(point) - value(before));
                kept.push((before.0 + share * (point.0 - before.0), before.1 + share * (point.1 - before.1)));
            }
            if inside(point) {
                kept.push(point);
            }
        }
        left = kept;
    }
    left
}

/// The part of a straight line inside an area.
///
/// # Source
/// Liang and Barsky 1984, ACM Transactions on Graphics 3:1–22
pub(super) fn line([from, to]: [(f64, f64); 2], area: Area) -> Option<[(f64, f64); 2]> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    let sides = [
        (-dx, from.0 - area.x),
        (dx, area.x + area.width - from.0),
        (-dy, from.1 - area.y),
        (dy, area.y + area.height - from.1),
    ];
    for (towards, room) in sides {
        if towards.abs() < 1e-12 {
            if room < 0.0 {
                return None;
            }
        } else if towards < 0.0 {
            enters = enters.max(room / towards);
        } else {
            leaves = leaves.min(room / towards);
        }
    }
    let at = |share: f64| (from.0 + share * dx, from.1 + share * dy);
    (enters < leaves).then(|| [at(enters), at(leaves)])
}

#[cfg(test)]
mod tests {
    use super::*;

    const UNIT: Area = Area { x: 0.0, y: 0.0, width: 1.0, height: 1.0 };

    fn size(points: &[(f64, f64)]) -> f64 {
        let pair = |at: usize| (points[at], points[(at + 1) % points.len()]);
        (0..points.len()).map(pair).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>().abs() / 2.0
    }

    /// Plane geometry: a square of 1 moved by a half each way leaves a quarter; one outside leaves nothing.
    #[test]
    fn what_is_left_is_what_lies_inside() {
        let square = |x: f64, y: f64| [(x, y), (x + 1.0, y), (x + 1.0, y + 1.0), (x, y + 1.0)];
        assert!((size(&polygon(&square(0.5, -0.5), UNIT)) - 0.25).abs() < 1e-12);
        assert!(polygon(&square(2.0, 0.0), UNIT).is_empty());
        assert_eq!(line([(-1.0, 0.5), (2.0, 0.5)], UNIT), Some([(0.0, 0.5), (1.0, 0.5)]));
        assert_eq!(line([(-1.0, 2.0), (2.0, 2.0)], UNIT), None);
    }
}
