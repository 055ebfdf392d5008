//! The rows of sites that the quick reader left, for the general one, with the numbers they have in their file.

use super::blocks::{Blocks, Buffer};
use super::cells::Cursor;
use super::layout::{HEAD, Layout, Role};
use super::terms::Terms;
use super::{Stop, Table};
use crate::delimited::{Options, Sheet};
use std::collections::BTreeSet;

/// One sheet for each table, holding the rows of these sites alone.
pub(super) fn sheets(
    tables: &[(&Table, Layout)],
    sites: &BTreeSet<String>,
    terms: &Terms,
    options: &Options,
) -> Result<Vec<Sheet>, Stop> {
    tables.iter().map(|(table, layout)| sheet(table, layout, sites, terms, options)).collect()
}

fn sheet(
    table: &Table,
    layout: &Layout,
    sites: &BTreeSet<String>,
    terms: &Terms,
    options: &Options,
) -> Result<Sheet, Stop> {
    let fault = |error| Stop::File(table.name.clone(), error);
    let head = table.content.first(HEAD as u64).map_err(fault)?;
    let head = head.strip_prefix(b"\xef\xbb\xbf").unwrap_or(&head);
    let begins = usize::try_from(layout.begins).unwrap_or(usize::MAX).min(head.len());
    let mut kept = head[..begins].to_vec();
    let before = memchr::memchr_iter(b'\n', &kept).count() as u64;
    // the number, in the file, of each row that is kept
    let mut numbers: Vec<u64> = Vec::new();
    let mut number = before;
    let site_column = layout.roles.iter().position(|&role| role == Role::Site);
    let mut buffer = Buffer::default();
    let mut blocks = Blocks::open(table, layout.begins, &mut buffer)?;
    while let Some(rows) = blocks.next()? {
        rows.check(0, layout.no_commas)?;
        let mut at = 0;
        while at < rows.end {
            let end = at + memchr::memchr(b'\n', &rows.bytes[at..rows.end]).ok_or(Stop::Unclear)? + 1;
            number += 1;
            let mut cursor = Cursor::new(rows.bytes, at, layout.delimiter);
            let mut cell = "";
            for _ in 0..=site_column.unwrap_or_default() {
                cell = cursor.cell().text(rows.bytes);
            }
            let site = terms.site(site_column.map(|_| cell));
            if sites.contains(site) {
                kept.extend_from_slice(&rows.bytes[at..end]);
                numbers.push(number);
            }
            at = end;
        }
        blocks.done_with_rows();
    }
    let text = String::from_utf8(kept).map_err(|_| Stop::Unclear)?;
    let mut sheet = Sheet::cut(&table.name, &text, options);
    for (row, _) in &mut sheet.rows {
        let place = usize::try_from(*row - before - 1).unwrap_or(usize::MAX);
        *row = numbers.get(place).copied().unwrap_or(*row);
    }
    Ok(sheet)
}
