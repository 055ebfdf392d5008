//! Graded results, as `tautline practice grade --json` and the app hand them out, read again as lessons.

use serde::Deserialize;
use tautline_survey::date::Date;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::message::Message;
use tautline_survey::practice::{Lesson, Parts};

const FORMAT: &str = "tautline.practice-grade";
/// The newest version of the format that is understood.
const VERSION: u32 = 1;

#[derive(Deserialize)]
struct Head {
    format: String,
    version: u32,
}

#[derive(Deserialize)]
struct Results {
    parts: Option<Marks>,
    sheets: Vec<Sheet>,
}

#[derive(Clone, Copy, Deserialize)]
struct Marks {
    edges: f64,
    species: f64,
    cover: f64,
    arithmetic: f64,
}

impl Marks {
    const fn parts(self) -> Parts {
        Parts { edges: self.edges, species: self.species, cover: self.cover, arithmetic: self.arithmetic }
    }
}

#[derive(Deserialize)]
struct Sheet {
    name: String,
    line: String,
    date: Option<String>,
    key: f64,
    rows: f64,
    stated: Option<String>,
    #[serde(flatten)]
    marks: Marks,
    #[serde(default)]
    intercepts: Vec<Intercept>,
    mistake: Option<Mistake>,
}

#[derive(Deserialize)]
struct Intercept {
    found: String,
}

#[derive(Deserialize)]
struct Mistake {
    mistake: String,
}

impl Sheet {
    fn lesson(self, most: Option<Parts>) -> Lesson {
        let percent = |text: &String| text.trim().trim_end_matches('%').trim().parse::<f64>().ok();
        let stated = self.stated.as_ref().and_then(percent);
        let right = self.intercepts.iter().filter(|one| one.found == "practice-right").count();
        Lesson {
            date: self.date.as_deref().and_then(Date::read),
            key: self.key,
            handed_in: stated.map_or(self.rows, |stated| stated / 100.0),
            marks: self.marks.parts(),
            most,
            right: (right, self.intercepts.len()),
            habit: self.mistake.map(|one| one.mistake),
            name: self.name,
            line: self.line,
        }
    }
}

/// Reads one file of graded results, or several one after another in a file; what is none is named, and what stands before it is
/// kept.
///
/// # Example
/// ```
/// let text = r#"{"format":"tautline.practice-grade","version":1,"sheets":[{"name":"Ada","line":"2-4","key":0.2,"rows":0.23,
///     "stated":null,"edges":10,"species":10,"cover":4,"arithmetic":0}]}"#;
/// let (lessons, findings) = tautline_exchange::practice::results("june.json", &[text, "\n", text, "{}"].concat());
/// assert!(lessons.len() == 2 && (lessons[0].error() - 3.0).abs() < 1e-9);
/// assert_eq!(findings[0].message.code, "practice-not-results");
/// assert_eq!(tautline_exchange::practice::results("a.csv", "name,line").1[0].message.code, "practice-not-results");
/// ```
pub fn results(file: &str, text: &str) -> (Vec<Lesson>, Vec<Finding>) {
    let mut lessons = Vec::new();
    let mut documents = serde_json::Deserializer::from_str(text).into_iter::<serde_json::Value>();
    let mut begins = 0;
    let mut any = false;
    while let Some(document) = documents.next() {
        match document.map_err(|_| broken(any)).and_then(one) {
            Ok(read) => lessons.extend(read),
            Err(code) => {
                let before = text.get(..begins).unwrap_or_default();
                let row = 1 + before.matches('\n').count();
                let row = u64::try_from(row).unwrap_or(1);
                let place = Place { file: file.to_owned(), row, column: None, character: None };
                return (lessons, vec![Finding::must_settle(Message::new(code)).at(place)]);
            }
        }
        any = true;
        begins = documents.byte_offset();
    }
    if !any {
        let place = Place { file: file.to_owned(), row: 1, column: None, character: None };
        return (lessons, vec![Finding::must_settle(Message::new("practice-not-results")).at(place)]);
    }
    (lessons, Vec::new())
}

/// What breaks off behind good results is one of them; what never began is none.
const fn broken(any: bool) -> &'static str {
    if any { "practice-broken-results" } else { "practice-not-results" }
}

/// The lessons of one document, or the code for why it isn't read.
fn one(document: serde_json::Value) -> Result<Vec<Lesson>, &'static str> {
    let head = Head::deserialize(&document).ok().filter(|head| head.format == FORMAT);
    if head.ok_or("practice-not-results")?.version > VERSION {
        return Err("practice-newer-results");
    }
    let read = Results::deserialize(document).map_err(|_| "practice-broken-results")?;
    let most = read.parts.map(Marks::parts);
    Ok(read.sheets.into_iter().map(|sheet| sheet.lesson(most)).collect())
}
