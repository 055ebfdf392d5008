//! The typeset packet: what its page says stands on its sheets, which are tagged, of the paper asked for, and one for each line.

use super::{all, folder, letters, poppler, tree, words};
use crate::carried::packed;
use tautline_report::packet::{Packet, html};
use tautline_report::print::{Paper, Press, Printed, Setting, Template, TemplateError};
use tautline_survey::date::Date;
use tautline_survey::place::Openness;
use tautline_words::Words;

fn set(template: Template, setting: Setting, openness: Openness) -> Result<Printed, TemplateError> {
    packed((&[], &[]), setting.paper, openness, |packet: &Packet| {
        Press::new(template).packet(packet, &setting, &Words::english())
    })
}

fn printed(setting: Setting, openness: Openness) -> Printed {
    set(Template::shipped(), setting, openness).unwrap()
}

#[test]
fn what_the_page_says_stands_on_the_sheets() {
    let page = packed((&[], &[]), Paper::A4, Openness::Exact, |packet| html(packet, &Words::english()));
    let printed = printed(Setting::default(), Openness::Exact);
    let sheets = letters(&poppler("pdftotext", &["-raw"], &printed.bytes));
    let tree = tree(&page);
    let mut said = 0;
    for name in ["h1", "h2", "h3", "p", "li", "dt", "dd", "th", "td", "figcaption"] {
        for node in all(&tree, name) {
            let wanted = letters(&words(node));
            assert!(sheets.contains(&wanted), "{name}: “{}” stands on no sheet:\n{sheets}", words(node));
            said += 1;
        }
    }
    assert!(said > 100, "only {said}");
    // map and cautions, lines, rules, equipment, two lines and a spare sheet, photo points, cards
    assert_eq!(printed.pages, 9);
}

#[test]
fn it_is_tagged_dated_and_of_the_paper_asked_for() {
    let kept = Setting { archival: true, paper: Paper::Letter, day: Date::new(2026, 6, 3) };
    let [one, other] = [(); 2].map(|()| printed(kept, Openness::Exact));
    assert!(one == other, "two runs differ");
    let info = poppler("pdfinfo", &["-isodates"], &one.bytes);
    assert!(info.lines().any(|line| line.starts_with("Tagged:") && line.ends_with("yes")), "{info}");
    // 8.5 by 11 inches are 612 by 792 points (ANSI/ASME Y14.1)
    assert!(info.contains("612 x 792") && info.contains("2026-06-03T00:00:00Z"), "{info}");
    assert!(poppler("pdfinfo", &["-meta"], &one.bytes).contains("<pdfaid:part>2</pdfaid:part>"));
}

/// What lies about for years keeps back what the site keeps back; the sheets that lead there say that they don't.
#[test]
fn a_card_keeps_back_where_a_line_lies_as_its_site_is_set() {
    let held = printed(Setting::default(), Openness::Withheld);
    let text = poppler("pdftotext", &["-raw"], &held.bytes);
    let (front, cards) = text.split_once("Finding the lines again").unwrap();
    assert!(front.contains("42.3") && front.contains("it is not for handing on"), "{front}");
    assert!(cards.contains("Withheld") && !cards.contains("42.3"), "{cards}");
}

#[test]
fn a_template_of_its_own_is_used_and_one_that_fails_says_where() {
    let with = |name: &str, text: &str| {
        let folder = folder(&format!("packet-template-{}", name.len()));
        std::fs::write(folder.join(name), text).unwrap();
        set(Template::in_folder(&folder).unwrap(), Setting::default(), Openness::Exact)
    };
    let own = with("letterhead.typ", "#let letterhead(packet) = [Rim Draw (invented)]").unwrap();
    assert!(poppler("pdftotext", &[], &own.bytes).starts_with("Rim Draw (invented)"));
    let wrong = with("packet.typ", "#let packet = json(\"packet.json\")\n#packet.nowhere").unwrap_err();
    let said = Words::english().say(&wrong.message);
    assert!(said.contains("packet.typ fails in row 2, column 9"), "{said}");
}
