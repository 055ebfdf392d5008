//! The figures on the page are those of the assessment, and those a person gets by hand.

use crate::reader::{column, says, table, tree};
use crate::sites::{asked, four_lines, mixed, page};
use tautline_engine::estimate::SamplingError;
use tautline_engine::num::decimal::percent;
use tautline_survey::assess::{Assessment, By, Figure, Question, assess, kinds};
use tautline_survey::goal::Subject;
use tautline_words::Words;

fn per_cent(share: f64) -> String {
    format!("{} %", percent(share, 1))
}

/// The interval, or the reason why there is none.
fn interval_words(figure: &Figure) -> String {
    match figure.interval {
        Ok(interval) => format!("{} to {}", per_cent(interval.low), per_cent(interval.high)),
        Err(reason) => Words::english().word(reason.code()),
    }
}

/// By hand, see [`mixed`].
#[test]
fn the_hand_worked_site_is_on_the_page() {
    let page = page(&mixed(), &asked("at least 14 %"));
    assert_eq!(column(&page, "Cover of each line", "canopy"), ["35.0 %", "20.0 %"]);
    assert_eq!(column(&page, "Cover of each line", "sum"), ["40.0 %", "20.0 %"]);
    assert_eq!(column(&page, "Cover of each line", "dead"), ["", "4.0 %"]);
    assert_eq!(column(&page, "Cover of each line", "gaps closed"), ["1 · 4 cm", ""]);
    let figures = "Figures of the site with their error";
    assert_eq!(column(&page, figures, "what"), ["canopy cover", "sum of species", "dead canopy"]);
    assert_eq!(column(&page, figures, "estimate"), ["27.5 %", "30.0 %", "2.0 %"]);
    let species = "Live cover of each species";
    assert_eq!(column(&page, species, "what"), ["first shrub", "low shrub", "a grass (doesn't count)"]);
    assert_eq!(column(&page, species, "cover"), ["20.0 %", "10.0 %", "5.0 %"]);
    assert_eq!(column(&page, species, "composition"), ["66.7 %", "33.3 %", "–"]);
    assert_eq!(column(&page, species, "met on"), ["2 of 2 lines", "1 of 2 lines", "1 of 2 lines"]);
    let gaps = "Gaps between shrubs by their length, all lines together";
    assert_eq!(
        column(&page, gaps, "length of the gap"),
        ["25 cm to 50 cm", "50 cm to 100 cm", "100 cm to 200 cm", "over 200 cm"]
    );
    assert_eq!(column(&page, gaps, "gaps"), ["0", "0", "0", "2"]);
    assert_eq!(column(&page, gaps, "share of the lines"), ["0.0 %", "0.0 %", "0.0 %", "72.5 %"]);
    // 60 and 80 cm on one line each: 0.70 m; s = 0.1414, SE = 0.10 m
    let heights = "Mean height of live plants: the mean of the lines' means";
    assert_eq!(column(&page, heights, "height")[0], "0.70 m");
    assert_eq!(column(&page, heights, "SE")[0], "0.10 m");
    // the arithmetic on paper: (200 − 0 = 200) and (350 − 0 = 350), each of 1000 cm
    says(&page, &["(350 − 0 = 350) = 350", "350 ÷ 1000 = 0.35000, that is 35.00 %, rounded last"]);
    says(&page, &["closed by the rule: AAAA 100 cm to 104 cm, 4 cm (gap)"]);
}

/// Every figure of the assessment stands in the tables as rounded once from its own value.
#[test]
fn tables_show_the_assessment() {
    let (input, question) = (mixed(), asked("at least 14 %"));
    let assessment: &Assessment = &assess(&input, &question)[0];
    let page = page(&input, &question);
    let rows = table(&page, "Figures of the site with their error");
    assert_eq!(rows.len(), assessment.figures.len());
    for (row, figure) in rows.iter().zip(&assessment.figures) {
        let cell = |heading: &str| row.iter().find(|(name, _)| name == heading).unwrap().1.as_str();
        assert_eq!(cell("estimate"), per_cent(figure.estimate.value));
        let SamplingError::Known { se, .. } = figure.estimate.error else {
            panic!("two lines have an error")
        };
        assert_eq!(cell("SE"), per_cent(se));
        assert_eq!(cell("90 % interval"), interval_words(figure));
    }
    let rows = table(&page, "Live cover of each species");
    let species = kinds(&input, &question, assessment, By::Species);
    assert_eq!(rows.len(), species.len());
    for (row, kind) in rows.iter().zip(&species) {
        let cell = |heading: &str| row.iter().find(|(name, _)| name == heading).unwrap().1.as_str();
        assert_eq!(cell("cover"), per_cent(kind.cover.estimate.value));
        assert_eq!(cell("90 % interval"), interval_words(&kind.cover));
    }
    let judgement = &assessment.judgements[0];
    let bounds = judgement.bounds.unwrap();
    let picture =
        format!("{}, at least {}", per_cent(assessment.figures[0].estimate.value), per_cent(bounds.lower));
    says(&page, &[&picture]);
}

/// Four lines of 10, 20, 30 and 40 % in two years under one protocol, and again under a rule that closes gaps: the
/// page sets them side by side and says on what the rules differ.
#[test]
fn years_stand_side_by_side_without_a_claim() {
    let mut input = four_lines("Invented flat");
    let mut later = four_lines("Invented flat");
    let mut protocol = later.protocols.values().next().unwrap().clone();
    protocol.gap.limit = Some(crate::sites::cm("5"));
    let print = later.add_protocol(protocol);
    let date = |year| tautline_survey::date::Date::new(year, 6, 9);
    for visit in &mut input.visits {
        visit.date = date(2022);
    }
    for visit in &mut later.visits {
        (visit.date, visit.protocol) = (date(2026), print.clone());
        visit.intercepts.retain(|_| visit.line != "4");
    }
    input.visits.extend(later.visits);
    input.protocols.extend(later.protocols);
    let question = asked("at least 14 %");
    let assessments = assess(&input, &question);
    let page = tautline_report::html(&input, &question, &assessments, &Words::english());
    let years = "Canopy cover in each year, each under its own protocol";
    assert_eq!(column(&page, years, "year"), ["2026", "2022"]);
    // without the fourth line's shrub: (10 + 20 + 30 + 0) / 4
    assert_eq!(column(&page, years, "canopy"), ["15.0 %", "25.0 %"]);
    says(&page, &["no claim that cover changed", "differ in: gap-limit"]);
    let first = "Canopy cover and verdict of each site";
    assert_eq!(column(&page, first, "site"), ["Invented flat, 2026", "Invented flat, 2022"]);
    assert_eq!(column(&page, first, "canopy"), ["15.0 %", "25.0 %"]);
}

/// The methods say what was done: the rule, what silence was taken for, estimator and interval with their sources,
/// confidence, version.
#[test]
fn the_methods_say_what_was_done() {
    let page = page(&mixed(), &Question { confidence_per_mille: 950, ..asked("at least 14 %") });
    let protocol = mixed().protocols.keys().next().unwrap()[..12].to_owned();
    says(
        &page,
        &[
            "2 straight lines were read by line intercept on Invented wash",
            "The protocol was “invented rules” (fingerprint of its meaning begins",
            &protocol,
            "Where the protocol is silent, this was taken:",
            "A gap shorter than 5 cm was read as canopy.",
            "These stayed open: a gap of exactly the limit",
            "The line is the sampling unit (2 lines).",
            "The estimate is the mean of lines (Cochran 1977, 2.4–2.6).",
            "Two-sided 95 % intervals of canopy cover, sum of species, dead canopy: Student t (Cochran 1977, 2.8).",
            "Verdicts rest on one-sided 95 % bounds",
            concat!("Worked out with tautline ", env!("CARGO_PKG_VERSION")),
        ],
    );
    let bounded = Question { method: None, ..Question::default() };
    says(&crate::sites::page(&mixed(), &bounded), &["canopy cover, dead canopy: Student t on the logit"]);
}

#[test]
fn a_subject_of_a_goal_has_its_own_words() {
    let page = page(&mixed(), &asked("BBBB: at least 1 %"));
    let tree = tree(&page);
    assert!(
        crate::reader::all(&tree, "h3")
            .any(|heading| crate::reader::words(heading) == "Asked: cover of BBBB, at least 1 %")
    );
    let input = mixed();
    let assessment = assess(&input, &asked("BBBB: at least 1 %")).remove(0);
    assert!(assessment.figure(&Subject::Species("BBBB".into())).is_some());
}
