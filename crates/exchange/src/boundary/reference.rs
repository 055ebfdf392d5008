//! What a file says of its coordinates: well-known text, or a number of the EPSG register.
//!
//! # Source
//! OGC 01-009, Coordinate Transformation Services, §7 (well-known text); EPSG Geodetic Parameter Dataset: 4326, 4269, 4267
//! for degrees, 326zz, 327zz, 269zz, 267zz for UTM zones

use tautline_survey::boundary::{Datum, Half, Reference};

/// The reference that a number of the register stands for.
#[cfg(feature = "databases")]
pub(super) fn by_number(number: i64) -> Option<Reference> {
    let zone = u8::try_from(number % 100).ok();
    let utm = |datum, half, most| {
        let zone = zone.filter(|zone| (1..=most).contains(zone))?;
        Some(Reference { datum, utm: Some((zone, half)) })
    };
    match number {
        4326 => Some(Reference::default()),
        4269 => Some(Reference { datum: Datum::Nad83, utm: None }),
        4267 => Some(Reference { datum: Datum::Nad27, utm: None }),
        32_600..32_700 => utm(Datum::Wgs84, Half::North, 60),
        32_700..32_800 => utm(Datum::Wgs84, Half::South, 60),
        26_900..27_000 => utm(Datum::Nad83, Half::North, 23),
        26_700..26_800 => utm(Datum::Nad27, Half::North, 22),
        _ => None,
    }
}

/// The reference that well-known text describes.
pub(super) fn by_text(text: &str) -> Option<Reference> {
    let upper: String = text.to_uppercase().chars().filter(|c| !c.is_whitespace()).collect();
    let name = |key: &str| upper.split_once(key)?.1.split('"').nth(1);
    let datum = Datum::read(name("DATUM[")?)?;
    if upper.starts_with("GEOGCS[") {
        return Some(Reference { datum, utm: None });
    }
    if !upper.starts_with("PROJCS[") || name("PROJECTION[") != Some("TRANSVERSE_MERCATOR") {
        return None;
    }
    let parameter = |key: &str| -> Option<f64> {
        let (_, rest) = upper.split_once(&format!("PARAMETER[\"{key}\","))?;
        rest.split(']').next()?.parse().ok()
    };
    // the last unit is that of the grid, the first one of its degrees
    let (_, unit) = upper.rsplit_once("UNIT[")?;
    let metres: f64 = unit.split([',', ']']).nth(1)?.parse().ok()?;
    let is = |key: &str, wanted: f64| parameter(key).is_some_and(|found| (found - wanted).abs() < 1e-9);
    let is_utm = is("SCALE_FACTOR", 0.9996)
        && is("LATITUDE_OF_ORIGIN", 0.0)
        && is("FALSE_EASTING", 500_000.0)
        && (metres - 1.0).abs() < 1e-12;
    let half = if is("FALSE_NORTHING", 0.0) {
        Half::North
    } else if is("FALSE_NORTHING", 10_000_000.0) {
        Half::South
    } else {
        return None;
    };
    let zone = (parameter("CENTRAL_MERIDIAN")? + 183.0) / 6.0;
    let whole = (1..=60).find(|&known| (f64::from(known) - zone).abs() < 1e-9);
    whole.filter(|_| is_utm).map(|zone| Reference { datum, utm: Some((zone, half)) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_the_register() {
        let said = |number| by_number(number).map(|found| found.to_string());
        assert_eq!(said(32_612).as_deref(), Some("WGS84 UTM 12 N"));
        assert_eq!(said(32_755).as_deref(), Some("WGS84 UTM 55 S"));
        assert_eq!(said(26_711).as_deref(), Some("NAD27 UTM 11 N"));
        assert_eq!((said(32_600), said(32_661), said(3857)), (None, None, None));
    }

    /// Descriptions as GDAL writes them; one in feet is none of ours.
    #[test]
    fn well_known_text() {
        let nad27 = "GEOGCS[\"GCS_North_American_1927\",DATUM[\"D_North_American_1927\",SPHEROID[\"Clarke_1866\",6378206.4,\
                     294.9786982]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";
        assert_eq!(by_text(nad27).unwrap().to_string(), "NAD27");
        let grid = |unit: &str| {
            format!(
                "PROJCS[\"x\",{nad27},PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"False_Easting\",500000.0],\
                 PARAMETER[\"False_Northing\",0.0],PARAMETER[\"Central_Meridian\",-111.0],PARAMETER[\"Scale_Factor\",0.9996],\
                 PARAMETER[\"Latitude_Of_Origin\",0.0],{unit}]"
            )
        };
        assert_eq!(by_text(&grid("UNIT[\"Meter\",1.0]")).unwrap().to_string(), "NAD27 UTM 12 N");
        assert_eq!(by_text(&grid("UNIT[\"Foot_US\",0.3048006096012192]")), None);
        assert_eq!(by_text("LOCAL_CS[\"x\"]"), None);
    }
}
