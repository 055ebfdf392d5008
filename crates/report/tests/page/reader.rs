//! Reads a page back: its elements, texts and tables.

use roxmltree::{Document, Node};

/// A page as a tree; that it can be read at all shows that it is well formed.
pub(crate) fn tree(page: &str) -> Document<'_> {
    let options = roxmltree::ParsingOptions { allow_dtd: true, ..roxmltree::ParsingOptions::default() };
    Document::parse_with_options(page, options).unwrap()
}

/// Every element with this name, in order.
pub(crate) fn all<'a>(tree: &'a Document, name: &'a str) -> impl Iterator<Item = Node<'a, 'a>> {
    tree.descendants().filter(move |node| node.is_element() && node.tag_name().name() == name)
}

/// The words within an element; white space and no-break spaces as single spaces.
pub(crate) fn words(node: Node) -> String {
    let outside = |text: &Node| !text.ancestors().any(|around| around.tag_name().name() == "style");
    let pieces: Vec<&str> = node
        .descendants()
        .filter(|one| one.is_text() && outside(one))
        .filter_map(|text| text.text())
        .collect();
    pieces.join(" ").replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Insists that the page says all of these.
pub(crate) fn says(page: &str, wanted: &[&str]) {
    let text = words(tree(page).root());
    for wanted in wanted {
        assert!(text.contains(wanted), "“{wanted}” isn't on the page:\n{text}");
    }
}

/// The rows of the first table with this caption, each cell under its heading.
pub(crate) fn table(page: &str, caption: &str) -> Vec<Vec<(String, String)>> {
    let tree = tree(page);
    let found = all(&tree, "table").find(|table| {
        table.children().any(|child| child.tag_name().name() == "caption" && words(child) == caption)
    });
    let table = found.unwrap_or_else(|| panic!("there is no table “{caption}”"));
    let rows: Vec<Vec<String>> = table
        .descendants()
        .filter(|node| node.tag_name().name() == "tr")
        .map(|row| row.children().filter(Node::is_element).map(words).collect())
        .collect();
    let headings = &rows[0];
    rows[1..].iter().map(|row| headings.iter().cloned().zip(row.iter().cloned()).collect()).collect()
}

/// The cells of one column of a table.
pub(crate) fn column(page: &str, caption: &str, heading: &str) -> Vec<String> {
    let cell = |row: &Vec<(String, String)>| {
        let found = row.iter().find(|(name, _)| name == heading).map(|(_, cell)| cell.clone());
        found.unwrap_or_else(|| panic!("“{caption}” has no column “{heading}”: {row:?}"))
    };
    table(page, caption).iter().map(cell).collect()
}
