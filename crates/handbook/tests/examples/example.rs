//! A worked example as a page writes it: rows that are given, then rows that it gives.

use std::cell::RefCell;
use std::collections::BTreeSet;

/// A fenced block of a page.
pub(crate) struct Block<'a> {
    pub(crate) kind: &'a str,
    /// The row of the page on which it begins.
    pub(crate) row: usize,
    /// Its rows with their numbers on the page.
    pub(crate) rows: Vec<(usize, &'a str)>,
}

/// All fenced blocks of a page.
pub(crate) fn blocks(source: &str) -> Vec<Block<'_>> {
    let mut found = Vec::new();
    let mut open: Option<Block> = None;
    for (row, line) in (1..).zip(source.lines()) {
        match (line.strip_prefix("```"), &mut open) {
            (Some(kind), None) => open = Some(Block { kind, row, rows: Vec::new() }),
            (Some(_), Some(_)) => found.extend(open.take()),
            (None, Some(block)) => block.rows.push((row, line)),
            (None, None) => {}
        }
    }
    found
}

/// What is given and what comes of it.
pub(crate) struct Example {
    /// Which calculation it is.
    pub(crate) calculation: String,
    given: Vec<(String, String)>,
    /// The given rows as they stand, for a table that is read as a file.
    pub(crate) raw: String,
    /// Row on the page, what, how much.
    pub(crate) gives: Vec<(usize, String, String)>,
    read: RefCell<BTreeSet<usize>>,
}

impl Example {
    pub(crate) fn read(block: &Block) -> Result<Self, String> {
        let calculation = block.kind.trim_start_matches("example ").trim().to_owned();
        let split = block.rows.iter().position(|(_, row)| *row == "gives").ok_or("it has no row “gives”")?;
        let (before, after) = block.rows.split_at(split);
        let pair = |row: &str| -> Result<(String, String), String> {
            let (key, value) = row.split_once(':').ok_or_else(|| format!("“{row}” has no colon"))?;
            Ok((key.trim().to_owned(), value.trim().to_owned()))
        };
        let raw: String = before.iter().flat_map(|(_, row)| [row, "\n"]).collect();
        let given = if calculation == "table" {
            Vec::new()
        } else {
            before.iter().map(|(_, row)| pair(row)).collect::<Result<_, _>>()?
        };
        let gives = after[1..].iter().map(|(at, row)| pair(row).map(|(key, value)| (*at, key, value)));
        Ok(Self {
            calculation,
            given,
            raw,
            gives: gives.collect::<Result<_, _>>()?,
            read: RefCell::default(),
        })
    }

    /// The values of every row whose key begins with this word, with the rest of the key.
    pub(crate) fn all<'a>(&'a self, word: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> {
        self.given.iter().enumerate().filter_map(move |(at, (key, value))| {
            let rest = key.strip_prefix(word)?;
            (rest.is_empty() || rest.starts_with(' ')).then(|| {
                self.read.borrow_mut().insert(at);
                (rest.trim(), value.as_str())
            })
        })
    }

    /// The value of the row with exactly this key.
    pub(crate) fn given(&self, key: &str) -> Option<&str> {
        let at = self.given.iter().position(|(own, _)| own == key)?;
        self.read.borrow_mut().insert(at);
        Some(&self.given[at].1)
    }

    /// The same, of an example that can't do without.
    pub(crate) fn needed(&self, key: &str) -> &str {
        self.given(key).unwrap_or_else(|| panic!("the example “{}” lacks “{key}”", self.calculation))
    }

    /// The keys that no calculation asked for.
    pub(crate) fn unread(&self) -> Vec<&str> {
        let read = self.read.borrow();
        let left = self.given.iter().enumerate().filter(|(at, _)| !read.contains(at));
        left.map(|(_, (key, _))| key.as_str()).collect()
    }
}
