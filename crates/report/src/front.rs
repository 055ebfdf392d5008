//! The first page of several sites: each with its figure and its verdict, and the way to it.

use crate::document::{Contents, Item};
use crate::markup::{Column, Table};
use crate::page::{Page, site_id};
use crate::tables::columns;
use crate::{checks, shown, verdict};
use tautline_survey::assess::{Assessment, Attribute};
use tautline_survey::goal::Subject;

/// Every site with its verdicts, and what comes after the sites.
pub(crate) fn contents(sorted: &[&Assessment], page: &Page) -> Contents {
    let headings = [
        (Column::Text, "report-column-site"),
        (Column::Text, "report-column-verdict"),
        (Column::Figure, "column-canopy"),
        (Column::Interval, "column-interval"),
        (Column::Figure, "report-column-to-settle"),
    ];
    let mut table = Table::new(page.word("report-sites-table"), columns(page, &headings));
    for (number, assessment) in sorted.iter().enumerate() {
        let figure = assessment.figure(&Subject::Canopy);
        let verdicts: Vec<String> =
            assessment.judgements.iter().map(|one| verdict::in_short(one, page)).collect();
        let to_settle = checks::of(assessment, page).to_settle();
        table.row_leading_to(
            site_id(number),
            vec![
                shown::title(assessment, page),
                if verdicts.is_empty() { page.word("report-no-goal-short") } else { verdicts.join("; ") },
                figure.map_or_else(|| page.word("report-none"), |figure| shown::estimate(figure, page)),
                figure.map_or_else(String::new, |figure| {
                    shown::interval(&figure.interval, Attribute::Cover, page)
                }),
                if to_settle > 0 { to_settle.to_string() } else { page.word("report-none") },
            ],
        );
    }
    let after = [
        ("readings", "report-readings", page.reader.reads_readings()),
        ("cautions", "report-cautions", true),
        ("files", "report-files", !page.input.files.is_empty()),
    ];
    let after = after.into_iter().filter(|(.., there)| *there);
    let after = after.map(|(id, heading, _)| Item::leading_to(id.to_owned(), page.word(heading))).collect();
    Contents { heading: page.word("report-sites"), table: table.finished(), after }
}
