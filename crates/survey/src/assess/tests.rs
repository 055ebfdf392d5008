use super::*;
use crate::goal;
use crate::measure::Measure;
use crate::plan::{PlannedLine, Stratum};
use crate::visit::{Extent, Intercept, Outcome, State, Visit};
use tautline_engine::confidence::NoBound;
use tautline_engine::effort::MoreUnits;
use tautline_engine::estimate::{NoError, SamplingError};
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_engine::verdict::Verdict;

fn cm(text: &str) -> Measure {
    Measure::read(text, Some(Bare::Unit(Unit::Centimetre)), DecimalMark::Point).unwrap()
}

/// Lines of so many metres with one intercept of so many centimetres from zero.
pub(crate) fn site(lines: &[(&str, &str, u32)]) -> Input {
    let mut input = Input::default();
    let protocol = input.add_protocol(crate::protocol::Protocol::default());
    for (number, (metres, stratum, intercept)) in lines.iter().enumerate() {
        let line = (number + 1).to_string();
        input.plan.push(PlannedLine {
            site: "Invented".into(),
            line: line.clone(),
            length: Some(cm(&format!("{metres} m"))),
            stratum: (!stratum.is_empty()).then(|| (*stratum).to_owned()),
            plot: None,
            judgement: None,
            slope: None,
            permission: None,
        });
        let extent = Extent::Edges { start: cm("0"), stop: cm(&intercept.to_string()) };
        let intercept_row = Intercept {
            id: 1,
            species: "AAAA".into(),
            extent,
            state: State::Live,
            plant: None,
            height: None,
            width: None,
            note: String::new(),
            place: None,
        };
        input.visits.push(Visit {
            site: "Invented".into(),
            line,
            date: None,
            reader: String::new(),
            recorder: String::new(),
            pass: String::new(),
            protocol: protocol.clone(),
            length: None,
            outcome: Outcome::Read,
            intercepts: if *intercept > 0 { vec![intercept_row] } else { Vec::new() },
            set_aside: 0,
            conditions: Vec::new(),
            place: None,
        });
    }
    input
}

fn asked(text: &str) -> Question {
    let goal = goal::read(text, DecimalMark::Point).unwrap();
    Question { goals: vec![SiteGoal { site: None, goal }], ..Question::default() }
}

fn only(input: &Input, question: &Question) -> Assessment {
    let mut all = assess(input, question);
    assert_eq!(all.len(), 1);
    all.remove(0)
}

/// By hand: covers 10, 20, 30, 40 %: mean 25 %, s = 12.909944 points, SE = 6.454972; t(0.95, 3) = 2.353363, so
/// 25 ± 15.190897; one-sided 90 %: t(0.90, 3) = 1.637744, lower bound 25 − 10.571593.
#[test]
fn a_mean_of_four_lines_by_hand() {
    let input = site(&[("10", "", 100), ("10", "", 200), ("10", "", 300), ("10", "", 400)]);
    let question = Question { method: Some(Method::StudentT), ..asked("at least 14 %") };
    let assessment = only(&input, &question);
    let figure = assessment.figure(&Subject::Canopy).unwrap();
    let SamplingError::Known { se, df } = figure.estimate.error else { panic!("known") };
    assert!((figure.estimate.value - 0.25).abs() < 1e-12 && (se - 0.064_549_72).abs() < 1e-8);
    assert!((df - 3.0).abs() < 1e-12);
    let interval = figure.interval.unwrap();
    assert!((interval.low - 0.098_091_0).abs() < 1e-6 && (interval.high - 0.401_909_0).abs() < 1e-6);
    let judgement = &assessment.judgements[0];
    assert_eq!(judgement.verdict, Verdict::Met);
    assert!((judgement.bounds.unwrap().lower - 0.144_284_1).abs() < 1e-6);
}

/// Unequal lines: 1 m of 10 m and 8 m of 20 m are 9 of 30, not the mean of 10 and 40 %.
#[test]
fn unequal_lines_are_a_ratio_of_sums() {
    let assessment = only(&site(&[("10", "", 100), ("20", "", 800)]), &Question::default());
    assert!((assessment.figures[0].estimate.value - 0.3).abs() < 1e-12);
}

#[test]
fn strata_weigh_by_area() {
    let mut input =
        site(&[("10", "flat", 100), ("10", "flat", 200), ("10", "wash", 500), ("10", "wash", 600)]);
    let unweighted = only(&input, &Question::default());
    assert!((unweighted.figures[0].estimate.value - 0.35).abs() < 1e-12);
    assert!(unweighted.findings.iter().any(|finding| finding.message.code == "strata-without-area"));
    for (name, area) in [("flat", 90), ("wash", 10)] {
        input.strata.push(Stratum { site: "Invented".into(), name: name.into(), area });
    }
    let weighted = only(&input, &Question::default());
    assert!((weighted.figures[0].estimate.value - (0.9 * 0.15 + 0.1 * 0.55)).abs() < 1e-12);
}

/// Lines that repeat their plot: the plot is the unit, so four lines in two plots leave one degree of freedom.
#[test]
fn the_plot_is_the_unit_where_lines_are_bunched() {
    let mut input = site(&[("10", "", 100), ("10", "", 100), ("10", "", 300), ("10", "", 300)]);
    for (line, plot) in input.plan.iter_mut().zip(["a", "a", "b", "b"]) {
        line.plot = Some(plot.into());
    }
    let figure = &only(&input, &Question::default()).figures[0];
    assert_eq!((figure.estimate.lines, figure.estimate.units), (4, 2));
    let effective = figure.parts[0].effective.unwrap();
    assert!((effective.effective - 2.0).abs() < 1e-9);
    let by_plot = assess(&input, &Question { claim: Claim::Plot, ..Question::default() });
    assert_eq!(by_plot.iter().map(|a| a.plot.clone().unwrap()).collect::<Vec<_>>(), ["a", "b"]);
}

#[test]
fn one_line_has_a_figure_and_no_interval() {
    let assessment = only(&site(&[("10", "", 100)]), &asked("at least 5 %"));
    assert_eq!(assessment.figures[0].interval, Err(NoBound::NoError(NoError::OneLine)));
    assert_eq!(assessment.judgements[0].verdict, Verdict::NotYetShown);
}

/// Ten empty lines at 90 %: at most 1 − 0.1^(1/10) = 20.57 % of lines meet shrubs; with a stated 20 % cover where
/// present, cover is at most 4.11 %.
#[test]
fn empty_lines_bound_cover_only_with_a_stated_cover_where_present() {
    let input = site(&[("10", "", 0); 10]);
    let question = asked("at least 5 %");
    assert_eq!(only(&input, &question).judgements[0].verdict, Verdict::NotYetShown);
    let stated = Question { cover_where_present: Some(0.2), ..question };
    let judgement = only(&input, &stated).judgements.remove(0);
    assert_eq!(judgement.verdict, Verdict::NotMet);
    assert!((judgement.bounds.unwrap().upper - 0.041_134_35).abs() < 1e-7);
}

#[test]
fn a_goal_at_the_estimate_itself_can_never_be_settled() {
    let input = site(&[("10", "", 100), ("10", "", 200), ("10", "", 300)]);
    let judgement = only(&input, &asked("at least 20 %")).judgements.remove(0);
    assert_eq!(judgement.verdict, Verdict::NotYetShown);
    assert_eq!(judgement.more, Some(MoreUnits::NoPracticalNumber));
}

#[test]
fn a_planned_line_without_a_record_is_named_and_is_no_zero() {
    let mut input = site(&[("10", "", 100), ("10", "", 200)]);
    input.visits.pop();
    crate::check::check(&mut input);
    assert_eq!(input.findings.last().unwrap().message.code, "line-planned-without-record");
    let assessment = only(&input, &Question::default());
    assert!((assessment.figures[0].estimate.value - 0.1).abs() < 1e-12);
}

/// Two protocols with limits of 2 and 5 cm meet on 5 cm; another meaning of cover keeps readings apart.
#[test]
fn unlike_protocols_meet_on_the_coarsest_ground_or_stay_apart() {
    let mut input = site(&[("10", "", 100), ("10", "", 200)]);
    let limit = |text: &str| crate::protocol::Protocol {
        gap: crate::protocol::Gap { limit: Some(cm(text)), ..Default::default() },
        ..Default::default()
    };
    input.visits[0].protocol = input.add_protocol(limit("2"));
    input.visits[1].protocol = input.add_protocol(limit("5"));
    let met = only(&input, &Question::default());
    assert!(met.lines.iter().all(|line| line.rule.gap.limit == cm("5").length()));
    assert!(met.findings.iter().any(|finding| finding.message.code == "brought-to-common-ground"));
    let foliar =
        crate::protocol::Protocol { cover: Some(crate::protocol::CoverMeaning::Foliar), ..limit("5") };
    input.visits[1].protocol = input.add_protocol(foliar);
    let apart = only(&input, &Question::default());
    assert!(apart.lines.is_empty() && apart.figures.is_empty());
    assert!(apart.findings.iter().any(|finding| finding.message.code == "protocols-apart"));
}

/// Heights of 40 and 60 cm on one line and 80 cm on the other: line means 0.5 and 0.8 m, mean 0.65 m.
#[test]
fn heights_are_a_mean_of_line_means() {
    let mut input = site(&[("10", "", 100), ("10", "", 200)]);
    let tall = |visit: &mut Visit, heights: &[&str]| {
        for height in heights {
            let mut intercept = visit.intercepts[0].clone();
            intercept.height = Some(cm(height));
            visit.intercepts.push(intercept);
        }
    };
    tall(&mut input.visits[0], &["40", "60"]);
    tall(&mut input.visits[1], &["80"]);
    let assessment = only(&input, &asked("height of AAAA: at most 2 m"));
    let figure = assessment.figures.iter().find(|figure| figure.attribute == Attribute::Height).unwrap();
    assert!((figure.estimate.value - 0.65).abs() < 1e-12);
    assert_eq!(assessment.judgements[0].verdict, Verdict::Met);
}

/// Lengths of two species, 30 and 20 cm of 10 m on each of three lines: union between 3 and 5 %; a goal between
/// the two ends is not yet shown whatever the spread.
#[test]
fn no_verdict_leans_on_one_end_of_a_figure_known_between_two() {
    let mut input = site(&[("10", "", 100), ("10", "", 110), ("10", "", 120)]);
    for (visit, more) in input.visits.iter_mut().zip([0, 1, 2]) {
        let row = |species: &str, length: i32| Intercept {
            species: species.into(),
            extent: Extent::Length(cm(&length.to_string())),
            ..visit.intercepts[0].clone()
        };
        visit.intercepts = vec![row("AAAA", 30 + more), row("BBBB", 20 + more)];
    }
    let assessment = only(&input, &asked("at least 4 %"));
    let [low, high] = assessment.figures[0].ends();
    assert!((low.value - 0.031).abs() < 1e-12 && (high.value - 0.052).abs() < 1e-12);
    assert_eq!(assessment.judgements[0].verdict, Verdict::NotYetShown);
    assert_eq!(only(&input, &asked("at least 2 %")).judgements[0].verdict, Verdict::Met);
}

/// A line of which a row could not be read speaks for no site: its cover isn't whole.
#[test]
fn a_line_with_rows_set_aside_is_left_out_and_named() {
    let mut input = site(&[("10", "", 100), ("10", "", 200), ("10", "", 900)]);
    input.visits[2].set_aside = 1;
    let assessment = only(&input, &Question::default());
    assert!((assessment.figures[0].estimate.value - 0.15).abs() < 1e-12);
    let codes: Vec<&str> = assessment.findings.iter().map(|finding| finding.message.code).collect();
    assert_eq!(codes, ["rows-set-aside", "line-left-out", "few-lines-or-intercepts"]);
}

/// Two lines of 10 m: 10 cm pieces with a gap of 4 cm on one and of 9 cm on the other. Covers 2 and 2 % as written;
/// 2.4 % on the first from just above 4 cm, 2.9 % on the second from just above 9 cm.
#[test]
fn the_curve_of_a_site_steps_where_a_line_does() {
    let mut input = site(&[("10", "", 10), ("10", "", 10)]);
    for (visit, start) in input.visits.iter_mut().zip(["14", "19"]) {
        let mut second = visit.intercepts[0].clone();
        second.extent =
            Extent::Edges { start: cm(start), stop: cm(&(start.parse::<u32>().unwrap() + 10).to_string()) };
        visit.intercepts.push(second);
    }
    let assessment = only(&input, &Question::default());
    let steps = curve(&input, &assessment, cm("20").length()).unwrap();
    let covers: Vec<f64> = steps.iter().map(|step| (step.cover * 1e6).round() / 1e4).collect();
    assert_eq!(covers, [2.0, 2.2, 2.65]);
    let above = |text: &str| cm(text).length() + tautline_engine::length::Length::from_nanometres(1);
    assert_eq!(steps.iter().skip(1).map(|step| step.limit).collect::<Vec<_>>(), [above("4"), above("9")]);
}

/// Plants 50 and 100 cm wide on 10 m of one line, 200 cm on 10 m of the other: (2 + 1)/10 and 0.5/10 plants per
/// square metre, mean 0.175, standard error 0.125 (Σ 1/W over the length of all lines).
#[test]
fn plants_per_area_are_estimated_over_lines() {
    let mut input = site(&[("10", "", 100), ("10", "", 200)]);
    let second = input.visits[0].intercepts[0].clone();
    input.visits[0].intercepts.push(second);
    for (visit, widths) in input.visits.iter_mut().zip([["50", "100"], ["200", ""]]) {
        for (id, (intercept, width)) in visit.intercepts.iter_mut().zip(widths).enumerate() {
            intercept.id = u32::try_from(id).unwrap();
            intercept.width = Some(cm(width));
        }
    }
    let question = Question { by: By::Species, ..Question::default() };
    let density = |input: &Input| {
        only(input, &question).figures.into_iter().find(|figure| figure.attribute == Attribute::Density)
    };
    let figure = density(&input).unwrap();
    let SamplingError::Known { se, df } = figure.estimate.error else { unreachable!("two lines") };
    assert!((figure.estimate.value - 0.175).abs() < 1e-12 && (se - 0.125).abs() < 1e-12);
    assert!((df - 1.0).abs() < 1e-12 && figure.interval.unwrap().low > 0.0);
    input.visits[1].intercepts[0].width = None;
    assert!(density(&input).is_none());
    assert!(only(&input, &question).findings.iter().any(|finding| finding.message.code == "widths-missing"));
}

/// A goal's own confidence decides its verdict, the question's the interval.
#[test]
fn a_goal_may_set_its_own_confidence() {
    let input = site(&[("10", "", 100), ("10", "", 120), ("10", "", 140)]);
    let mut question = asked("at least 9 %");
    question.goals[0].goal.confidence_per_mille = Some(990);
    let sure = only(&input, &question);
    assert!((sure.judgements[0].confidence - 0.99).abs() < 1e-12 && (sure.confidence - 0.9).abs() < 1e-12);
    let usual = only(&input, &asked("at least 9 %"));
    let lower = |assessment: &Assessment| assessment.judgements[0].bounds.unwrap().lower;
    assert!(lower(&sure) < lower(&usual));
    assert_eq!([&sure, &usual].map(|one| one.judgements[0].verdict), [Verdict::NotYetShown, Verdict::Met]);
}

/// One plant a metre wide on 10 m of ground that rises three in four is one plant on 8 m: 0.125 a square metre. The
/// cover stays what it is.
#[test]
fn on_the_level_plants_per_area_grow_and_cover_stays() {
    let mut input = site(&[("10", "", 100), ("10", "", 100)]);
    for visit in &mut input.visits {
        visit.intercepts[0].width = Some(cm("100"));
    }
    for planned in &mut input.plan {
        planned.slope = Some(crate::plan::Slope::Grade(crate::goal::Percent(750_000)));
    }
    let figures = |on_the_level| {
        let mut question = Question { by: By::Species, ..Question::default() };
        question.choice.on_the_level = on_the_level;
        let assessment = only(&input, &question);
        let density = assessment.figures.iter().find(|figure| figure.attribute == Attribute::Density);
        (assessment.figures[0].estimate.value, density.unwrap().estimate.value)
    };
    let ((cover, along), (same, level)) = (figures(false), figures(true));
    assert!((along - 0.1).abs() < 1e-12 && (level - 0.125).abs() < 1e-12 && (cover - same).abs() < 1e-15);
}

/// 100 and 300 cm of two species on 10 m: composition 25 and 75 % by cover.
#[test]
fn composition_is_by_cover() {
    let mut input = site(&[("10", "", 100), ("10", "", 100)]);
    for visit in &mut input.visits {
        let mut other = visit.intercepts[0].clone();
        other.species = "BBBB".into();
        other.extent = Extent::Edges { start: cm("500"), stop: cm("800") };
        visit.intercepts.push(other);
    }
    let assessment = only(&input, &Question { by: By::Species, ..Question::default() });
    let shares: Vec<f64> =
        assessment.figures.iter().filter_map(|figure| assessment.composition(figure)).collect();
    assert!((shares[0] - 0.25).abs() < 1e-12 && (shares[1] - 0.75).abs() < 1e-12 && shares.len() == 2);
}

/// By hand: 1 m, 3 m and 5 m on lines of 10 m are 30 %; without the third line 20 %.
#[test]
fn a_line_that_is_not_wanted_does_not_speak() {
    let input = site(&[("10", "", 100), ("10", "", 300), ("10", "", 500)]);
    let cover = |question: &Question| {
        let assessment = assess(&input, question).remove(0);
        let said = assessment.findings.iter().filter(|one| one.message.code == "line-not-wanted").count();
        let value = assessment.figure(&Subject::Canopy).map(|figure| figure.estimate.value);
        (value.map(|value| (value * 1e9).round() / 1e9), assessment.lines.len(), said)
    };
    assert_eq!(cover(&Question::default()), (Some(0.3), 3, 0));
    let without = Question { without: BTreeSet::from(["3".to_owned()]), ..Question::default() };
    assert_eq!(cover(&without), (Some(0.2), 2, 1));
}
