//! Plain tables that fit 100 columns; a cell that doesn't fit is broken, never cut.

use super::{QUIET, println};
use tautline_words::visible;

/// The width that human output fits.
pub(super) const WIDTH: usize = 100;

/// A table: the first column to the left, numbers to the right where every cell of a column begins with a digit.
pub(super) struct Table {
    headings: Vec<String>,
    rows: Vec<Vec<String>>,
}

fn width(text: &str) -> usize {
    text.chars().count()
}

/// Breaks a text at spaces (not at no-break spaces) into rows of at most `most` characters; a longer word is broken.
pub(super) fn wrap(text: &str, most: usize) -> Vec<String> {
    let mut rows = vec![String::new()];
    for word in text.split([' ', '\n']).filter(|word| !word.is_empty()) {
        let mut rest: String = word.to_owned();
        loop {
            let row = rows.last_mut().expect("there is always a row");
            let room = if row.is_empty() { most } else { most.saturating_sub(width(row) + 1) };
            if width(&rest) <= room {
                if !row.is_empty() {
                    row.push(' ');
                }
                row.push_str(&rest);
                break;
            }
            if row.is_empty() {
                row.extend(rest.chars().take(most));
                rest = rest.chars().skip(most).collect();
            }
            rows.push(String::new());
        }
    }
    rows
}

impl Table {
    pub(super) fn new(headings: &[String]) -> Self {
        Self { headings: headings.to_vec(), rows: Vec::new() }
    }

    pub(super) fn row(&mut self, mut cells: Vec<String>) {
        for cell in &mut cells {
            *cell = visible(cell).into_owned();
        }
        cells.resize(self.headings.len(), String::new());
        self.rows.push(cells);
    }

    pub(super) fn print(&self) {
        // columns in which nothing stands are left out
        let used: Vec<usize> =
            (0..self.headings.len()).filter(|&at| self.rows.iter().any(|row| !row[at].is_empty())).collect();
        let mut widths: Vec<usize> = used
            .iter()
            .map(|&at| {
                self.rows.iter().map(|row| width(&row[at])).max().unwrap_or(0).max(width(&self.headings[at]))
            })
            .collect();
        let gaps = 2 * widths.len().saturating_sub(1);
        while widths.iter().sum::<usize>() + gaps > WIDTH {
            let Some(widest) = widths.iter_mut().max() else { break };
            *widest -= 1;
        }
        let right: Vec<bool> = used
            .iter()
            .enumerate()
            .map(|(place, &at)| {
                let mut cells = self.rows.iter().map(|row| row[at].as_str()).filter(|cell| !cell.is_empty());
                place > 0
                    && cells
                        .all(|cell| cell.starts_with(|c: char| c.is_ascii_digit() || c == '-' || c == '–'))
            })
            .collect();
        println!("{QUIET}{}{QUIET:#}", Self::lay(&used, &widths, &right, &self.headings).join("\n"));
        for row in &self.rows {
            for text in Self::lay(&used, &widths, &right, row) {
                println!("{text}");
            }
        }
    }

    fn lay(used: &[usize], widths: &[usize], right: &[bool], row: &[String]) -> Vec<String> {
        let indent = |cell: &str| cell.chars().take_while(|c| *c == ' ').count();
        let cells: Vec<Vec<String>> = used
            .iter()
            .zip(widths)
            .map(|(&at, &most)| {
                let indent = indent(&row[at]);
                wrap(&row[at], most - indent.min(most - 1))
                    .iter()
                    .map(|part| " ".repeat(indent) + part)
                    .collect()
            })
            .collect();
        let height = cells.iter().map(Vec::len).max().unwrap_or(0);
        (0..height)
            .map(|part| {
                let laid: Vec<String> = cells
                    .iter()
                    .zip(widths)
                    .zip(right)
                    .map(|((cell, &most), &right)| {
                        let text = cell.get(part).map_or("", String::as_str);
                        if right { format!("{text:>most$}") } else { format!("{text:<most$}") }
                    })
                    .collect();
                laid.join("  ").trim_end().to_owned()
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_cut() {
        assert_eq!(wrap("one two three", 7), ["one two", "three"]);
        assert_eq!(wrap("abcdefgh ij", 3), ["abc", "def", "gh", "ij"]);
        assert_eq!(wrap("", 5), [""]);
    }
}
