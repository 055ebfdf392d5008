//! The page as a whole: well formed, alone, the same for the same input, and usable without eyes or mouse.

use crate::reader::{all, says, tree, words};
use crate::sites::{HOSTILE, asked, four_lines, hostile, mixed, page, several_sites};
use roxmltree::{Document, Node};
use tautline_report::{Reader, Telling, page_of};
use tautline_survey::assess::{Question, assess};
use tautline_words::Words;

fn several() -> String {
    page(&several_sites(), &asked("at least 14 %"))
}

fn attribute<'a>(tree: &'a Document, name: &'a str) -> Vec<&'a str> {
    tree.descendants().filter_map(|node| node.attribute(name)).collect()
}

fn level(node: &Node) -> Option<u8> {
    let name = node.tag_name().name().as_bytes();
    matches!(name, [b'h', b'1'..=b'6']).then(|| name[1] - b'0')
}

#[test]
fn it_stands_alone() {
    let page = several();
    // the name of the vector markup is no address, and `url(#…)` points into the page itself
    let own = page.replace("xmlns=\"http://www.w3.org/2000/svg\"", "").replace("url(#", "");
    for foreign in ["<script", "http:", "https:", "url(", "@import", " src=", "<link", "<iframe", " on"] {
        let found = own.match_indices(foreign).map(|(at, _)| own[at..].chars().take(40).collect::<String>());
        let found: Vec<String> = found.filter(|text| foreign != " on" || is_a_handler(text)).collect();
        assert!(found.is_empty(), "{foreign}: {found:?}");
    }
}

/// ` onclick="…"` and its like.
fn is_a_handler(text: &str) -> bool {
    let rest = text[3..].trim_start_matches(|c: char| c.is_ascii_lowercase());
    rest.starts_with("=\"")
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    assert_eq!(several(), several());
    let input = mixed();
    let question = asked("at least 14 %");
    assert_eq!(page(&input, &question), page(&input.clone(), &question));
}

#[test]
fn what_people_wrote_never_becomes_markup() {
    let page = page(&hostile(), &asked("at least 14 %"));
    let tree = tree(&page);
    for name in ["script", "b"] {
        assert_eq!(all(&tree, name).count(), 0, "{name}");
    }
    assert_eq!(attribute(&tree, "onclick"), Vec::<&str>::new());
    assert_eq!(page.matches("</style>").count(), 1);
    assert_eq!(
        page.matches("</title>").count(),
        1 + page.matches("<svg").count(),
        "one of the page, one a picture"
    );
    let shown = HOSTILE.replace('\u{1}', "\u{fffd}");
    says(&page, &[shown.trim()]);
}

#[test]
fn ids_are_given_once_and_every_link_leads_somewhere() {
    for page in [several(), page(&mixed(), &Question::default()), page(&hostile(), &asked("at least 14 %"))] {
        let tree = tree(&page);
        let mut ids = attribute(&tree, "id");
        let given = ids.len();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(given, ids.len());
        let links = attribute(&tree, "href");
        assert!(links.len() > 10, "{links:?}");
        for link in links {
            let id = link.strip_prefix('#').expect("links stay on the page");
            assert!(ids.contains(&id), "{link} leads nowhere");
        }
        for attribute_name in ["aria-labelledby", "aria-describedby"] {
            for id in attribute(&tree, attribute_name) {
                assert!(ids.contains(&id), "{attribute_name} {id}");
            }
        }
    }
}

#[test]
fn headings_are_in_order_and_landmarks_are_there() {
    for page in
        [several(), page(&mixed(), &Question::default()), page(&four_lines("One"), &asked("at least 14 %"))]
    {
        let tree = tree(&page);
        let levels: Vec<u8> = tree.descendants().filter_map(|node| level(&node)).collect();
        assert_eq!(
            levels.iter().filter(|level| **level == 1).collect::<Vec<_>>().len(),
            1,
            "one heading for the whole page"
        );
        assert_eq!(levels[0], 1);
        assert!(levels.windows(2).all(|pair| pair[1] <= pair[0] + 1), "headings skip a level: {levels:?}");
        for landmark in ["main", "footer"] {
            assert_eq!(all(&tree, landmark).count(), 1, "{landmark}");
        }
        for nav in all(&tree, "nav") {
            assert!(nav.attribute("aria-label").or(nav.attribute("aria-labelledby")).is_some());
        }
        let first_link = all(&tree, "a").next().unwrap();
        assert_eq!(first_link.attribute("href"), Some("#main"), "the first link skips to the report");
        assert_eq!(all(&tree, "html").next().unwrap().attribute("lang"), Some("en"));
    }
}

#[test]
fn every_table_says_what_it_is_and_scrolls_by_itself() {
    let page = several();
    let tree = tree(&page);
    let mut tables = 0;
    for table in all(&tree, "table") {
        tables += 1;
        let caption = table.first_element_child().unwrap();
        assert_eq!(caption.tag_name().name(), "caption");
        assert!(!words(caption).is_empty());
        for head in table.descendants().filter(|node| node.tag_name().name() == "th") {
            let inside = head.ancestors().any(|around| around.tag_name().name() == "thead");
            assert_eq!(head.attribute("scope"), Some(if inside { "col" } else { "row" }));
        }
        let scrolls = table.parent().unwrap();
        assert_eq!(scrolls.attribute("tabindex"), Some("0"));
        assert!(scrolls.attribute("aria-label").is_some_and(|label| !label.is_empty()));
        let widths = table
            .descendants()
            .filter(|node| node.tag_name().name() == "tr")
            .map(|row| row.children().filter(Node::is_element).count());
        let widths: Vec<usize> = widths.collect();
        assert!(widths.windows(2).all(|pair| pair[0] == pair[1]), "{widths:?}");
    }
    assert!(tables > 20, "only {tables} tables");
}

#[test]
fn every_picture_has_a_text() {
    let page = several();
    let tree = tree(&page);
    let mut pictures = 0;
    for svg in all(&tree, "svg") {
        pictures += 1;
        assert_eq!(svg.attribute("role"), Some("img"));
        for name in ["title", "desc"] {
            let text = svg.children().find(|child| child.tag_name().name() == name).map(words);
            assert!(text.is_some_and(|text| text.len() > 5), "a picture without {name}");
        }
    }
    assert!(pictures > 20, "only {pictures} pictures");
}

#[test]
fn the_newest_year_of_a_site_comes_first() {
    let page = several();
    let tree = tree(&page);
    let sites = all(&tree, "h2").filter(|heading| heading.attribute("id").unwrap().starts_with("site-"));
    let sites: Vec<String> = sites.map(words).collect();
    assert_eq!(sites, ["B 2, 2026", "B 2, 2024", "B 2, 2022", "B 10, 2025"]);
}

#[test]
fn print_has_its_own_style() {
    let page = several();
    for wanted in ["@media print", "@page", "table-header-group", "break-inside:avoid", "counter(page)"] {
        assert!(page.contains(wanted), "{wanted}");
    }
    // neither size of sheet is forced, so A4 and Letter both fill
    assert!(!page.contains("{size:") && !page.contains(";size:"), "a sheet's size is the printer's");
}

/// The contrast of two colours `#rrggbb`.
///
/// Source: Web Content Accessibility Guidelines 2.2, relative luminance and contrast ratio.
fn contrast(one: &str, other: &str) -> f64 {
    let luminance = |colour: &str| {
        let channel = |at: usize| {
            let value = f64::from(u8::from_str_radix(&colour[at..at + 2], 16).unwrap()) / 255.0;
            if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
    };
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// The guidelines' own example: #777777 on white has 4.48 to 1, which is too little, and black on white 21 to 1.
#[test]
fn words_stand_out_from_the_ground_in_light_dark_and_print() {
    assert!((contrast("#777777", "#ffffff") - 4.48).abs() < 0.005);
    assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 1e-9);
    let long = |colour: &str| match colour.len() {
        4 => colour.chars().skip(1).fold("#".to_owned(), |long, digit| format!("{long}{digit}{digit}")),
        _ => colour.to_owned(),
    };
    let page = several();
    let sets: Vec<&str> = page.split("--ground:").skip(1).filter_map(|rest| rest.split('}').next()).collect();
    assert_eq!(sets.len(), 3, "light, dark, print");
    for set in sets {
        let set = format!("--ground:{set}");
        let colour = |name: &str| {
            let value = set.split(&format!("--{name}:")).nth(1).unwrap();
            long(value.split(';').next().unwrap())
        };
        for name in ["ink", "quiet", "accent"] {
            let found = contrast(&colour(name), &colour("ground"));
            assert!(found >= 4.5, "{name} in {set}: {found}");
        }
    }
}

/// Folded on a screen, and reached from every answer; a landowner's page has no more of it than its answers use.
#[test]
fn what_the_words_mean_is_told_to_every_reader() {
    let (input, question) = (several_sites(), asked("at least 14 %"));
    let assessments = assess(&input, &question);
    let catalogue = Words::english();
    let told = |reader| {
        let page = page_of(&Telling::new(&input, &question, &assessments, &catalogue).to(reader));
        let tree = tree(&page);
        let folded: Vec<String> = all(&tree, "summary").map(words).collect();
        for one in all(&tree, "details") {
            assert_eq!(one.descendants().filter(|node| node.tag_name().name() == "svg").count(), 1);
            assert_eq!(one.attribute("open"), None);
        }
        let jumps = attribute(&tree, "href").into_iter().filter(|to| *to == "#meanings").count();
        let answers =
            all(&tree, "p").filter(|node| node.attribute("class").is_some_and(|c| c.starts_with("verdict")));
        assert!(jumps > 1 && jumps <= answers.count(), "{jumps}");
        folded
    };
    let few = ["Cover", "Interval", "Verdict", "Smallest change"];
    assert_eq!(told(Reader::Landowner), few);
    let most = ["Cover", "Gap rule", "Sum of species", "Interval", "Verdict", "Smallest change"];
    assert_eq!(told(Reader::Specialist), most);
    assert_eq!(told(Reader::Board), most);
}
