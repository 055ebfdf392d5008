//! Which row of a spreadsheet holds the headings: not always the first, and sometimes two of them, with merged cells.

use super::grid::{Grid, Held};
use crate::delimited::{Kind, Options};
use crate::headings::{Heading, heading, heading_under};
use crate::limits::{MOST_COLUMNS, ROWS_ABOVE_HEADINGS};
use crate::shown::short;
use tautline_engine::length::Bare;

/// The headings of a sheet.
pub(super) struct Headings {
    /// The last row of them; the table begins below.
    pub(super) row: u64,
    pub(super) all: Vec<Heading>,
    pub(super) kind: Kind,
    /// The rows above, which hold titles and remarks.
    pub(super) above: Vec<u64>,
}

/// The first row that heads a table that is known, alone or together with the row below it.
pub(super) fn find(grid: &Grid, options: &Options) -> Option<Headings> {
    let rows: Vec<u64> = grid.rows.keys().copied().take(ROWS_ABOVE_HEADINGS).collect();
    rows.iter().enumerate().find_map(|(at, &row)| {
        let upper = texts(grid, row);
        let lower = rows.get(at + 1).map(|&below| (below, texts(grid, below)));
        let two = lower
            .filter(|(_, lower)| goes_on(&upper, lower))
            .map(|(below, lower)| (below, together(&upper, &lower)));
        [two, Some((row, upper))].into_iter().flatten().find_map(|(row, texts)| {
            let all: Vec<Heading> =
                texts.iter().map(|text| heading_under(&short(text), &options.headings)).collect();
            let kind = Kind::of(&all, options);
            let above = rows[..at].to_vec();
            (kind != Kind::Unknown).then_some(Headings { row, all, kind, above })
        })
    })
}

/// What a row says as headings: on one line each, and in every one of merged columns.
fn texts(grid: &Grid, row: u64) -> Vec<String> {
    let mut texts: Vec<String> = grid.rows.get(&row).into_iter().flatten().map(plain).collect();
    for merged in grid.merged.iter().filter(|merged| merged.rows.contains(&row)) {
        let text = texts.get(*merged.columns.start()).cloned().unwrap_or_default();
        let last = (*merged.columns.end()).min(MOST_COLUMNS);
        if !text.is_empty() && texts.len() <= last {
            texts.resize(last + 1, String::new());
        }
        for own in texts.iter_mut().take(last + 1).skip(*merged.columns.start()) {
            own.clone_from(&text);
        }
    }
    texts
}

fn plain(held: &Held) -> String {
    match held {
        Held::Text(text) => text.split_whitespace().collect::<Vec<_>>().join(" "),
        Held::Empty | Held::Number(_) | Held::Share(_) | Held::Day(..) => String::new(),
    }
}

/// Whether a row goes on with the headings above it: beside what stands in both, merged downwards, it holds headings and units and
/// nothing else.
fn goes_on(upper: &[String], lower: &[String]) -> bool {
    let own = lower.iter().enumerate().filter(|(at, text)| upper.get(*at) != Some(text));
    let mut said = own.map(|(_, text)| text).filter(|text| !text.is_empty()).peekable();
    said.peek().is_some() && said.all(|text| unit(text).is_some() || heading(text).column.is_some())
}

/// Two rows as one: the lower speaks where it says anything, under a unit that stands above it.
fn together(upper: &[String], lower: &[String]) -> Vec<String> {
    (0..upper.len().max(lower.len()))
        .map(|at| {
            let text = |row: &[String]| row.get(at).cloned().unwrap_or_default();
            let (above, below) = (text(upper), text(lower));
            let shared = heading_unit(&above).filter(|_| heading(&below).unit.is_none());
            match (unit(&below), shared) {
                _ if below.is_empty() || below == above => above,
                (Some(unit), _) => format!("{above} ({unit})"),
                (None, Some(unit)) => format!("{below} ({unit})"),
                (None, None) => below,
            }
        })
        .collect()
}

/// The unit that a cell names and nothing else, in brackets or bare.
fn unit(text: &str) -> Option<&str> {
    let bare = text.trim().trim_start_matches(['(', '[']).trim_end_matches([')', ']']);
    Bare::from_words(bare).map(|_| bare)
}

/// The unit in brackets behind any words: “Position (in)”.
fn heading_unit(text: &str) -> Option<&str> {
    let (_, rest) = text.rsplit_once(['(', '['])?;
    unit(rest)
}
