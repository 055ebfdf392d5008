//! Positions as people type them.

use crate::datum::pair_on_wgs84;
use crate::position::Position;
use crate::utm;
use tautline_survey::boundary::{Datum, Pair, Reference, typed};

/// A position as it was typed: `42.3, -113.7`, or `12 N 278494 4687150` as UTM, on the datum that was asked for.
pub fn read(text: &str, reference: Reference) -> Option<Position> {
    let (pair, reference) = typed(text, reference.datum)?;
    let ([longitude, latitude], _) = pair_on_wgs84(reference, pair)?;
    Position::new(latitude, longitude)
}

/// The same in degrees on its own datum, longitude first: not brought to WGS 84 yet.
///
/// # Example
/// ```
/// use tautline_ground::typed::degrees;
/// use tautline_survey::boundary::Datum;
/// assert_eq!(degrees("42.3, -113.7", Datum::Nad27), Some([-113.7, 42.3]));
/// assert_eq!(degrees("-113.7, 42.3", Datum::Nad27), None);
/// ```
pub fn degrees(text: &str, datum: Datum) -> Option<Pair> {
    let ([across, up], reference) = typed(text, datum)?;
    let [latitude, longitude] = match reference.utm {
        None => [up, across],
        Some((zone, half)) => utm::degrees(datum, zone, half, [across, up])?,
    };
    Position::new(latitude, longitude).map(|_| [longitude, latitude])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 42.3051° N, 113.6874° W is 278 494.484 m E, 4 687 149.854 m N in zone 12 (PROJ 9.5.1).
    #[test]
    fn degrees_and_utm_are_one_place() {
        let wgs84 = Reference::default();
        let place = read("42.3051, -113.6874", wgs84).unwrap();
        let (metres, _) = place.to(read("12 N 278494.484 4687149.854", wgs84).unwrap());
        assert!(metres < 0.002, "{metres}");
        for wrong in
            ["", "42.3", "12 X 278494 4687150", "61 N 278494 4687150", "12 N 42.3 -113.7", "-113.7, 42.3"]
        {
            assert_eq!(read(wrong, wgs84), None, "{wrong}");
        }
    }
}
