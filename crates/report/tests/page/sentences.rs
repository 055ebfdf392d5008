//! What the page says of hand-worked, invented sites.

use crate::reader::says;
use crate::sites::{asked, cm, four_lines, intercept, page, site};
use tautline_survey::assess::Question;
use tautline_survey::protocol::{Gap, Protocol, Unknown, widest_unknown};
use tautline_survey::visit::State;

/// By hand: covers 10, 20, 30, 40 % have mean 25 %, s = 12.909944 points, SE = 6.454972, 3 df; t(0.90, 3) = 1.637744
/// (printed tables of Student's t), so the one-sided 90 % lower bound is 25 − 10.571593 = 14.4 %; t(0.95, 3) =
/// 2.353363, so the two-sided 90 % interval is 9.8 to 40.2 %.
#[test]
fn a_met_goal_is_said_with_its_lower_bound() {
    let page = page(&four_lines("Invented flat"), &asked("at least 14 %"));
    says(
        &page,
        &[
            "The goal of at least 14 % for canopy cover is met.",
            "canopy cover comes to 25.0 %",
            "it is 14.4 % or more, with 90 % confidence",
            "SE 6.5 %, 3.0 df",
            "one-sided 90 % lower bound 14.4 %",
            "25.0 %, at least 14.4 %",
            "9.8 % to 40.2 %",
        ],
    );
    assert!(page.contains("<p class=\"verdict met\">"));
}

/// The same lines: the upper bound is 25 + 10.571593 = 35.6 %.
#[test]
fn a_missed_and_an_open_goal_are_said_with_what_decides() {
    let input = four_lines("Invented flat");
    says(
        &page(&input, &asked("at least 36 %")),
        &[
            "for canopy cover is not met.",
            "it is 35.6 % or less",
            "upper bound 35.6 %",
            "25.0 %, at most 35.6 %",
        ],
    );
    says(
        &page(&input, &asked("at most 13 %")),
        &[
            "for canopy cover is not met.",
            "it is 14.4 % or more",
            "lower bound 14.4 %",
            "25.0 %, at least 14.4 %",
        ],
    );
    says(
        &page(&input, &asked("at least 20 %")),
        &["don't show yet", "as low as 14.4 % or as high as 35.6 %", "25.0 %, at least 14.4 %"],
    );
    says(
        &page(&input, &asked("14..36 %")),
        &["is met.", "it is 14.4 % or more and 35.6 % or less", "25.0 %, 14.4 % to 35.6 %"],
    );
}

#[test]
fn one_line_has_no_bound_and_the_page_says_why() {
    let input = site("Invented flat", Protocol::default(), &[vec![intercept(1, 0, 100, State::Live)]]);
    says(
        &page(&input, &asked("at least 5 %")),
        &["comes to 10.0 %", "There is no bound for it: one line shows no variation between lines"],
    );
}

/// 100 to 150 and 154 to 200 cm under a limit of 5 cm: the gap of 4 cm is read as canopy, so 100 of 1000 cm are canopy;
/// 300 to 340 cm stand dead, 4 %.
#[test]
fn closed_gaps_and_dead_canopy_stay_apart() {
    let mut protocol = Protocol { name: "invented rules".into(), ..Protocol::default() };
    protocol.gap.limit = Some(cm("5"));
    let line = vec![
        intercept(1, 100, 150, State::Live),
        intercept(2, 154, 200, State::Live),
        intercept(3, 300, 340, State::Dead),
    ];
    let page = page(&site("Invented wash", protocol, &[line.clone(), line]), &Question::default());
    says(
        &page,
        &[
            "gap closed by the rule",
            "dead canopy",
            "1 · 4 cm",
            "10.0 %",
            "4.0 %",
            "Gaps between shrubs",
            "invented rules",
        ],
    );
    says(&page, &["No goal was set for this site"]);
}

/// By hand: on 10 m, 100 to 150 and 160 to 200 cm are 90 cm as written, 100 cm where the gap of 10 cm closes; 92 and 102 cm on the
/// second line, so 9.1 to 10.1 % of the site.
#[test]
fn a_rule_that_nobody_knows_is_said_wherever_it_matters() {
    let line =
        |more: u32| vec![intercept(1, 100, 150, State::Live), intercept(2, 160, 200 + more, State::Live)];
    let gap = Gap { unknown_up_to: Some(widest_unknown()), ..Gap::default() };
    let protocol = Protocol { name: "old sheets (invented)".into(), gap, ..Protocol::default() };
    let lines = [line(0), line(2)];
    let said = page(&site("Invented flat", protocol.clone(), &lines), &Question::default());
    says(
        &said,
        &[
            "9.1 % to 10.1 %",
            "Each figure is shown between every edge as written and all gaps up to 15 cm closed",
            "With all gaps under 15.0 cm closed, whatever rule the lines were read under, canopy cover is 10.1 %",
            "agree on rules and write them down as a protocol first",
            "Which gaps were read as canopy isn't known any more.",
        ],
    );
    assert!(!said.contains("again under the same rules"));
    let dead = Protocol { unknown: vec![Unknown::Dead], ..protocol };
    says(
        &page(&site("Invented flat", dead, &lines), &Question::default()),
        &[
            "whether dead canopy was counted on these lines, so there is no one curve",
            "Whether dead canopy was counted isn't known",
        ],
    );
}
