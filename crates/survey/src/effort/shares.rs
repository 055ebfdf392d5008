//! Lines of each stratum, by area and by area and spread.

use serde::Serialize;
use tautline_engine::effort::allot::{Allotment, Stratum, allot, error_of, for_half_width};

/// A stratum that is planned.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// Its name.
    pub name: String,
    /// Its area, spread, cost and least lines.
    pub stratum: Stratum,
}

/// Lines of each stratum.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SharesOutput {
    /// The strata, in the order given.
    pub names: Vec<String>,
    /// By area, and by area and spread.
    pub shares: Vec<ShareOutput>,
}

/// One way to share lines out.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ShareOutput {
    /// `proportional` or `neyman`.
    pub how: &'static str,
    /// Lines of each stratum.
    pub lines: Vec<usize>,
    /// Standard error of the site's cover with them.
    pub error: f64,
}

/// Shares out `lines`, or as many as the half-width takes.
///
/// # Range
/// `None` where there are fewer lines than the strata's least together, or a stratum has no area, spread or cost
pub fn shares(
    strata: &[Planned],
    lines: Option<usize>,
    half_width: Option<f64>,
    confidence: f64,
) -> Option<SharesOutput> {
    let planned: Vec<Stratum> = strata.iter().map(|one| one.stratum).collect();
    let shared = |how| match (lines, half_width) {
        (Some(lines), _) => allot(&planned, lines, how),
        (None, Some(wanted)) => for_half_width(&planned, how, confidence, wanted),
        (None, None) => None,
    };
    let share = |name, how| {
        let lines = shared(how)?;
        let (error, _) = error_of(&planned, &lines);
        Some(ShareOutput { how: name, lines, error })
    };
    Some(SharesOutput {
        names: strata.iter().map(|one| one.name.clone()).collect(),
        shares: vec![share("proportional", Allotment::Proportional)?, share("neyman", Allotment::Neyman)?],
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 24 of 64 cities in two strata: 6 and 18 by size, 12 and 12 by size and spread (Cochran 1977, §5.9, from memory).
    #[test]
    fn cochrans_cities() {
        let city = |name: &str, area, variance: f64| Planned {
            name: name.to_owned(),
            stratum: Stratum {
                area,
                deviation: tautline_engine::num::math::sqrt(variance),
                cost: 1.0,
                least: 2,
            },
        };
        let cities = [city("large", 16.0, 53_843.0), city("small", 48.0, 5_581.0)];
        let found = shares(&cities, Some(24), None, 0.9).unwrap();
        assert_eq!(found.shares[0].lines, [6, 18]);
        assert_eq!(found.shares[1].lines, [12, 12]);
        assert!(found.shares[1].error < found.shares[0].error);
        assert_eq!(shares(&cities, Some(3), None, 0.9), None);
    }
}
