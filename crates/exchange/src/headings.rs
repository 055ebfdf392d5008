//! Headings: matched with letter case, white space and punctuation aside, with a unit in brackets or behind.

use tautline_engine::length::Bare;

/// A column that is understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "each variant is the heading it stands for; docs/files.md describes them")]
pub enum Column {
    Site,
    Line,
    LineLength,
    Stratum,
    Plot,
    Judgement,
    Slope,
    StartLatitude,
    StartLongitude,
    EndLatitude,
    EndLongitude,
    Ownership,
    Nest,
    Places,
    PermissionFrom,
    PermissionUntil,
    Date,
    Reader,
    Recorder,
    Pass,
    Protocol,
    Species,
    Start,
    Stop,
    Length,
    State,
    Plant,
    Height,
    Width,
    Note,
    Unit,
    HeightUnit,
    Outcome,
    ReadTo,
    Code,
    Name,
    CommonName,
    Form,
    Groups,
    KeyFeatures,
    Area,
    Goal,
    Source,
    Confidence,
    Finding,
    File,
    Row,
    SettledBy,
    SettledOn,
    Reason,
}

/// Every heading that is understood, as `docs/files.md` lists them; the first of each column is its plain one.
pub const HEADINGS: [(Column, &[&str]); 50] = [
    (Column::Site, &["site", "site name", "site id"]),
    (Column::Line, &["line", "line name", "line id", "transect"]),
    (Column::LineLength, &["line length", "tape length", "transect length"]),
    (Column::Stratum, &["stratum"]),
    (Column::Plot, &["plot"]),
    (Column::Judgement, &["chosen by judgement"]),
    (Column::Slope, &["slope"]),
    (Column::StartLatitude, &["start latitude", "latitude"]),
    (Column::StartLongitude, &["start longitude", "longitude"]),
    (Column::EndLatitude, &["end latitude"]),
    (Column::EndLongitude, &["end longitude"]),
    (Column::Ownership, &["ownership"]),
    (Column::Nest, &["nest"]),
    (Column::Places, &["places"]),
    (Column::PermissionFrom, &["permission from"]),
    (Column::PermissionUntil, &["permission until"]),
    (Column::Date, &["date", "read on"]),
    (Column::Reader, &["reader", "observer", "observers", "read by"]),
    (Column::Recorder, &["recorder", "written by"]),
    (Column::Pass, &["pass"]),
    (Column::Protocol, &["protocol"]),
    (Column::Species, &["species", "plant code", "species code"]),
    (Column::Start, &["start", "from", "begin"]),
    (Column::Stop, &["stop", "to", "end"]),
    (Column::Length, &["length", "intercept", "intercept length"]),
    (Column::State, &["state", "live or dead", "live dead", "live", "alive", "status"]),
    (Column::Plant, &["plant", "plant mark", "plant number"]),
    (Column::Height, &["height"]),
    (Column::Width, &["width", "crown width"]),
    (Column::Note, &["note", "notes", "remark", "remarks", "comment", "comments"]),
    (Column::Unit, &["unit", "units"]),
    (Column::HeightUnit, &["height unit"]),
    (Column::Outcome, &["outcome", "line outcome"]),
    (Column::ReadTo, &["read to"]),
    (Column::Code, &["code"]),
    (Column::Name, &["name", "scientific name"]),
    (Column::CommonName, &["common name", "common"]),
    (Column::Form, &["form", "growth form"]),
    (Column::Groups, &["groups", "group"]),
    (Column::KeyFeatures, &["key features"]),
    (Column::Area, &["area"]),
    (Column::Goal, &["goal"]),
    (Column::Source, &["source"]),
    (Column::Confidence, &["confidence"]),
    (Column::Finding, &["finding"]),
    (Column::File, &["file"]),
    (Column::Row, &["row"]),
    (Column::SettledBy, &["settled by"]),
    (Column::SettledOn, &["settled on"]),
    (Column::Reason, &["reason"]),
];

impl Column {
    /// The plain heading of the column.
    pub fn heading(self) -> &'static str {
        HEADINGS.iter().find(|(column, _)| *column == self).map_or("", |(_, headings)| headings[0])
    }
}

/// One heading of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// As it stands in the file.
    pub text: String,
    /// The column it names, if it is understood.
    pub column: Option<Column>,
    /// The words of a unit beside it: `in`, `ha`, `decimal ft`.
    pub unit: Option<String>,
}

impl Heading {
    /// What a bare number in this column means, if the heading says so.
    pub fn bare(&self) -> Option<Bare> {
        self.unit.as_deref().and_then(Bare::from_words)
    }
}

fn plain(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// The column that a heading without unit names.
pub(crate) fn column(text: &str) -> Option<Column> {
    let wanted = plain(text);
    HEADINGS
        .iter()
        .find(|(_, headings)| headings.iter().any(|heading| plain(heading) == wanted))
        .map(|(c, _)| *c)
}

/// Reads a heading: the column's name, and a unit in brackets or as the last word.
///
/// # Example
/// ```
/// use tautline_exchange::headings::{Column, heading};
/// let found = heading("Start (in)");
/// assert_eq!((found.column, found.unit.as_deref()), (Some(Column::Start), Some("in")));
/// assert_eq!(heading("stop_cm").unit.as_deref(), Some("cm"));
/// assert_eq!(heading("Grazing").column, None);
/// ```
pub fn heading(text: &str) -> Heading {
    let text = text.trim();
    let named = |column, unit: Option<&str>| Heading {
        text: text.to_owned(),
        column,
        unit: unit.map(|unit| unit.trim().to_owned()).filter(|unit| !unit.is_empty()),
    };
    if let Some((name, rest)) = text.split_once(['(', '['])
        && let Some(found) = column(name)
    {
        return named(Some(found), Some(rest.trim_end_matches([')', ']'])));
    }
    if let Some(found) = column(text) {
        return named(Some(found), None);
    }
    if let Some((name, unit)) = text.rsplit_once(['_', ' ', '-'])
        && let Some(found) = column(name)
        && (Bare::from_words(unit).is_some() || square_millimetres(unit).is_some())
    {
        return named(Some(found), Some(unit));
    }
    named(None, None)
}

/// The same, with an office's own headings beside those that are understood; a unit may stand behind them too.
///
/// # Example
/// ```
/// use tautline_exchange::headings::{Column, heading_under};
/// let own = [("Inicio".to_owned(), "start".to_owned())];
/// let found = heading_under("inicio (cm)", &own);
/// assert_eq!((found.text.as_str(), found.column, found.unit.as_deref()), ("inicio (cm)", Some(Column::Start), Some("cm")));
/// ```
pub fn heading_under(text: &str, own: &[(String, String)]) -> Heading {
    let (name, unit) = text.split_once(['(', '[']).unwrap_or((text, ""));
    let unit = unit.trim_end().trim_end_matches([')', ']']);
    let meant = own.iter().find_map(|(theirs, ours)| {
        if plain(theirs) == plain(text) {
            Some(heading(ours))
        } else {
            (plain(theirs) == plain(name)).then(|| heading(&format!("{ours} ({unit})")))
        }
    });
    meant.map_or_else(|| heading(text), |meant| Heading { text: text.trim().to_owned(), ..meant })
}

/// How many square millimetres make one of an area's unit.
pub fn square_millimetres(unit: &str) -> Option<u64> {
    Some(match unit.trim().to_lowercase().as_str() {
        "m2" | "m²" | "square metres" | "square meters" => 1_000_000,
        "ha" | "hectare" | "hectares" => 10_000_000_000,
        "km2" | "km²" => 1_000_000_000_000,
        // 43 560 square international feet of 304.8 mm: 4 046 856 422.4 mm², to the nearest whole
        "ac" | "acre" | "acres" => 4_046_856_422,
        _ => return None,
    })
}
