//! How far a compass points off true north, and how that changes by the year.

use crate::position::Position;
use tautline_survey::date::Date;
use tautline_survey::layout::DeclinationOutput;
use world_magnetic_model::time::{Date as Day, Month};
use world_magnetic_model::uom::si::angle::degree;
use world_magnetic_model::uom::si::f32::{Angle, Length};
use world_magnetic_model::uom::si::length::meter;
use world_magnetic_model::{GeomagneticField, WarningZone};

/// Declination at a place and date.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Declination {
    /// Degrees from true to magnetic north, to the east above zero.
    pub degrees: f64,
    /// Its change in a year.
    pub yearly: f64,
    /// One standard deviation of the model's error.
    pub uncertainty: f64,
    /// The field along the ground is weak here: a compass is not to be trusted.
    pub weak: bool,
}

/// Why there is no declination.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoDeclination {
    /// The date lies outside the years of the model.
    OutsideTheModel,
    /// The height is far above or below the ground.
    HeightOutsideTheModel,
}

impl Declination {
    /// The bearing a compass shows for a true bearing, both in degrees from 0 to 360.
    ///
    /// # Example
    /// With a declination of 12° east the true bearing 5° is 353° on a compass.
    /// ```
    /// use tautline_ground::magnetic::Declination;
    /// let east = Declination { degrees: 12.0, yearly: 0.0, uncertainty: 0.4, weak: false };
    /// assert_eq!(east.compass(5.0), 353.0);
    /// ```
    pub fn compass(&self, true_bearing: f64) -> f64 {
        (true_bearing - self.degrees).rem_euclid(360.0)
    }

    /// The same to a tenth of a degree, from 0 up to but not including 360.
    pub(crate) fn to_a_tenth(self, true_bearing: f64) -> f64 {
        (self.compass(true_bearing) * 10.0).round() / 10.0 % 360.0
    }

    /// As a layout carries it.
    pub(crate) const fn output(self, date: Date) -> DeclinationOutput {
        DeclinationOutput {
            date,
            degrees: self.degrees,
            yearly: self.yearly,
            uncertainty: self.uncertainty,
            weak_field: self.weak,
        }
    }
}

/// The declination at a position and height in metres above the ellipsoid.
///
/// # Errors
/// [`NoDeclination`]; a date outside the model is refused, never carried on
/// # Source
/// World Magnetic Model 2020 and 2025 (NOAA/NCEI and BGS)
pub fn declination(position: Position, height: f64, date: Date) -> Result<Declination, NoDeclination> {
    let at = |years: i32| -> Result<GeomagneticField, NoDeclination> {
        let year = i32::from(date.year()) + years;
        let month = Month::try_from(date.month()).map_err(|_| NoDeclination::OutsideTheModel)?;
        // the 29th of February has no day in the next year
        let day = if years == 0 { date.day() } else { date.day().min(28) };
        let day = Day::from_calendar_date(year, month, day).map_err(|_| NoDeclination::OutsideTheModel)?;
        #[expect(
            clippy::cast_possible_truncation,
            reason = "the model works in single precision, far beyond its own error"
        )]
        let [height, latitude, longitude] =
            [height, position.latitude(), position.longitude()].map(|number| number as f32);
        GeomagneticField::new(
            Length::new::<meter>(height),
            Angle::new::<degree>(latitude),
            Angle::new::<degree>(longitude),
            day,
        )
        .map_err(|error| match error {
            world_magnetic_model::Error::HeightOutsideOfValidityRange { .. } => {
                NoDeclination::HeightOutsideTheModel
            }
            _ => NoDeclination::OutsideTheModel,
        })
    };
    let degrees = |field: &GeomagneticField| f64::from(field.declination().get::<degree>());
    let now = at(0)?;
    // in the model's last year the change is that of the year before
    let yearly = match at(1) {
        Ok(next) => degrees(&next) - degrees(&now),
        Err(_) => degrees(&now) - degrees(&at(-1)?),
    };
    Ok(Declination {
        degrees: degrees(&now),
        yearly,
        uncertainty: f64::from(now.declination_uncertainty().get::<degree>()),
        weak: matches!(now.declination_warning(), Some(WarningZone::BlackoutZone | WarningZone::CautionZone)),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// World Magnetic Model 2025, published test values (NOAA/NCEI and BGS): decimal year, height in km, latitude,
    /// longitude, declination, yearly change. Rows of whole years, whose first day is meant.
    #[test]
    fn published_test_values() {
        let rows = [
            (2025, 54.0, 82.0, 87.0, 54.89, 0.884_574),
            (2025, 51.0, -33.0, 109.0, -5.49, 0.069_861),
            (2025, 3.0, -50.0, -103.0, 27.96, -0.032_104),
            (2025, 66.0, 14.0, 143.0, -0.19, -0.055_086),
            (2026, 74.0, -57.0, 3.0, -22.51, -0.037_845),
            (2026, 69.0, 23.0, 63.0, 1.17, 0.013_234),
        ];
        for (year, kilometres, latitude, longitude, degrees, yearly) in rows {
            let position = Position::new(latitude, longitude).unwrap();
            let found = declination(position, kilometres * 1000.0, Date::new(year, 1, 1).unwrap()).unwrap();
            assert!((found.degrees - degrees).abs() < 0.006, "{found:?} {degrees}");
            // the published change is that of the instant, ours that of the year to come, which differ near the poles
            assert!((found.yearly - yearly).abs() < 0.015, "{found:?} {yearly}");
        }
    }

    #[test]
    fn outside_the_model_is_refused_and_a_weak_field_said() {
        let place = Position::new(42.0, -113.0).unwrap();
        let on = |year| declination(place, 1500.0, Date::new(year, 6, 1).unwrap());
        assert_eq!(on(2031), Err(NoDeclination::OutsideTheModel));
        assert_eq!(on(2015), Err(NoDeclination::OutsideTheModel));
        assert!(on(2029).is_ok_and(|found| !found.weak && found.yearly.abs() < 0.3));
        let near_the_pole = Position::new(85.0, 150.0).unwrap();
        assert!(
            declination(near_the_pole, 0.0, Date::new(2026, 1, 1).unwrap()).is_ok_and(|found| found.weak)
        );
        assert_eq!(
            declination(place, 5e6, Date::new(2026, 1, 1).unwrap()),
            Err(NoDeclination::HeightOutsideTheModel)
        );
    }
}
