//! Laws of estimates, intervals and verdicts, each stated so that it is true, tried on random samples.

use proptest::prelude::*;
use tautline_engine::confidence::bootstrap::{Group, Resampled};
use tautline_engine::confidence::{Bounds, Method, NoBound, Tail, ends, zeros};
use tautline_engine::effort::power::{Groups, Sides, TTest};
use tautline_engine::effort::{SoFar, chance_to_settle};
use tautline_engine::estimate::{
    Estimate, Line, SamplingError, Stratum, effective_lines, mean, plots, ratio, strata,
};
use tautline_engine::num::quantile::{
    beta_cdf, beta_quantile, chi_square_cdf, chi_square_quantile, t_cdf, t_quantile,
};
use tautline_engine::seed::Seed;
use tautline_engine::verdict::{Goal, Verdict, decide};

/// Lines in whole centimetres of intercept, 10 to 60 m long.
fn line() -> impl Strategy<Value = Line> {
    (10_u32..=60, 0.0_f64..=1.0).prop_map(|(metres, share)| {
        Line::new((share * f64::from(metres) * 100.0).round() / 100.0, f64::from(metres))
    })
}

fn lines(fewest: usize) -> impl Strategy<Value = Vec<Line>> {
    prop::collection::vec(line(), fewest..25)
}

fn se(estimate: &Estimate) -> f64 {
    match estimate.error {
        SamplingError::Known { se, .. } => se,
        SamplingError::Unknown(reason) => panic!("no error: {reason:?}"),
    }
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()) + 1e-12
}

proptest! {
    #[test]
    fn the_order_of_lines_does_not_matter(sample in lines(2), turn in 0_usize..25) {
        let mut turned = sample.clone();
        turned.rotate_left(turn % sample.len());
        turned.reverse();
        let (one, other) = (ratio(&sample, None).unwrap(), ratio(&turned, None).unwrap());
        prop_assert!(close(one.value, other.value) && close(se(&one), se(&other)));
    }

    #[test]
    fn the_unit_of_length_does_not_matter(sample in lines(2)) {
        let feet: Vec<Line> =
            sample.iter().map(|line| Line::new(line.intercept / 0.3048, line.length / 0.3048)).collect();
        let (one, other) = (ratio(&sample, None).unwrap(), ratio(&feet, None).unwrap());
        prop_assert!(close(one.value, other.value) && close(se(&one), se(&other)));
    }

    #[test]
    fn cover_lies_between_the_barest_and_the_fullest_line(sample in lines(1)) {
        let value = ratio(&sample, None).unwrap().value;
        let shares = sample.iter().map(|line| line.share());
        let (least, most) = (shares.clone().fold(1.0, f64::min), shares.fold(0.0, f64::max));
        prop_assert!(least - 1e-12 <= value && value <= most + 1e-12);
    }

    #[test]
    fn with_lines_of_one_length_mean_and_ratio_are_one(sample in lines(2)) {
        let alike: Vec<Line> = sample.iter().map(|line| Line::new(line.share() * 30.0, 30.0)).collect();
        let (one, other) = (mean(&alike, None).unwrap(), ratio(&alike, None).unwrap());
        prop_assert!(close(one.value, other.value) && close(se(&one), se(&other)));
    }

    #[test]
    fn one_stratum_and_plots_of_one_line_change_nothing(sample in lines(2), area in 0.1_f64..1e6) {
        let plain = ratio(&sample, None).unwrap();
        let whole = strata(&[Stratum { weight: area, estimate: plain.clone() }]).unwrap();
        prop_assert!(close(whole.value, plain.value) && close(se(&whole), se(&plain)));
        let single: Vec<[Line; 1]> = sample.iter().map(|line| [*line]).collect();
        let bunched = plots(&single, None).unwrap();
        prop_assert!(close(bunched.value, plain.value) && close(se(&bunched), se(&plain)));
    }

    #[test]
    fn only_the_shares_of_area_matter(a in lines(2), b in lines(2), area in 0.1_f64..10.0, times in 0.01_f64..100.0) {
        let site = |times: f64| {
            strata(&[
                Stratum { weight: area * times, estimate: ratio(&a, None).unwrap() },
                Stratum { weight: times, estimate: ratio(&b, None).unwrap() },
            ])
            .unwrap()
        };
        let (one, other) = (site(1.0), site(times));
        prop_assert!(close(one.value, other.value) && close(se(&one), se(&other)));
    }

    /// Satterthwaite's degrees of freedom lie between the smallest of the parts and their sum.
    #[test]
    fn degrees_of_freedom_of_strata_are_bounded(a in lines(2), b in lines(2), area in 0.1_f64..10.0) {
        let parts = [(area, &a), (1.0, &b)]
            .map(|(weight, lines)| Stratum { weight, estimate: ratio(lines, None).unwrap() });
        let SamplingError::Known { df, .. } = strata(&parts).unwrap().error else { panic!("both have an error") };
        let of = |part: &Stratum| match part.estimate.error {
            SamplingError::Known { df, .. } => df,
            SamplingError::Unknown(_) => panic!("a part of two lines or more has an error"),
        };
        let (one, other) = (of(&parts[0]), of(&parts[1]));
        prop_assert!(one.min(other) - 1e-9 <= df && df <= one + other + 1e-9, "{one} {other} {df}");
    }

    #[test]
    fn a_finite_population_only_lessens_the_error(sample in lines(2), more in 0_u64..1000) {
        let endless = ratio(&sample, None).unwrap();
        let finite = ratio(&sample, Some(sample.len() as u64 + more)).unwrap();
        prop_assert!(se(&finite) <= se(&endless));
    }

    #[test]
    fn bunched_lines_are_worth_one_a_plot_to_one_each(bunches in prop::collection::vec(prop::collection::vec(line(), 2..5), 2..6)) {
        if let Some(worth) = effective_lines(&bunches).unwrap() {
            let lines = small(worth.lines);
            prop_assert!(worth.effective <= lines + 1e-9);
            prop_assert!(worth.effective >= lines / worth.lines_per_plot - 1e-9);
        }
    }

    /// Reckoning with how the error itself wavers never narrows an interval.
    #[test]
    fn effective_degrees_of_freedom_only_widen(sample in lines(2), confidence in 0.6_f64..0.99) {
        let cover = ratio(&sample, None).unwrap();
        for (plain, wary) in [(Method::LogT, Method::LogEffective), (Method::LogitT, Method::LogitEffective)] {
            let at = |method| ends(&cover, method, Tail::of_interval(confidence));
            let (Ok(plain), Ok(wary)) = (at(plain), at(wary)) else { continue };
            prop_assert!(wary.0 <= plain.0 && plain.1 <= wary.1, "{plain:?} {wary:?}");
        }
    }

    /// Degrees of freedom of a ratio lie between one and those of as many lines of one length.
    #[test]
    fn unlike_lines_count_for_fewer(sample in lines(2)) {
        let SamplingError::Known { df, .. } = ratio(&sample, None).unwrap().error else { panic!("it has an error") };
        prop_assert!((1.0..=small(sample.len() - 1).max(1.0) + 1e-9).contains(&df), "{df}");
    }

    #[test]
    fn more_confidence_is_wider_and_logit_stays_inside(sample in lines(2), low in 0.5_f64..0.98, step in 0.001_f64..0.01) {
        let cover = ratio(&sample, None).unwrap();
        for method in [Method::StudentT, Method::LogitT, Method::LogitEffective] {
            let at = |confidence: f64| ends(&cover, method, Tail::of_interval(confidence));
            let (Ok(narrow), Ok(wide)) = (at(low), at(low + step)) else { continue };
            prop_assert!(wide.0 <= narrow.0 && narrow.0 <= cover.value);
            prop_assert!(cover.value <= narrow.1 && narrow.1 <= wide.1);
            if method != Method::StudentT {
                prop_assert!(0.0 <= wide.0 && wide.1 <= 1.0);
            }
        }
    }

    /// A one-sided bound at c is one end of the two-sided interval at 2c − 1.
    #[test]
    fn a_bound_is_not_the_end_of_the_same_interval(sample in lines(3), confidence in 0.6_f64..0.99) {
        let cover = ratio(&sample, None).unwrap();
        let bound = ends(&cover, Method::StudentT, Tail::of_bound(confidence));
        let (Ok(bound), Ok(wider), Ok(same)) = (
            bound,
            ends(&cover, Method::StudentT, Tail::of_interval(confidence)),
            ends(&cover, Method::StudentT, Tail::of_interval(2.0 * confidence - 1.0)),
        ) else { return Ok(()) };
        prop_assert!(wider.0 < bound.0 && bound.1 < wider.1);
        prop_assert!(close(bound.0, same.0) && close(bound.1, same.1));
    }

    #[test]
    fn bootstrap_limits_stay_within_the_lines(sample in lines(3), number in 0_u64..1000) {
        let shares = sample.iter().map(|line| line.share());
        let (least, most) = (shares.clone().fold(1.0, f64::min), shares.fold(0.0, f64::max));
        let mut random = Seed::from_purpose("law", &[number]).stream();
        match Resampled::draw(&[Group { weight: 1.0, units: sample }], 300, &mut random) {
            Ok(drawn) => {
                let (low, high) = drawn.ends(Tail::of_interval(0.9));
                prop_assert!(least - 1e-12 <= low && low <= high && high <= most + 1e-12);
            }
            Err(reason) => prop_assert!(matches!(reason, NoBound::NoSpread | NoBound::NothingFound)),
        }
    }

    /// Turning cover into bare ground turns the goal round and keeps the verdict.
    #[test]
    fn verdicts_are_symmetric(a in 0.0_f64..1.0, b in 0.0_f64..1.0, goal in 0.0_f64..1.0, other in 0.0_f64..1.0) {
        // eighths, so that 1 − x is exact
        let [a, b, goal, other] = [a, b, goal, other].map(|x| (x * 8.0).round() / 8.0);
        let bounds = Bounds { lower: a.min(b), upper: a.max(b) };
        let bare = Bounds { lower: 1.0 - bounds.upper, upper: 1.0 - bounds.lower };
        prop_assert_eq!(decide(Goal::AtLeast(goal), bounds), decide(Goal::AtMost(1.0 - goal), bare));
        let (low, high) = (goal.min(other), goal.max(other));
        prop_assert_eq!(decide(Goal::Between(low, high), bounds), decide(Goal::Between(1.0 - high, 1.0 - low), bare));
        if decide(Goal::Between(low, high), bounds) == Verdict::Met {
            prop_assert_eq!(decide(Goal::AtLeast(low), bounds), Verdict::Met);
            prop_assert_eq!(decide(Goal::AtMost(high), bounds), Verdict::Met);
        }
    }

    #[test]
    fn a_narrower_bar_never_turns_a_verdict_round(a in 0.0_f64..1.0, b in 0.0_f64..1.0, shrink in 0.0_f64..0.5, goal in 0.0_f64..1.0) {
        let wide = Bounds { lower: a.min(b), upper: a.max(b) };
        let width = wide.upper - wide.lower;
        let narrow = Bounds { lower: wide.lower + shrink * width, upper: wide.upper - shrink * width };
        let (before, after) = (decide(Goal::AtLeast(goal), wide), decide(Goal::AtLeast(goal), narrow));
        prop_assert!(before == after || before == Verdict::NotYetShown, "{before:?} {after:?}");
    }

    /// With a figure beyond a one-sided goal, every line more makes the answer likelier.
    #[test]
    fn more_lines_settle_it_more_surely(value in 0.05_f64..0.6, goal in 0.05_f64..0.6, se in 0.005_f64..0.2, units in 3_usize..40) {
        let so_far = SoFar { value, se, df: small(units - 1), units, method: Method::LogitEffective };
        let chance = |units| chance_to_settle(&so_far, Goal::AtLeast(goal), 0.9, units);
        prop_assert!(chance(units + 1) >= chance(units) - 1e-9);
    }

    #[test]
    fn power_grows_with_lines_and_difference(d in 0.1_f64..2.0, n in 3.0_f64..60.0, alpha in 0.01_f64..0.3) {
        for groups in [Groups::One, Groups::Two] {
            for sides in [Sides::One, Sides::Two] {
                let test = TTest { groups, sides, alpha };
                prop_assert!(test.power(d, n + 1.0) >= test.power(d, n) - 1e-9);
                prop_assert!(test.power(d + 0.1, n) >= test.power(d, n) - 1e-9);
                prop_assert!((test.power(0.0, n) - alpha).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn quantiles_undo_probabilities(p in 0.001_f64..0.999, df in 1.0_f64..500.0, a in 0.5_f64..40.0, b in 0.5_f64..40.0) {
        prop_assert!((t_cdf(t_quantile(p, df), df) - p).abs() < 1e-12);
        prop_assert!((chi_square_cdf(chi_square_quantile(p, df), df) - p).abs() < 1e-12);
        // where the density is steep, neighbouring numbers lie further apart in probability
        prop_assert!((beta_cdf(beta_quantile(p, a, b), a, b) - p).abs() < 1e-11);
    }

    #[test]
    fn more_empty_lines_bound_more_tightly(lines in 1_usize..200, confidence in 0.5_f64..0.99) {
        let bound = |lines| zeros::share_of_lines_at_most(lines, confidence);
        prop_assert!(bound(lines + 1) < bound(lines) && bound(lines) < 1.0);
        prop_assert!(zeros::cover_at_most(lines, confidence, 0.3) < bound(lines));
    }
}

fn small(n: usize) -> f64 {
    f64::from(u32::try_from(n).expect("a small count"))
}
