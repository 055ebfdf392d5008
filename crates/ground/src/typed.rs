//! Positions as people type them.

use crate::datum::to_wgs84;
use crate::position::Position;
use crate::utm;
use tautline_survey::boundary::Reference;

/// A position as it was typed: `42.3, -113.7`, or `12 N 278494 4687150` as UTM, on the datum that was asked for.
pub fn read(text: &str, reference: Reference) -> Option<Position> {
    let [latitude, longitude] = if let Some((latitude, longitude)) = text.split_once(',') {
        [latitude.trim().parse().ok()?, longitude.trim().parse().ok()?]
    } else {
        let [zone, half, easting, northing]: [&str; 4] =
            text.split_whitespace().collect::<Vec<_>>().try_into().ok()?;
        let (zone, half) = Reference::read(&format!("WGS84 UTM {zone} {half}"))?.utm?;
        utm::degrees(reference.datum, zone, half, [easting.parse().ok()?, northing.parse().ok()?])?
    };
    Some(to_wgs84(reference.datum, latitude, longitude)?.position)
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
