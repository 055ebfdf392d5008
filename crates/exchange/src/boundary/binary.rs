//! Shapes in well-known binary.
//!
//! # Source
//! OGC 06-103r4, Simple Feature Access, part 1, §8.2

use super::bytes::Bytes;
use tautline_survey::boundary::Shape;

/// The shapes of a geometry in well-known binary; none where it is of a kind that isn't read.
pub(super) fn shapes(bytes: &[u8]) -> Option<Vec<Shape>> {
    let mut shapes = Vec::new();
    geometry(&mut Bytes::of(bytes, true), 0, &mut shapes)?;
    Some(shapes)
}

/// Collections of collections are nobody's boundary.
const DEEPEST: usize = 4;

fn geometry(bytes: &mut Bytes, depth: usize, shapes: &mut Vec<Shape>) -> Option<()> {
    bytes.little_first = bytes.take(1)?[0] == 1;
    let kind = bytes.whole()?;
    // heights and measures: by thousands, or by the high bits of an older habit
    let (high, low) = (kind >> 29, kind & 0x1fff_ffff);
    let more = match low / 1000 {
        0 => (high >> 2 & 1) + (high >> 1 & 1),
        1 | 2 => 1,
        3 => 2,
        _ => return None,
    };
    let more = more as usize;
    if high & 1 == 1 {
        bytes.whole()?;
    }
    let each = 16 + 8 * more;
    match low % 1000 {
        1 => {
            let place = bytes.pairs(1, more)?;
            // an empty point has no numbers
            if place[0][0].is_finite() {
                shapes.push(Shape::Way(place));
            }
        }
        2 => {
            let count = bytes.count(each)?;
            let way = bytes.pairs(count, more)?;
            if !way.is_empty() {
                shapes.push(Shape::Way(way));
            }
        }
        3 => {
            let mut rings = Vec::new();
            for _ in 0..bytes.count(4)? {
                let count = bytes.count(each)?;
                rings.push(bytes.pairs(count, more)?);
            }
            if !rings.is_empty() {
                shapes.push(Shape::Areas(vec![rings]));
            }
        }
        4..=7 if depth < DEEPEST => {
            for _ in 0..bytes.count(5)? {
                geometry(bytes, depth + 1, shapes)?;
            }
        }
        _ => return None,
    }
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard's own kinds, by hand: a point with its height, high byte first; a count that no bytes follow.
    #[test]
    fn bytes_by_hand() {
        let point = [
            &[0, 0, 0, 3, 0xe9][..], // 1001, a point with a height
            &1.5_f64.to_be_bytes(),
            &(-2.0_f64).to_be_bytes(),
            &7.0_f64.to_be_bytes(),
        ]
        .concat();
        assert_eq!(shapes(&point), Some(vec![Shape::Way(vec![[1.5, -2.0]])]));
        assert_eq!(shapes(&point[..20]), None);
        let endless = [1, 2, 0, 0, 0, 0xff, 0xff, 0xff, 0xff];
        assert_eq!(shapes(&endless), None);
        let nested: Vec<u8> = [1, 7, 0, 0, 0, 1, 0, 0, 0].repeat(50);
        assert_eq!(shapes(&nested), None);
    }
}
