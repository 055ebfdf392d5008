//! The way from where one stands to a stake.

use crate::position::Position;
use tautline_survey::stake::Stake;

/// How far, which way, and how far off that may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// Metres to the stake.
    pub metres: f64,
    /// The true bearing on which one sets out, degrees from north.
    pub bearing: f64,
    /// How far off both positions together may be, in metres.
    pub off: f64,
}

/// The way to a stake; nothing where one of the two is no place on earth.
///
/// # Source
/// Karney 2013, as in [`crate::position`]; errors of the two positions are independent and add up as squares
///
/// # Example
/// Invented: a stake 100 m north-east of here.
/// ```
/// use tautline_ground::find::way;
/// use tautline_ground::position::Position;
/// use tautline_survey::stake::Stake;
/// let there = Position::new(39.25, -113.5).unwrap().on(45.0, 100.0);
/// let here = Stake::at(39.25, -113.5, 3.0).unwrap();
/// let way = way(here, Stake::at(there.latitude(), there.longitude(), 4.0).unwrap()).unwrap();
/// assert!((way.metres - 100.0).abs() < 0.001 && (way.bearing - 45.0).abs() < 0.001);
/// assert_eq!((way.off, way.towards(), way.is_here()), (5.0, "way-north-east", false));
/// ```
pub fn way(here: Stake, stake: Stake) -> Option<Way> {
    let place = |(latitude, longitude): (f64, f64)| Position::new(latitude, longitude);
    let (metres, bearing) = place(here.degrees())?.to(place(stake.degrees())?);
    let squares = [here, stake].map(|one| f64::from(one.within()).powi(2));
    Some(Way { metres, bearing, off: (squares[0] + squares[1]).sqrt() })
}

impl Way {
    /// The stake is nearer than the positions can tell: look for it by eye.
    pub fn is_here(&self) -> bool {
        self.metres <= self.off
    }

    /// The code of one of eight ways.
    pub fn towards(&self) -> &'static str {
        const WAYS: [&str; 8] = [
            "way-north",
            "way-north-east",
            "way-east",
            "way-south-east",
            "way-south",
            "way-south-west",
            "way-west",
            "way-north-west",
        ];
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 360 degrees")]
        let eighth = ((self.bearing + 22.5) / 45.0) as usize;
        WAYS[eighth % WAYS.len()]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_way_has_its_eighth_of_the_circle() {
        let towards = |bearing| Way { metres: 1.0, bearing, off: 0.0 }.towards();
        let told = [0.0, 22.4, 22.6, 90.0, 180.0, 269.0, 337.4, 337.6, 359.9].map(towards);
        let by_hand =
            ["north", "north", "north-east", "east", "south", "west", "north-west", "north", "north"];
        assert_eq!(told.map(|way| way.trim_start_matches("way-")), by_hand);
    }

    #[test]
    fn a_stake_within_the_error_is_here() {
        let here = Stake::at(39.25, -113.5, 8.0).unwrap();
        assert!(way(here, here).unwrap().is_here());
    }
}
