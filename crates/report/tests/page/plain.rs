//! The plain text says what the page says.

use crate::reader::{all, tree, words};
use crate::sites::{asked, four_lines, hostile, mixed, several_sites};
use tautline_report::{Reader, Telling, page_of, text_of};
use tautline_survey::assess::assess;
use tautline_words::Words;

fn squeezed(text: &str) -> String {
    text.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn whatever_stands_in_a_cell_or_a_paragraph_of_the_page_stands_in_the_text() {
    for input in [several_sites(), mixed(), four_lines("One")] {
        let question = asked("at least 14 %");
        let assessments = assess(&input, &question);
        let catalogue = Words::english();
        let telling = Telling::new(&input, &question, &assessments, &catalogue);
        let (page, text) = (page_of(&telling), squeezed(&text_of(&telling)));
        let tree = tree(&page);
        let mut said = 0;
        for name in ["p", "td", "th", "dd", "h2", "h3", "h4", "caption"] {
            for node in all(&tree, name) {
                let jump = node.attribute("class").is_some_and(|class| class.contains("jump"));
                let wanted = words(node);
                if !jump && !wanted.is_empty() {
                    assert!(text.contains(&wanted), "{name}: “{wanted}” isn't in the text");
                    said += 1;
                }
            }
        }
        assert!(said > 80, "only {said}");
    }
}

#[test]
fn nothing_steers_a_screen_of_letters() {
    let input = hostile();
    let question = asked("at least 14 %");
    let assessments = assess(&input, &question);
    let catalogue = Words::english();
    let text = text_of(&Telling::new(&input, &question, &assessments, &catalogue));
    let steering: Vec<char> = text.chars().filter(|c| c.is_control() && *c != '\n').collect();
    assert_eq!(steering, Vec::<char>::new());
}

#[test]
fn every_reader_is_told_the_same_verdict_and_the_same_figure() {
    let input = four_lines("One");
    let question = asked("at least 14 %");
    let assessments = assess(&input, &question);
    let catalogue = Words::english();
    let mut lengths = Vec::new();
    for (name, reader) in Reader::ALL {
        let text = text_of(&Telling::new(&input, &question, &assessments, &catalogue).to(reader));
        let verdict =
            text.lines().find(|line| line.starts_with("The goal of at least 14")).unwrap_or_default();
        let figure = text.lines().find(|line| line.contains("canopy cover comes to")).unwrap_or_default();
        lengths.push((name, verdict.to_owned(), figure.to_owned(), text.len()));
    }
    let [specialist, landowner, board, class] = lengths.as_slice() else { panic!("four readers") };
    for other in [landowner, board, class] {
        assert_eq!((&other.1, &other.2), (&specialist.1, &specialist.2), "{}", other.0);
        assert!(other.3 < specialist.3, "{} reads less than a specialist", other.0);
    }
    assert!(landowner.3 < board.3 && board.3 < class.3);
    assert!(!specialist.1.is_empty() && !specialist.2.is_empty(), "{specialist:?}");
}
