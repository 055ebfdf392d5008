//! Corners as people type them, one a row.
//!
//! An empty row parts two outlines; a row that holds a datum's name alone says on which datum the corners below it are. In ground they go
//! round it. Elsewhere they are a way, as a walk that somebody recorded is, and an area where they end at the corner at which they began.

use super::feature::Feature;
use super::{Asked, Purpose};
use crate::shown::short;
use tautline_survey::boundary::{Datum, Pair, Reference, Shape, typed};
use tautline_survey::message::Message;

/// Whether any row of a text is a corner.
pub(super) fn is_typed(text: &str) -> bool {
    text.lines().any(|row| typed(row, Datum::default()).is_some())
}

/// The outlines of a text.
pub(super) fn features(text: &str, asked: &Asked) -> Result<Vec<Feature>, Message> {
    let mut said = None;
    let mut features: Vec<Feature> = Vec::new();
    let mut corners: Vec<Pair> = Vec::new();
    let mut reference = Reference::default();
    let mut close = |corners: &mut Vec<Pair>, reference, reference_asked| {
        if !corners.is_empty() {
            let shapes = vec![shape(core::mem::take(corners), asked.purpose)];
            let number = features.len() + 1;
            features.push(Feature { number, shapes, reference, reference_asked, ..Feature::default() });
        }
    };
    for (row, line) in (1_usize..).zip(text.lines().map(str::trim)) {
        let about = |code| Message::new(code).with("row", row).with("found", short(line));
        if line.is_empty() {
            close(&mut corners, reference, said.is_none());
        } else if let Some(datum) = Datum::read(line) {
            close(&mut corners, reference, said.is_none());
            said = Some(datum);
        } else {
            let datum = said.or(asked.reference.map(|asked| asked.datum));
            let (corner, own) =
                typed(line, datum.unwrap_or_default()).ok_or_else(|| about("boundary-typed-row"))?;
            if datum.is_none() {
                return Err(Message::new("boundary-typed-no-datum"));
            }
            if corners.is_empty() {
                reference = own;
            } else if own != reference {
                return Err(about("boundary-typed-grid"));
            }
            corners.push(corner);
        }
    }
    close(&mut corners, reference, said.is_none());
    Ok(features)
}

/// What corners make: nobody types the first one of a ground again at its end.
fn shape(mut corners: Vec<Pair>, purpose: Purpose) -> Shape {
    let is_ring = corners.len() > 3 && corners.first() == corners.last();
    if purpose == Purpose::Ground && !is_ring {
        corners.extend(corners.first().copied());
    }
    if is_ring || purpose == Purpose::Ground { Shape::Rings(vec![corners]) } else { Shape::Way(corners) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(purpose: Purpose) -> Asked {
        Asked { reference: Some(Reference::default()), ..Asked::of(purpose) }
    }

    fn code(text: &str, asked: &Asked) -> &'static str {
        features(text, asked).map_or_else(|refused| refused.code, |_| "read")
    }

    const SQUARE: &str = "42.30, -113.70\n42.30, -113.68\n42.31, -113.68\n42.31, -113.70\n";

    #[test]
    fn ground_is_closed_and_each_part_has_its_datum() {
        let text =
            format!("{SQUARE}\n\nNAD 27\n12 N 278494 4687150\n12 N 279494 4687150\n12 N 279494 4688150");
        let found = features(&text, &asked(Purpose::Ground)).unwrap();
        let said: Vec<_> = found.iter().map(|one| (one.reference.to_string(), one.reference_asked)).collect();
        assert_eq!(said, [("WGS84".to_owned(), true), ("NAD27 UTM 12 N".to_owned(), false)]);
        let Shape::Rings(rings) = &found[0].shapes[0] else { panic!("a ring") };
        assert_eq!((rings[0].len(), rings[0][0], rings[0][4]), (5, [-113.70, 42.30], [-113.70, 42.30]));
    }

    #[test]
    fn what_is_kept_out_of_is_a_way_unless_it_comes_back() {
        let keep_out = asked(Purpose::KeepOut { buffer: 0, crossed: None });
        let shape = |text: &str| features(text, &keep_out).unwrap().remove(0).shapes.remove(0);
        assert!(matches!(shape(SQUARE), Shape::Way(way) if way.len() == 4));
        assert!(
            matches!(shape(&format!("{SQUARE}42.30, -113.70")), Shape::Rings(rings) if rings[0].len() == 5)
        );
    }

    #[test]
    fn what_is_not_understood_is_named_with_its_row() {
        let ground = asked(Purpose::Ground);
        let refused = features(&format!("{SQUARE}gate\n"), &ground).unwrap_err();
        assert_eq!(refused, Message::new("boundary-typed-row").with("row", 5_usize).with("found", "gate"));
        assert_eq!(code(&format!("{SQUARE}12 N 278494 4687150"), &ground), "boundary-typed-grid");
        assert_eq!(code(SQUARE, &Asked::of(Purpose::Ground)), "boundary-typed-no-datum");
        assert_eq!(code(&format!("WGS84\n{SQUARE}"), &Asked::of(Purpose::Ground)), "read");
        assert!(is_typed("corners of the flat\n42.30, -113.70") && !is_typed("site,line\n1,2,3"));
    }
}
