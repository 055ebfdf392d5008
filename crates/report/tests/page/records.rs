//! Every finding and every reading is on the page, with its place.

use crate::reader::{all, says, tree, words};
use crate::sites::{asked, cm, intercept, mixed, page, site};
use tautline_survey::assess::assess;
use tautline_survey::check::{Settlement, check};
use tautline_survey::date::Date;
use tautline_survey::finding::{Excerpt, Finding, Place, Settled};
use tautline_survey::message::Message;
use tautline_survey::protocol::Protocol;
use tautline_survey::visit::{Extent, Outcome, State, Visit};
use tautline_words::Words;

#[test]
fn every_reading_is_there_as_typed_with_its_row() {
    let input = mixed();
    let page = page(&input, &asked("at least 14 %"));
    let tree = tree(&page);
    for (at, visit) in input.visits.iter().enumerate() {
        let id = format!("readings-{}", at + 1);
        let table = tree.descendants().find(|node| node.attribute("id") == Some(&id)).unwrap();
        let said = words(table);
        assert!(said.contains("invented.csv") && said.contains(&format!("Line {}", visit.line)), "{said}");
        let rows: Vec<String> =
            table.descendants().filter(|node| node.tag_name().name() == "tr").skip(1).map(words).collect();
        assert_eq!(rows.len(), visit.intercepts.len());
        for (row, intercept) in rows.iter().zip(&visit.intercepts) {
            let Extent::Edges { start, stop } = &intercept.extent else { panic!("edges") };
            let height =
                intercept.height.as_ref().map_or(String::new(), |height| format!(" {}", height.typed()));
            let state = if intercept.state == State::Live { "live" } else { "dead" };
            let place = intercept.place.as_ref().unwrap().row;
            let wanted =
                format!("{place} {} {} {}{height} {state}", intercept.species, start.typed(), stop.typed());
            assert_eq!(*row, wanted);
        }
    }
}

/// A second pass, a line that was not read and one with lengths only go into no figure or a bounded one; they are in
/// the appendix all the same.
#[test]
fn readings_of_no_figure_are_there_too() {
    let only = |id, species: &str, length: &str| {
        let mut one = intercept(id, 0, 1, State::Live);
        (one.species, one.extent) = (species.into(), Extent::Length(cm(length)));
        one
    };
    let mut input = site(
        "Invented wash",
        Protocol::default(),
        &[
            vec![intercept(1, 0, 111, State::Live)],
            vec![],
            vec![only(1, "AAAA", "123"), only(2, "BBBB", "45.5")],
        ],
    );
    let again = Visit {
        pass: "2".into(),
        intercepts: vec![intercept(1, 0, 99, State::Live)],
        ..input.visits[0].clone()
    };
    input.visits.push(again);
    input.visits[1].outcome = Outcome::NotRead;
    let page = page(&input, &asked("at least 14 %"));
    let tree = tree(&page);
    let of = |id: &str| words(tree.descendants().find(|node| node.attribute("id") == Some(id)).unwrap());
    assert!(of("readings-1").contains("0 111 live"));
    assert!(of("readings-2").contains("not read"));
    let lengths = of("readings-3");
    assert!(lengths.contains("length (cm)") && lengths.contains("AAAA 123") && lengths.contains("BBBB 45.5"));
    let second = of("readings-4");
    assert!(second.contains("pass 2") && second.contains("0 99 live"));
}

#[test]
fn every_finding_is_there_with_its_place() {
    let mut input = site(
        "Invented wash",
        Protocol::default(),
        &[vec![intercept(1, 0, 100, State::Live)], vec![intercept(1, 990, 1040, State::Live)]],
    );
    input.visits[1].intercepts[0].place =
        Some(Place { file: "invented.csv".into(), row: 7, column: None, character: None });
    let read =
        Place { file: "invented.csv".into(), row: 4, column: Some("stop (cm)".into()), character: None };
    input
        .findings
        .push(Finding::must_settle(Message::new("cell-empty").with("column", "stop (cm)")).at(read));
    input.findings.push(Finding::note(Message::new("columns-not-used").with("found", "mood")));
    check(&mut input);
    let question = asked("at least 14 %");
    let words = Words::english();
    let assessments = assess(&input, &question);
    let page = page(&input, &question);
    let found = assessments.iter().flat_map(|one| &one.findings).chain(&input.findings);
    let mut count = 0;
    for finding in found {
        count += 1;
        assert!(finding.settled.is_none());
        let said = words.say(&finding.words()).replace('\u{a0}', " ");
        says(&page, &[&said]);
    }
    assert!(count >= 3, "only {count} findings were raised");
    says(&page, &["invented.csv, row 7: ", "invented.csv, row 4, stop (cm): ", "Must be settled", "To know"]);
    // beside the figure and again under the checks
    let tree = tree(&page);
    let beside =
        all(&tree, "div").find(|node| node.attribute("role") == Some("note")).map(crate::reader::words);
    assert!(beside.is_some_and(|said| said.contains("beyond the tape")));
}

/// A finding that somebody settled stands apart, with who, when and why; it no longer weighs on the figure.
#[test]
fn what_was_settled_is_said_with_who_and_why() {
    let mut input = site(
        "Invented wash",
        Protocol::default(),
        &[vec![intercept(1, 0, 100, State::Live)], vec![intercept(1, 990, 1040, State::Live)]],
    );
    let place = Place { file: "settled.csv".into(), row: 2, column: None, character: None };
    input.settlements.push(Settlement {
        code: "beyond-the-tape".into(),
        site: "Invented wash".into(),
        line: "2".into(),
        date: None,
        species: String::new(),
        file: String::new(),
        row: None,
        settled: Settled {
            by: "invented reader".into(),
            on: Date::new(2026, 6, 10),
            reason: "the stake leans".into(),
        },
        place,
    });
    check(&mut input);
    let page = page(&input, &asked("at least 14 %"));
    says(&page, &["Settled by invented reader on 2026-06-10: the stake leans", "settled by a person"]);
    let tree = tree(&page);
    let beside =
        all(&tree, "div").find(|node| node.attribute("role") == Some("note")).map(crate::reader::words);
    assert!(!beside.unwrap_or_default().contains("beyond the tape"));
}

/// The row that a person typed is shown with a mark under the character that is meant.
#[test]
fn a_typed_row_is_shown_with_its_mark() {
    let mut input = mixed();
    let mut finding = Finding::must_settle(Message::new("cell-empty").with("column", "stop"));
    finding.excerpt = Some(Box::new(Excerpt { text: "ATCA <12>-1O".into(), before: 11 }));
    input.findings.push(finding);
    let page = page(&input, &asked("at least 14 %"));
    assert!(page.contains("ATCA &lt;12&gt;-1O\n           ^</pre>"));
}
