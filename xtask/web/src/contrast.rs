//! The tokens' colours held to their contrast, by the arithmetic of the standard.

use std::collections::BTreeMap;

const TOKENS: &str = include_str!("../../../crates/app/style/tokens.css");

/// Colours by their names.
type Colours = BTreeMap<String, [u8; 3]>;

/// The colours of the block that begins with a selector.
fn block(selector: &str) -> Colours {
    let start =
        TOKENS.find(&format!("{selector} {{")).unwrap_or_else(|| panic!("there is no block {selector}"));
    let body = &TOKENS[start..];
    let body = &body[body.find('{').expect("just found") + 1..body.find('}').expect("a block ends")];
    body.split(';')
        .filter_map(|rule| rule.trim().strip_prefix("--")?.split_once(": #"))
        .map(|(name, hex)| {
            let part = |at: usize| u8::from_str_radix(&hex[at..at + 2], 16).expect("six hexadecimal digits");
            (name.to_owned(), [part(0), part(2), part(4)])
        })
        .collect()
}

/// WCAG 2.2 (W3C Recommendation, 2024), definition of relative luminance, with its threshold of 0.04045.
fn luminance(colour: [u8; 3]) -> f64 {
    let [r, g, b] = colour.map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

/// WCAG 2.2, definition of contrast ratio.
fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// What is read on what.
const TEXTS: [(&str, &str); 15] = [
    ("ink", "ground"),
    ("ink", "raised"),
    ("ink", "tape"),
    ("ground", "ink"),
    ("quiet", "ground"),
    ("quiet", "raised"),
    ("accent", "ground"),
    ("accent", "raised"),
    ("on-accent", "accent"),
    ("met", "ground"),
    ("met", "raised"),
    ("not-met", "ground"),
    ("not-met", "raised"),
    ("not-yet-shown", "ground"),
    ("not-yet-shown", "raised"),
];

/// What must be told from what lies beside it (WCAG 2.2, 1.4.11 and 2.4.13).
const EDGES: [(&str, &str); 6] = [
    ("line", "ground"),
    ("line", "raised"),
    ("edge", "ground"),
    ("focus", "ground"),
    ("focus", "raised"),
    ("ink", "tape"),
];

#[test]
fn the_arithmetic_is_the_standard_s() {
    // black on white is 21 to 1 by the definition; #767676 on white is the grey that just passes 4.5 (common practice)
    assert!((contrast([0; 3], [255; 3]) - 21.0).abs() < 1e-9);
    assert!((4.5..4.6).contains(&contrast([0x76; 3], [255; 3])));
}

#[test]
fn every_set_of_colours_is_legible() {
    for (selector, least) in
        [(":root", 4.5), (":root[data-theme=\"dark\"]", 4.5), (":root[data-theme=\"sunlight\"]", 7.0)]
    {
        let colours = block(selector);
        for (pairs, least) in [(&TEXTS[..], least), (&EDGES[..], 3.0)] {
            for (one, other) in pairs {
                let ratio = contrast(colours[*one], colours[*other]);
                assert!(ratio >= least, "{selector}: {one} on {other} has {ratio:.2}, wanted {least}");
            }
        }
    }
}

#[test]
fn dark_is_the_same_asked_for_or_preferred() {
    assert_eq!(block(":root[data-theme=\"dark\"]"), block(":root:not([data-theme])"));
    assert_eq!(
        block(":root").keys().collect::<Vec<_>>(),
        block(":root[data-theme=\"sunlight\"]").keys().collect::<Vec<_>>()
    );
}
