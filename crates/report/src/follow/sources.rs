//! Where the doubt of a mean comes from, and what would make it surer.

use super::{Followed, answer, capital, findings, followed, points_said, section, site};
use crate::document::{Block, Picture};
use crate::markup::{Column, Table};
use crate::page::{Page, site_id};
use crate::pictures::{drawn, share};
use tautline_figures::gaps::{self, Class, Gaps};
use tautline_survey::agree::{Doubt, PartShare, Told, bought, doubt_sentences};
use tautline_survey::finding::Finding;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Where the doubt of a mean comes from; or the code of why it can't be told.
///
/// # Example
/// ```
/// use tautline_survey::input::Input;
/// let words = tautline_words::Words::english();
/// let told = tautline_report::sources(&Input::default(), Err("sources-too-few"), &[], &words);
/// assert!(told.page().contains("Fewer than three dated readings"));
/// ```
pub fn sources(
    input: &Input,
    doubt: Result<&Doubt, &'static str>,
    found: &[Finding],
    words: &Words,
) -> Followed {
    let nothing = doubt.err().unwrap_or("sources-too-few");
    followed(input, words, ["title-sources", "follow-sources-about", nothing], &[], |page| match doubt {
        Ok(doubt) => {
            let parts = [
                section("parts", "follow-sources-parts", shares(doubt, page), page),
                section("buys", "title-buys", buys(doubt, page), page),
                findings(found, page),
            ];
            let picture = picture(&site_id(0), doubt, page);
            let said = answer(&doubt_sentences(doubt), picture, page);
            let title = doubt.year.map_or_else(
                || page.word("title-sources"),
                |year| page.say(&Message::new("follow-sources-of").with("year", year.to_string())),
            );
            (vec![site(0, title, said, parts.into_iter().flatten().collect(), page)], Vec::new())
        }
        Err(_) => (Vec::new(), Vec::new()),
    })
}

/// How much of what varies each part is: a bar for each that can be told.
fn picture(id: &str, doubt: &Doubt, page: &Page) -> Option<Picture> {
    let told = |one: &PartShare| match one.told {
        Told::Spread { share: of_all, .. } => Some(Class {
            name: page.word(one.part.code()),
            share: share(of_all),
            figure: page.words.percent(of_all, 0),
        }),
        _ => None,
    };
    let classes: Vec<Class> = doubt.parts.iter().filter_map(told).collect();
    if classes.is_empty() {
        return None;
    }
    let said: Vec<String> = classes.iter().map(|one| format!("{}: {}", one.name, one.figure)).collect();
    let chart = Gaps { classes, axis: page.word("follow-sources-axis") };
    let title = page.word("follow-sources-picture");
    Some(drawn(id, &title, &said.join("; "), page, |frame| gaps::draw(&chart, frame)))
}

fn shares(doubt: &Doubt, page: &Page) -> Vec<Block> {
    let columns = ["what", "groups", "sd-points", "of-variance"].iter().enumerate().map(|(at, name)| {
        let holds = if at == 0 { Column::Text } else { Column::Figure };
        (holds, page.word(&format!("column-{name}")))
    });
    let mut table = Table::new(page.word("follow-sources-parts"), columns.collect());
    for one in &doubt.parts {
        let (sd, share) = match one.told {
            Told::Spread { sd, share } => (page.words.number(sd * 100.0, 1), page.words.percent(share, 0)),
            _ => (page.word("report-none"), page.word("report-none")),
        };
        table.row(vec![page.word(one.part.code()), one.groups.to_string(), sd, share]);
    }
    table.finished().map(Block::Table).into_iter().chain([points_said(page)]).collect()
}

fn buys(doubt: &Doubt, page: &Page) -> Vec<Block> {
    let columns = ["what", "se-after", "minutes"].iter().enumerate().map(|(at, name)| {
        let holds = if at == 0 { Column::Text } else { Column::Figure };
        (holds, page.word(&format!("column-{name}")))
    });
    let mut table = Table::new(page.word("title-buys"), columns.collect());
    for buy in &doubt.buys {
        let minutes =
            buy.minutes.map_or_else(|| page.word("report-none"), |minutes| page.words.number(minutes, 0));
        let what = capital(&page.say(&bought(buy)));
        table.row(vec![what, page.words.number(buy.se * 100.0, 2), minutes]);
    }
    table.finished().map(Block::Table).into_iter().collect()
}
