//! The few pieces of markup that a page is made of. All text passes through [`escape`].

use core::fmt::Write;

/// Text as it may stand in markup.
pub(crate) fn escape(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
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

/// A list of texts; nothing where there are none.
pub(crate) fn list(items: &[String]) -> String {
    if items.is_empty() {
        return String::new();
    }
    around("ul", &items.iter().map(|item| text("li", item)).collect::<String>())
}

/// A picture drawn for a wide and for a narrow page; the style shows one of them.
pub(crate) fn picture(wide: &str, narrow: &str) -> String {
    around("div class=\"picture wide\"", wide) + &around("div class=\"picture narrow\"", narrow)
}

/// A table whose first column names its rows.
pub(crate) struct Table {
    caption: String,
    headings: Vec<String>,
    rows: Vec<Vec<String>>,
}

impl Table {
    pub(crate) fn new(caption: String, headings: Vec<String>) -> Self {
        Self { caption, headings, rows: Vec::new() }
    }

    /// Adds a row of texts.
    pub(crate) fn row(&mut self, cells: Vec<String>) {
        self.rows.push(cells);
    }

    /// The table in a box of its own, which scrolls where the page is narrower; columns without a word are left out.
    pub(crate) fn markup(&self) -> String {
        let used: Vec<usize> = (0..self.headings.len())
            .filter(|&at| self.rows.iter().any(|row| row.get(at).is_some_and(|cell| !cell.is_empty())))
            .collect();
        if used.is_empty() {
            return String::new();
        }
        let mut inner = text("caption", &self.caption);
        let head: String = used.iter().map(|&at| text("th scope=\"col\"", &self.headings[at])).collect();
        inner += &around("thead", &around("tr", &head));
        let mut body = String::new();
        for row in &self.rows {
            let cells = used.iter().enumerate().map(|(place, &at)| {
                let cell = row.get(at).map_or("", String::as_str);
                text(if place == 0 { "th scope=\"row\"" } else { "td" }, cell)
            });
            body += &around("tr", &cells.collect::<String>());
        }
        inner += &around("tbody", &body);
        let mut markup = String::new();
        // a box that scrolls must be reachable by keyboard, and then it needs a name
        let name = escape(&self.caption);
        let _ = write!(markup, "<div class=\"table\" tabindex=\"0\" role=\"region\" aria-label=\"{name}\">");
        markup + &around("table", &inner) + "</div>\n"
    }
}
