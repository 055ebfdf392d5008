//! The few pieces of markup that a page is made of. All text passes through [`escape`].

use crate::document::{self, Heading, Picture, Row, Term};

pub(crate) use crate::document::Column;

/// Text as it may stand in markup; characters that no page may hold become U+FFFD.
pub(crate) fn escape(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\'' => safe.push_str("&#39;"),
            '\t' | '\n' | '\r' => safe.push(c),
            other if other.is_control() => safe.push('\u{fffd}'),
            other => safe.push(other),
        }
    }
    safe
}

/// An element around text; `tag` may carry attributes.
pub(crate) fn text(tag: &str, content: &str) -> String {
    around(tag, &escape(content))
}

/// An element around markup; `tag` may carry attributes.
pub(crate) fn around(tag: &str, inner: &str) -> String {
    let name = tag.split(' ').next().unwrap_or(tag);
    format!("<{tag}>{inner}</{name}>\n")
}

/// A link within the page.
pub(crate) fn link(id: &str, content: &str) -> String {
    format!("<a href=\"#{id}\">{}</a>", escape(content))
}

/// Terms and what is said of them.
pub(crate) fn terms(terms: &[Term]) -> String {
    let inner: String = terms.iter().map(|one| text("dt", &one.term) + &text("dd", &one.said)).collect();
    if inner.is_empty() { inner } else { around("dl", &inner) }
}

/// A picture drawn for a wide and for a narrow page, of which the style shows one; or drawn once, for both.
pub(crate) fn picture(picture: &Picture) -> String {
    if let [only] = picture.drawings.as_slice() {
        return around("figure", only);
    }
    let drawn = picture.drawings.iter().zip(["wide", "narrow"]);
    let both: String = drawn.map(|(svg, width)| around(&format!("div class=\"{width}\""), svg)).collect();
    around("figure", &both)
}

impl Column {
    const fn class(self) -> &'static str {
        match self {
            Self::Text => "",
            Self::Name => " class=\"name\"",
            Self::Figure => " class=\"number\"",
            Self::Interval => " class=\"interval\"",
        }
    }
}

/// A table of more rows may be broken over sheets.
const MOST_UNBROKEN: usize = 16;

/// A table whose first column names its rows, in the making.
pub(crate) struct Table {
    caption: String,
    id: Option<String>,
    columns: Vec<(Column, String)>,
    rows: Vec<(Option<String>, Vec<String>)>,
}

impl Table {
    pub(crate) fn new(caption: String, columns: Vec<(Column, String)>) -> Self {
        Self { caption, id: None, columns, rows: Vec::new() }
    }

    /// The same table with an id that links can lead to.
    pub(crate) fn with_id(mut self, id: String) -> Self {
        self.id = Some(id);
        self
    }

    /// Adds a row of texts.
    pub(crate) fn row(&mut self, cells: Vec<String>) {
        self.rows.push((None, cells));
    }

    /// Adds a row whose first cell leads to another place of the page.
    pub(crate) fn row_leading_to(&mut self, id: String, cells: Vec<String>) {
        self.rows.push((Some(id), cells));
    }

    /// The table without the columns in which nothing stands; nothing where nothing stands in any.
    pub(crate) fn finished(self) -> Option<document::Table> {
        let used: Vec<usize> = (0..self.columns.len())
            .filter(|&at| self.rows.iter().any(|(_, row)| row.get(at).is_some_and(|cell| !cell.is_empty())))
            .collect();
        if used.is_empty() {
            return None;
        }
        let heading = |&at: &usize| {
            let (holds, text) = self.columns[at].clone();
            Heading { text, holds }
        };
        let columns = used.iter().map(heading).collect();
        let row = |(to, cells): (Option<String>, Vec<String>)| {
            let cells = used.iter().map(|&at| cells.get(at).cloned().unwrap_or_default()).collect();
            Row { to, cells }
        };
        let rows = self.rows.into_iter().map(row).collect();
        Some(document::Table { caption: self.caption, id: self.id, columns, rows })
    }
}

/// A table in a box of its own, which scrolls where the page is narrower.
pub(crate) fn table(table: &document::Table) -> String {
    let head = table
        .columns
        .iter()
        .map(|column| text(&format!("th scope=\"col\"{}", column.holds.class()), &column.text));
    let body = table.rows.iter().map(|row| row_of(table, row));
    let inner = around("caption", &text("span", &table.caption))
        + &around("thead", &around("tr", &head.collect::<String>()))
        + &around("tbody", &body.collect::<String>());
    // a box that scrolls must be reachable by keyboard, and then it needs a name
    let name = escape(&table.caption);
    let id = table.id.as_ref().map(|id| format!(" id=\"{id}\"")).unwrap_or_default();
    // a table that fits a sheet isn't torn in print
    let class = if table.rows.len() <= MOST_UNBROKEN { "table short" } else { "table" };
    let tag = format!("div class=\"{class}\"{id} tabindex=\"0\" role=\"group\" aria-label=\"{name}\"");
    around(&tag, &around("table", &inner))
}

fn row_of(table: &document::Table, row: &Row) -> String {
    let cells = row.cells.iter().zip(&table.columns).enumerate().map(|(place, (cell, column))| {
        let class = column.holds.class();
        match (place, &row.to) {
            (0, Some(id)) => around(&format!("th scope=\"row\"{class}"), &link(id, cell)),
            (0, None) => text(&format!("th scope=\"row\"{class}"), cell),
            _ => text(&format!("td{class}"), cell),
        }
    });
    around("tr", &cells.collect::<String>())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_cell_holds_never_becomes_markup() {
        let hostile = "</td><script>\"'&\u{0}";
        let safe = "&lt;/td&gt;&lt;script&gt;&quot;&#39;&amp;\u{fffd}";
        assert_eq!(escape(hostile), safe);
        let mut table = Table::new(hostile.into(), vec![(Column::Text, hostile.into())]);
        table.row_leading_to("site-1".into(), vec![hostile.into()]);
        let markup = super::table(&table.finished().unwrap());
        assert_eq!(markup.matches(safe).count(), 4, "caption, label, heading, cell");
        assert!(!markup.contains("<script"));
    }

    #[test]
    fn a_column_in_which_nothing_stands_is_left_out() {
        let column = |name: &str| (Column::Name, name.to_owned());
        let mut table = Table::new("t".into(), vec![column("a"), column("b"), column("c")]);
        table.row(vec!["1".into(), String::new(), "3".into()]);
        let markup = super::table(&table.finished().unwrap());
        assert!(markup.contains(">c</th>") && !markup.contains(">b</th>"));
    }
}
