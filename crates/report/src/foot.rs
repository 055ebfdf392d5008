//! The end of the page: what was found on reading the files, cautions, the files, and how to know the data again.

use crate::checks;
use crate::document::{Fingerprint, Item, ListOf, Print, Section, list, sentences};
use crate::page::Page;
use crate::shown;
use crate::telling::Reader;
use std::collections::BTreeSet;
use tautline_survey::assess::Assessment;
use tautline_survey::imprint::{MARK, of_readings};
use tautline_survey::message::Message;

/// What was found on reading the files that speaks of no site on the page; nothing where nothing was.
pub(crate) fn found_on_reading(assessments: &[&Assessment], page: &Page) -> Option<Section> {
    let found = checks::of_nothing_here(assessments, page);
    (!found.is_empty()).then(|| Section {
        key: "found",
        heading: page.word("report-reading-findings"),
        blocks: found.in_full(3, page),
    })
}

/// The readings of each site and year on the page, to be known again; and what the report is made of, where that is wanted.
pub(crate) fn prints(assessments: &[&Assessment], page: &Page) -> Vec<Print> {
    // the plots of a site share its readings
    let mut seen = BTreeSet::new();
    let rounds = assessments.iter().filter(|one| seen.insert((one.site.as_str(), one.year)));
    let print = |one: &&Assessment| Print {
        title: shown::title(&Assessment { plot: None, ..(*one).clone() }, page),
        print: format!("{MARK}{}", of_readings(page.input, &one.site, one.year)),
    };
    let made = page.made.map(|made| Print { title: page.word("report-made"), print: made.to_owned() });
    rounds.map(print).chain(made).collect()
}

/// Cautions, files, and how to know the readings again.
pub(crate) fn sections(assessments: &[&Assessment], page: &Page) -> Vec<Section> {
    let cautions = page.each(&["report-caution-advice", "report-caution-rule", "report-caution-local"]);
    let part = |key, heading: &str, block| Section { key, heading: page.word(heading), blocks: vec![block] };
    let cautions = sentences(cautions).map(|list| part("cautions", "report-cautions", list));
    // a landowner has one page: the fingerprint below it stands for the files
    let files =
        if page.reader == Reader::Landowner { None } else { list(ListOf::Files, files(assessments, page)) };
    let files = files.map(|list| part("files", "report-files", list));
    let prints = prints(assessments, page).into_iter().map(|one| {
        let said = Message::new("report-print").with("title", one.title).with("print", one.print);
        Item::said(page.say(&said))
    });
    let prints = list(ListOf::Files, prints.collect()).map(|list| part("prints", "report-prints", list));
    cautions.into_iter().chain(files).chain(prints).collect()
}

/// So many files are named beside those in which the readings of the report stand.
const MOST_OTHERS: usize = 20;

/// The files that were read: all, or where a run over many sites read very many, those in which the readings of this report stand
/// and a few more, and how many others there are.
fn files(assessments: &[&Assessment], page: &Page) -> Vec<Item> {
    let on_page: BTreeSet<&str> = assessments.iter().map(|one| one.site.as_str()).collect();
    let visits = page.input.visits.iter().filter(|visit| on_page.contains(visit.site.as_str()));
    let own: BTreeSet<&str> = visits.filter_map(|visit| Some(visit.place.as_ref()?.file.as_str())).collect();
    let (mut others, mut left_out) = (0, 0_usize);
    let mut items = Vec::new();
    for file in &page.input.files {
        others += usize::from(!own.contains(file.name.as_str()));
        if own.contains(file.name.as_str()) || others <= MOST_OTHERS {
            let sha: String = file.sha256.chars().take(12).collect();
            let said = Message::new("report-file").with("name", file.name.as_str()).with("sha", sha);
            items.push(Item::said(page.say(&said)));
        } else {
            left_out += 1;
        }
    }
    if left_out > 0 {
        items.push(Item::said(page.say(&Message::new("report-files-others").with("files", left_out))));
    }
    items
}

/// How to know the data again.
pub(crate) fn fingerprint(page: &Page) -> Option<Fingerprint> {
    let print = page.input.fingerprint()?;
    let said = page.say(&Message::new("report-fingerprint").with("print", print.as_str()));
    Some(Fingerprint { print, said })
}
