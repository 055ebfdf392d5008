//! The kinds of record that this version knows, and what tells two records of a kind apart.

use crate::agree::Calibration;
use crate::assess::SiteGoal;
use crate::check::Settlement;
use crate::drawn::{DrawnLayout, Replaced};
use crate::finding::Place;
use crate::goal::{Relation, Subject, Wanted};
use crate::input::SourceFile;
use crate::message::{Message, Value as Said};
use crate::photo::{self, Photo};
use crate::place::{LinePlace, Site};
use crate::plan::{PlannedLine, Stratum};
use crate::plants::PlantList;
use crate::promise::{Decision, Objective, Trigger};
use crate::protocol::Protocol;
use crate::revision::{Kind, Revision};
use crate::visit::Visit;
use serde::Deserialize;
use serde_json::Value;

/// The version of the format of every kind below.
pub const VERSION: u32 = 1;

/// A record as this version knows it.
#[derive(Clone, Debug, PartialEq)]
pub enum Payload {
    /// A planned line.
    Line(PlannedLine),
    /// What an office writes over its columns, and the heading that it stands for.
    Headings(Vec<(String, String)>),
    /// What is known of a site.
    Site(Site),
    /// Where a line lies.
    Place(LinePlace),
    /// A stratum with its area.
    Stratum(Stratum),
    /// A visit with its intercepts.
    Visit(Box<Visit>),
    /// The plant list.
    Plants(PlantList),
    /// A protocol.
    Protocol(Box<Protocol>),
    /// A goal.
    Goal(SiteGoal),
    /// A person's word on a finding.
    Settlement(Box<Settlement>),
    /// A photo.
    Photo(Box<Photo>),
    /// A reader set beside another.
    Calibration(Box<Calibration>),
    /// The files of an import.
    Import(Vec<SourceFile>),
    /// An objective.
    Objective(Box<Objective>),
    /// A trigger.
    Trigger(Box<Trigger>),
    /// A decision.
    Decision(Box<Decision>),
    /// A layout as it was drawn.
    Layout(Box<DrawnLayout>),
    /// A line of it that can't be read.
    Replaced(Box<Replaced>),
}

/// The records of every kind, by the word that a revision names the kind with; for the schema alone.
#[cfg(feature = "schema")]
#[derive(schemars::JsonSchema)]
#[expect(dead_code, reason = "only its schema is used")]
pub struct Kinds {
    line: PlannedLine,
    headings: Vec<(String, String)>,
    site: Site,
    place: LinePlace,
    stratum: Stratum,
    visit: Visit,
    plants: PlantList,
    protocol: Protocol,
    goal: SiteGoal,
    settlement: Settlement,
    photo: Photo,
    calibration: Calibration,
    import: Vec<SourceFile>,
    objective: Objective,
    trigger: Trigger,
    decision: Decision,
    layout: DrawnLayout,
    replaced: Replaced,
    content: crate::revision::Content<Value>,
    header: crate::revision::Header,
}

/// Why a revision's record is not there to be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPayload {
    /// It was taken back.
    TakenBack,
    /// It was blanked.
    Erased,
    /// A newer version wrote it; it is kept unread.
    Newer,
    /// It is not what its kind says.
    NotUnderstood,
}

/// What tells a record from every other, in the trade's own terms: two records under one key are one thing twice.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key {
    /// The kind.
    pub kind: &'static str,
    /// Site, line, date and whatever else tells it apart.
    pub parts: Vec<String>,
}

impl Key {
    /// What an objective of a site is known by.
    pub fn of_objective(site: &str, name: &str) -> Self {
        let (site, name) = (site.to_owned(), name.to_owned());
        Payload::Objective(Box::new(Objective { name, site, ..Objective::default() })).key()
    }

    /// What a trigger of a site is known by.
    pub fn of_trigger(site: &str, name: &str) -> Self {
        let (site, name) = (site.to_owned(), name.to_owned());
        Payload::Trigger(Box::new(Trigger { name, site, ..Trigger::default() })).key()
    }
}

impl Payload {
    /// What a revision holds.
    ///
    /// # Errors
    /// [`NoPayload`]
    pub fn of(revision: &Revision) -> Result<Self, NoPayload> {
        if revision.is_erased() {
            return Err(NoPayload::Erased);
        }
        if revision.head().version > VERSION {
            return Err(NoPayload::Newer);
        }
        match revision.head().kind.0.as_str() {
            "line" => typed(revision).map(Self::Line),
            "headings" => typed(revision).map(Self::Headings),
            "site" => typed(revision).map(Self::Site),
            "place" => typed(revision).map(Self::Place),
            "stratum" => typed(revision).map(Self::Stratum),
            "visit" => typed(revision).map(Self::Visit),
            "plants" => typed(revision).map(Self::Plants),
            "protocol" => typed(revision).map(Self::Protocol),
            "goal" => typed(revision).map(Self::Goal),
            "settlement" => typed(revision).map(Self::Settlement),
            photo::KIND => typed(revision).map(Self::Photo),
            "calibration" => typed(revision).map(Self::Calibration),
            "import" => typed(revision).map(Self::Import),
            "objective" => typed(revision).map(Self::Objective),
            "trigger" => typed(revision).map(Self::Trigger),
            "decision" => typed(revision).map(Self::Decision),
            "layout" => typed(revision).map(Self::Layout),
            "replaced" => typed(revision).map(Self::Replaced),
            _ => Err(NoPayload::Newer),
        }
    }

    /// Its kind.
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Line(_) => "line",
            Self::Headings(_) => "headings",
            Self::Site(_) => "site",
            Self::Place(_) => "place",
            Self::Stratum(_) => "stratum",
            Self::Visit(_) => "visit",
            Self::Plants(_) => "plants",
            Self::Protocol(_) => "protocol",
            Self::Goal(_) => "goal",
            Self::Settlement(_) => "settlement",
            Self::Photo(_) => photo::KIND,
            Self::Calibration(_) => "calibration",
            Self::Import(_) => "import",
            Self::Objective(_) => "objective",
            Self::Trigger(_) => "trigger",
            Self::Decision(_) => "decision",
            Self::Layout(_) => "layout",
            Self::Replaced(_) => "replaced",
        }
    }

    /// The kind as a revision carries it.
    pub fn kind_word(&self) -> Kind {
        Kind(self.kind().to_owned())
    }

    /// The record as JSON.
    ///
    /// # Panics
    /// never: records have text for keys, and nothing in them refuses to be written
    pub fn to_json(&self) -> Value {
        let json = match self {
            Self::Line(line) => serde_json::to_value(line),
            Self::Headings(headings) => serde_json::to_value(headings),
            Self::Site(site) => serde_json::to_value(site),
            Self::Place(place) => serde_json::to_value(place),
            Self::Stratum(stratum) => serde_json::to_value(stratum),
            Self::Visit(visit) => serde_json::to_value(visit),
            Self::Plants(plants) => serde_json::to_value(plants),
            Self::Protocol(protocol) => serde_json::to_value(protocol),
            Self::Goal(goal) => serde_json::to_value(goal),
            Self::Settlement(settlement) => serde_json::to_value(settlement),
            Self::Photo(photo) => serde_json::to_value(photo),
            Self::Calibration(one) => serde_json::to_value(one),
            Self::Import(files) => serde_json::to_value(files),
            Self::Objective(objective) => serde_json::to_value(objective),
            Self::Trigger(trigger) => serde_json::to_value(trigger),
            Self::Decision(decision) => serde_json::to_value(decision),
            Self::Layout(layout) => serde_json::to_value(layout),
            Self::Replaced(word) => serde_json::to_value(word),
        };
        json.expect("records have text for keys")
    }

    /// The same record without the files and rows that it was read from, which are no part of its meaning.
    #[must_use]
    pub fn without_places(&self) -> Self {
        let mut same = self.clone();
        match &mut same {
            Self::Visit(visit) => {
                visit.place = None;
                for intercept in &mut visit.intercepts {
                    intercept.place = None;
                }
            }
            Self::Settlement(settlement) => {
                settlement.place = Place { file: String::new(), row: 0, column: None, character: None };
            }
            _ => {}
        }
        same
    }

    /// What tells it apart. A notebook has one plant list; a protocol is its meaning.
    pub fn key(&self) -> Key {
        let parts: Vec<String> = match self {
            Self::Line(line) => vec![line.site.clone(), line.line.clone()],
            Self::Site(site) => vec![site.site.clone()],
            Self::Place(place) => vec![place.site.clone(), place.line.clone()],
            Self::Stratum(stratum) => vec![stratum.site.clone(), stratum.name.clone()],
            Self::Visit(visit) => vec![
                visit.site.clone(),
                visit.line.clone(),
                visit.date.map_or_else(String::new, |date| date.to_string()),
                visit.reader.clone(),
                visit.recorder.clone(),
                visit.pass.clone(),
            ],
            Self::Plants(_) | Self::Headings(_) => Vec::new(),
            Self::Protocol(protocol) => vec![protocol.fingerprint()],
            Self::Goal(goal) => goal_parts(goal),
            Self::Settlement(word) => vec![
                word.site.clone(),
                word.line.clone(),
                word.date.map_or_else(String::new, |date| date.to_string()),
                word.species.clone(),
                word.code.clone(),
                word.file.clone(),
                word.row.map_or_else(String::new, |row| row.to_string()),
            ],
            Self::Photo(photo) => {
                let (site, line) = (photo.site.clone(), photo.line.clone());
                vec![site, line, photo.shows.word().to_owned(), photo.sha256.clone()]
            }
            Self::Calibration(one) => {
                vec![one.site.clone(), one.date.to_string(), one.reader.clone(), one.against.clone()]
            }
            Self::Import(files) => files.iter().map(|file| file.sha256.clone()).collect(),
            Self::Objective(one) => vec![one.site.clone(), one.name.clone()],
            Self::Trigger(one) => vec![one.site.clone(), one.name.clone()],
            // another decision of the same day on the same site is another one where another trigger or person made it
            Self::Decision(one) => vec![
                one.site.clone(),
                one.date.map_or_else(String::new, |date| date.to_string()),
                one.trigger.clone(),
                one.by.clone(),
            ],
            Self::Layout(layout) => vec![layout.site.clone(), layout.names.clone()],
            Self::Replaced(word) => vec![word.site.clone(), word.line.clone()],
        };
        Key { kind: self.kind(), parts }
    }

    /// How a person would call it.
    pub fn called(&self) -> Message {
        match self {
            Self::Line(line) => of_line("record-line", &line.site, &line.line),
            Self::Headings(_) => Message::new("record-headings"),
            Self::Site(site) => Message::new("record-site").with("site", site.site.as_str()),
            Self::Place(place) => of_line("record-place", &place.site, &place.line),
            Self::Stratum(stratum) => Message::new("record-stratum")
                .with("site", stratum.site.as_str())
                .with("stratum", stratum.name.as_str()),
            Self::Visit(visit) => match visit.date {
                Some(date) => {
                    of_line("record-visit", &visit.site, &visit.line).with("date", date.to_string())
                }
                None => of_line("record-visit-undated", &visit.site, &visit.line),
            },
            Self::Plants(_) => Message::new("record-plants"),
            Self::Protocol(protocol) => Message::new("record-protocol").with("name", protocol.name.as_str()),
            Self::Goal(goal) => match &goal.site {
                Some(site) => Message::new("record-goal-site").with("site", site.as_str()),
                None => Message::new("record-goal"),
            },
            Self::Settlement(word) => Message::new("record-settlement").with("code", word.code.as_str()),
            Self::Objective(one) => Message::new("record-objective").with("name", one.name.as_str()),
            Self::Trigger(one) => Message::new("record-trigger").with("name", one.name.as_str()),
            Self::Decision(one) => Message::new("record-decision")
                .with("site", one.site.as_str())
                .with("date", one.date.map_or_else(String::new, |date| date.to_string())),
            Self::Layout(layout) => Message::new("record-layout").with("site", layout.site.as_str()),
            Self::Replaced(word) => of_line("record-replaced", &word.site, &word.line),
            Self::Photo(photo) => match photo.line.as_str() {
                "" => Message::new("record-photo-site").with("site", photo.site.as_str()),
                line => of_line("record-photo", &photo.site, line),
            },
            Self::Calibration(one) => Message::new("record-calibration")
                .with("reader", one.reader.as_str())
                .with("against", one.against.as_str())
                .with("site", one.site.as_str())
                .with("date", one.date.to_string()),
            Self::Import(files) => Message::new("record-import")
                .with("files", Said::List(files.iter().map(|file| Said::Text(file.name.clone())).collect())),
        }
    }
}

fn of_line(code: &'static str, site: &str, line: &str) -> Message {
    Message::new(code).with("site", site).with("line", line)
}

/// A goal of another source is another goal; another value from the same source is a correction.
fn goal_parts(goal: &SiteGoal) -> Vec<String> {
    let subject = match &goal.goal.subject {
        Subject::Canopy => "canopy".to_owned(),
        Subject::Sum => "sum".to_owned(),
        Subject::Dead => "dead".to_owned(),
        Subject::Species(code) => format!("species {code}"),
        Subject::Form(form) => format!("form {}", form.word()),
        Subject::Group(group) => format!("group {group}"),
    };
    let wanted = match &goal.goal.wanted {
        Wanted::Cover(relation) => ["cover", relation_word(relation)],
        Wanted::Height(relation) => ["height", relation_word(relation)],
    };
    let mut parts = vec![goal.site.clone().unwrap_or_default(), subject, goal.goal.source.clone()];
    parts.extend(wanted.map(str::to_owned));
    parts
}

const fn relation_word<T>(relation: &Relation<T>) -> &'static str {
    match relation {
        Relation::AtLeast(_) => "at-least",
        Relation::AtMost(_) => "at-most",
        Relation::Between(..) => "between",
    }
}

/// A content of which the record alone is wanted.
#[derive(Deserialize)]
struct RecordAlone<T> {
    payload: Option<T>,
}

fn typed<T: for<'de> Deserialize<'de>>(revision: &Revision) -> Result<T, NoPayload> {
    let content = revision.content_text().and_then(|text| serde_json::from_str(text).ok());
    let content: RecordAlone<T> = content.ok_or(NoPayload::NotUnderstood)?;
    content.payload.ok_or(NoPayload::TakenBack)
}
