//! Reads a picture back as a strict reader would: tags balanced, entities known, shapes with their extent.

/// One element of a picture.
#[derive(Debug)]
pub(crate) struct Element {
    pub(crate) name: String,
    pub(crate) attributes: Vec<(String, String)>,
    /// The text directly inside it.
    pub(crate) text: String,
    /// Inside `defs`: a pattern's own parts, which lie in the pattern's own space.
    pub(crate) defined: bool,
}

/// Left, top, right, bottom.
pub(crate) type Extent = [f64; 4];

impl Element {
    pub(crate) fn attribute(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(found, _)| found == name).map(|(_, value)| value.as_str())
    }

    pub(crate) fn number(&self, name: &str) -> f64 {
        let value = self.attribute(name).unwrap_or_else(|| panic!("{name} is missing in {self:?}"));
        let number: f64 = value.parse().unwrap_or_else(|_| panic!("{name} is no number in {self:?}"));
        assert!(number.is_finite(), "{name} is not finite in {self:?}");
        number
    }

    pub(crate) fn has_class(&self, class: &str) -> bool {
        self.attribute("class").is_some_and(|classes| classes.split(' ').any(|found| found == class))
    }

    /// The extents of the parts of a path, or the one extent of a rectangle or text; without line widths.
    pub(crate) fn extents(&self) -> Vec<Extent> {
        match self.name.as_str() {
            "rect" => {
                let [x, y] = ["x", "y"].map(|name| self.number(name));
                let [width, height] = ["width", "height"].map(|name| self.number(name));
                assert!(width >= 0.0 && height >= 0.0, "{self:?}");
                vec![[x, y, x + width, y + height]]
            }
            "path" => {
                let drawn = self.attribute("d").and_then(|drawn| drawn.strip_prefix('M'));
                drawn.expect("a path begins with a move").split('M').map(way).collect()
            }
            "text" => {
                let [x, base, size] = ["x", "y", "font-size"].map(|name| self.number(name));
                let width: f64 = self.text.chars().map(advance).sum::<f64>() * size;
                let left = match self.attribute("text-anchor") {
                    None => x,
                    Some("middle") => x - width / 2.0,
                    Some("end") => x - width,
                    Some(other) => panic!("unknown anchor {other}"),
                };
                vec![[left, base - size * 0.8, left + width, base + size * 0.25]]
            }
            other => panic!("{other} is not drawn here"),
        }
    }
}

/// The width of a letter in ems: DejaVu Sans, from its metrics (i, j, l 0.28; stops and space 0.32; m 0.97),
/// the other letters about 0.6.
fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' => 0.28,
        '.' | ',' | ' ' | '\'' => 0.32,
        'm' | 'W' => 0.97,
        _ => 0.6,
    }
}

/// The extent of one part of a way, after its M.
fn way(part: &str) -> Extent {
    let numbers = |text: &str| -> Vec<f64> {
        text.split_whitespace().map(|number| number.parse().expect("a number in a way")).collect()
    };
    let mut extent = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    let mut at = [0.0, 0.0];
    let mut command = 'M';
    let mut rest = part;
    loop {
        let end = rest.find(|letter: char| letter.is_ascii_alphabetic()).unwrap_or(rest.len());
        match (command, numbers(&rest[..end]).as_slice()) {
            ('M' | 'L', &[x, y]) => at = [x, y],
            ('H', &[x]) => at[0] = x,
            ('V', &[y]) => at[1] = y,
            ('Z', []) => {}
            (command, numbers) => panic!("{command} with {numbers:?}"),
        }
        assert!(at.iter().all(|place| place.is_finite()));
        extent = [extent[0].min(at[0]), extent[1].min(at[1]), extent[2].max(at[0]), extent[3].max(at[1])];
        let Some(next) = rest[end..].chars().next() else { return extent };
        command = next;
        rest = &rest[end + 1..];
    }
}

/// The elements of a picture in the order they open; panics where it is not well-formed.
pub(crate) fn read(svg: &str) -> Vec<Element> {
    let mut elements: Vec<Element> = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    let mut rest = svg;
    while let Some(start) = rest.find('<') {
        let text = plain(&rest[..start]);
        match open.last() {
            Some(&inside) => elements[inside].text.push_str(&text),
            None => assert!(text.trim().is_empty(), "text outside of the picture: {text}"),
        }
        let end = start + rest[start..].find('>').expect("every tag is closed");
        let tag = &rest[start + 1..end];
        rest = &rest[end + 1..];
        if let Some(name) = tag.strip_prefix('/') {
            let closed = open.pop().expect("nothing closes that was not open");
            assert_eq!(elements[closed].name, name);
            continue;
        }
        assert!(!open.is_empty() || elements.is_empty(), "one root only");
        let (tag, alone) = tag.strip_suffix('/').map_or((tag, false), |tag| (tag, true));
        let (name, attributes) = tag.split_once(' ').unwrap_or((tag, ""));
        let defined = open.iter().any(|&at| elements[at].name == "defs");
        let attributes = read_attributes(attributes);
        elements.push(Element { name: name.to_owned(), attributes, text: String::new(), defined });
        if !alone {
            open.push(elements.len() - 1);
        }
    }
    assert!(rest.trim().is_empty() && open.is_empty(), "the picture ends with its last tag");
    elements
}

fn read_attributes(mut text: &str) -> Vec<(String, String)> {
    let mut attributes: Vec<(String, String)> = Vec::new();
    while !text.is_empty() {
        let (name, after) = text.split_once("=\"").expect("an attribute has a quoted value");
        let (value, after) = after.split_once('"').expect("a quoted value ends");
        assert!(name.chars().all(|letter| letter.is_ascii_alphabetic() || letter == '-'), "{name}");
        assert!(attributes.iter().all(|(found, _)| found != name), "{name} twice");
        attributes.push((name.to_owned(), plain(value)));
        text = after.trim_start();
    }
    attributes
}

/// The text that escaped text stands for.
fn plain(escaped: &str) -> String {
    let forbidden = |letter: char| (letter < ' ' && !"\t\n\r".contains(letter)) || letter == '<';
    assert!(!escaped.contains(forbidden), "{escaped:?}");
    let mut parts = escaped.split('&');
    let mut text = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let (entity, after) = part.split_once(';').expect("an entity ends");
        text.push(match entity {
            "amp" => '&',
            "lt" => '<',
            "gt" => '>',
            "quot" => '"',
            "#39" => '\'',
            other => panic!("unknown entity {other}"),
        });
        text.push_str(after);
    }
    text
}

/// Panics unless the picture is well-formed, everything drawn lies within its frame, every reference leads to
/// an id of its own, and it carries neither style nor script. Gives back its elements.
pub(crate) fn sound(svg: &str) -> Vec<Element> {
    let elements = read(svg);
    let root = &elements[0];
    assert_eq!((root.name.as_str(), root.attribute("role")), ("svg", Some("img")));
    let view = root.attribute("viewBox").expect("a picture has a frame");
    let frame: Vec<f64> =
        view.split(' ').map(|number| number.parse().expect("a number in the frame")).collect();
    let ids: Vec<&str> = elements.iter().filter_map(|element| element.attribute("id")).collect();
    for element in &elements {
        assert!(!["script", "style", "image", "a"].contains(&element.name.as_str()));
        for (name, value) in &element.attributes {
            assert!(name != "style" && !name.starts_with("on"), "{element:?}");
            let fragment = value.strip_prefix("url(#").and_then(|rest| rest.strip_suffix(')'));
            let named = name.starts_with("aria-").then_some(value.as_str());
            if let Some(id) = fragment.or(named) {
                assert_eq!(ids.iter().filter(|found| **found == id).count(), 1, "{id}");
            }
        }
        if element.defined || !["rect", "path", "text"].contains(&element.name.as_str()) {
            continue;
        }
        let line = element.attribute("stroke-width").map_or(0.0, |_| element.number("stroke-width") / 2.0);
        // coordinates are rounded to a hundredth
        let slack = 0.01;
        for [left, top, right, bottom] in element.extents() {
            let inside = left - line >= -slack
                && top - line >= -slack
                && right + line <= frame[2] + slack
                && bottom + line <= frame[3] + slack;
            assert!(inside, "outside of {frame:?}: {element:?}");
        }
    }
    elements
}
