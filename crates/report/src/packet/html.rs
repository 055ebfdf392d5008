//! The packet as a page: each sheet and card begins on paper of its own.

use super::Paper;
use super::booklet::{Blank, Booklet, Card, Drawn, Fact, Grid, List, Part, Rules, Sheet};
use crate::markup::{around, escape, text};

/// The whole page.
pub(super) fn page(booklet: &Booklet, paper: Paper) -> String {
    let size = match paper {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    let style = format!("{}@page{{size:{size}}}", super::style());
    let head = format!(
        "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{}{}",
        text("title", &booklet.title),
        around("style", &style)
    );
    format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n{}{}</html>\n",
        escape(&booklet.language),
        around("head", &head),
        around("body", &body(booklet))
    )
}

/// What stands on it.
pub(super) fn body(booklet: &Booklet) -> String {
    let mut body = around("section class=\"front\"", &front(booklet));
    body += &around("section", &part(&booklet.lines, "class=\"lines\" "));
    body += &around("section", &rules(&booklet.rules));
    body += &around("section", &(list(&booklet.equipment, "ticks", "tick") + &part(&booklet.stakes, "")));
    body += &booklet.sheets.iter().map(sheet).collect::<String>();
    body += &around("section", &part(&booklet.photos, ""));
    let cards: String = booklet.again.cards.iter().map(card).collect();
    body +=
        &around("section", &(text("h2", &booklet.again.heading) + &around("div class=\"cards\"", &cards)));
    around("main", &body)
}

fn front(booklet: &Booklet) -> String {
    let exact = booklet.kept_back.as_ref().map(|said| text("p class=\"exact\"", said)).unwrap_or_default();
    let calls = &booklet.calls;
    text("h1", &booklet.title)
        + &exact
        + &text("p", &booklet.about)
        + &around("figure", &booklet.map.drawing)
        + &list(&booklet.cautions, "cautions", "")
        + &text("h2", &calls.heading)
        + &text("p", &calls.said)
        + &around("dl class=\"calls\"", &facts(&calls.facts))
}

fn list(list: &List, class: &str, of_item: &str) -> String {
    let tag = if of_item.is_empty() { "li".to_owned() } else { format!("li class=\"{of_item}\"") };
    let items: String = list.items.iter().map(|item| text(&tag, item)).collect();
    text("h2", &list.heading) + &around(&format!("ul class=\"{class}\""), &items)
}

/// Sentences and tables; `more` are attributes of each table.
pub(super) fn part(part: &Part, more: &str) -> String {
    let said: String = part.said.iter().map(|said| text("p", said)).collect();
    let tables: String = part.tables.iter().map(|table| grid(table, more)).collect();
    text("h2", &part.heading) + &said + &tables
}

fn grid(grid: &Grid, more: &str) -> String {
    let head: String = grid.columns.iter().map(|heading| text("th scope=\"col\"", heading)).collect();
    let row = |cells: &Vec<Option<String>>| {
        let cells = cells.iter().enumerate().map(|(at, cell)| match (at, cell) {
            (0, Some(cell)) => text("th scope=\"row\"", cell),
            (_, Some(cell)) => text("td", cell),
            _ => text("td class=\"empty\"", ""),
        });
        around("tr", &cells.collect::<String>())
    };
    let inner = text("caption", &grid.caption)
        + &around("thead", &around("tr", &head))
        + &around("tbody", &grid.rows.iter().map(row).collect::<String>());
    around(&format!("table {more}tabindex=\"0\""), &inner)
}

fn rules(rules: &Rules) -> String {
    let said: String = rules.said.iter().map(|one| text("li", one)).collect();
    let drawn = |one: &Drawn| around("figure", &(one.drawing.clone() + &text("figcaption", &one.title)));
    let drawings: String = rules.drawings.iter().map(drawn).collect();
    let drawings = if drawings.is_empty() { drawings } else { around("div class=\"drawings\"", &drawings) };
    let plants = rules.plants.as_ref().map(|plants| grid(plants, "")).unwrap_or_default();
    text("h2", &rules.heading) + &around("ul", &said) + &drawings + &plants
}

fn facts(facts: &[Fact]) -> String {
    let fact = |fact: &Fact| {
        let (class, said) = match &fact.said {
            Some(said) => ("dd", said.as_str()),
            None => ("dd class=\"blank\"", ""),
        };
        around("div", &(text("dt", &fact.term) + &text(class, said)))
    };
    facts.iter().map(fact).collect()
}

fn sheet(sheet: &Sheet) -> String {
    let code = |code: &Drawn| around("div class=\"code\"", &code.drawing);
    let code = sheet.code.as_ref().map(code).unwrap_or_default();
    let head = text("h2", &sheet.title) + &code + &around("dl", &facts(&sheet.facts));
    let halves = around("div class=\"halves\"", &half(sheet).repeat(2));
    around(
        "section class=\"sheet\"",
        &(around("header", &head) + &halves + &text("p class=\"foot\"", &sheet.foot)),
    )
}

/// A table to be filled: the stop beside the start, each with room for a whole and a part.
fn half(sheet: &Sheet) -> String {
    let heading = |one: &Blank| text(&format!("th scope=\"col\" class=\"{}\"", one.holds), &one.text);
    let cell = |one: &Blank| text(&format!("td class=\"{}\"", one.holds), "");
    let head: String = sheet.columns.iter().map(heading).collect();
    let row = around("tr", &sheet.columns.iter().map(cell).collect::<String>());
    around(
        "table class=\"blank\"",
        &(text("caption", &sheet.caption)
            + &around("thead", &around("tr", &head))
            + &around("tbody", &row.repeat(sheet.rows))),
    )
}

fn card(card: &Card) -> String {
    around("article class=\"card\"", &(text("h3", &card.title) + &around("dl", &facts(&card.facts))))
}
