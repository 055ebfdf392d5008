//! What each column of a readings table is to the quick reader.

use super::cells::Scale;
use crate::delimited::{Kind, Options, Sheet};
use crate::headings::{Column, Heading};
use crate::text;
use tautline_engine::length::{Bare, DecimalMark};

/// How much of a file must hold its heading row.
pub(super) const HEAD: usize = 64 * 1024;

/// What a column is to the quick reader.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Site,
    Line,
    LineLength,
    Date,
    /// Reader, recorder, pass: they tell visits apart.
    TellsApart,
    Species,
    Start,
    Stop,
    State,
    /// A length that moves no canopy, but must be one: height, width.
    OtherLength,
    /// The plant's mark.
    Plant,
    /// Columns that change a figure in ways the quick reader doesn't know; their cells must be empty.
    Empty,
    /// Notes, conditions, and what readings make no use of.
    Any,
}

impl Role {
    /// Whether the cells are alike on all rows of a visit.
    pub(super) fn is_of_visit(self) -> bool {
        matches!(self, Self::Site | Self::Line | Self::LineLength | Self::Date | Self::TellsApart)
    }

    fn of(column: Option<Column>) -> Self {
        match column {
            Some(Column::Site) => Self::Site,
            Some(Column::Line) => Self::Line,
            Some(Column::LineLength) => Self::LineLength,
            Some(Column::Date) => Self::Date,
            Some(Column::Reader | Column::Recorder | Column::Pass) => Self::TellsApart,
            Some(Column::Species) => Self::Species,
            Some(Column::Start) => Self::Start,
            Some(Column::Stop) => Self::Stop,
            Some(Column::State) => Self::State,
            Some(Column::Height | Column::Width) => Self::OtherLength,
            Some(Column::Plant) => Self::Plant,
            Some(
                Column::Length
                | Column::Protocol
                | Column::Stratum
                | Column::Plot
                | Column::Judgement
                | Column::Slope
                | Column::StartLatitude
                | Column::StartLongitude
                | Column::EndLatitude
                | Column::EndLongitude
                | Column::Places
                | Column::PermissionFrom
                | Column::PermissionUntil
                | Column::Unit
                | Column::HeightUnit
                | Column::Outcome
                | Column::ReadTo,
            ) => Self::Empty,
            // every column by name, so that a new one is thought about here
            Some(
                Column::Note
                | Column::Ownership
                | Column::Nest
                | Column::Code
                | Column::Name
                | Column::CommonName
                | Column::Form
                | Column::Groups
                | Column::KeyFeatures
                | Column::Area
                | Column::Goal
                | Column::Source
                | Column::Confidence
                | Column::Finding
                | Column::File
                | Column::Row
                | Column::SettledBy
                | Column::SettledOn
                | Column::Reason,
            )
            | None => Self::Any,
        }
    }
}

/// A length column: what a bare number means in it, and the quick way to read one.
#[derive(Clone, Debug)]
pub(super) struct Lengths {
    pub(super) bare: Option<Bare>,
    pub(super) scale: Option<Scale>,
}

/// A readings table as the quick reader sees it.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    pub(super) delimiter: u8,
    pub(super) mark: DecimalMark,
    /// A comma anywhere leaves the decimal mark open.
    pub(super) no_commas: bool,
    pub(super) roles: Vec<Role>,
    /// The unit of each column, by its place.
    pub(super) lengths: Vec<Lengths>,
    pub(super) state: Option<Heading>,
    /// How many of the first columns are alike on all rows of a visit.
    pub(super) leading: usize,
    /// The byte at which the rows begin.
    pub(super) begins: u64,
}

/// What the head of a file says about it.
pub(super) enum Head {
    /// Not a table of readings.
    Other,
    /// A table of readings that the quick reader doesn't know its way in.
    Unclear,
    /// One that it does.
    Clear(Layout),
}

/// Looks at the first bytes of a file.
pub(super) fn head(name: &str, bytes: &[u8], options: &Options) -> Head {
    let of_another_kind = std::path::Path::new(name)
        .extension()
        .is_some_and(|ending| ["toml", "sheet"].iter().any(|other| ending.eq_ignore_ascii_case(other)));
    let mark_of_order = if bytes.starts_with(b"\xef\xbb\xbf") { 3 } else { 0 };
    let Some((begin, end)) = heading_row(bytes, mark_of_order).filter(|_| !of_another_kind) else {
        return Head::Other;
    };
    let Ok(row) = str::from_utf8(&bytes[begin..end]) else {
        return Head::Unclear;
    };
    if text::is_binary(bytes) || row.contains('\0') {
        return Head::Unclear;
    }
    let sheet = Sheet::cut(name, row, options);
    if sheet.kind != Kind::Readings {
        return Head::Other;
    }
    // where no species is written at all, what counts is the general reader's to say
    if !sheet.headings.iter().any(|heading| heading.column == Some(Column::Species)) {
        return Head::Unclear;
    }
    let twice = |at: usize, heading: &Heading| {
        heading.column.is_some() && sheet.headings[..at].iter().any(|before| before.column == heading.column)
    };
    let cut = text::rows(row);
    if row.matches('"').count() % 2 == 1
        || !sheet.rows.is_empty()
        || sheet.headings.iter().enumerate().any(|(at, heading)| twice(at, heading))
    {
        return Head::Unclear;
    }
    let roles: Vec<Role> = sheet.headings.iter().map(|heading| Role::of(heading.column)).collect();
    if !roles.contains(&Role::Start) || !roles.contains(&Role::Stop) {
        return Head::Unclear;
    }
    // hundredths of a foot may be inches, which only all readings together show
    let in_feet = |heading: &Heading| heading.bare().or(options.unit) == Some(Bare::DecimalFeet);
    let mut edges = sheet.headings.iter().filter(|h| matches!(h.column, Some(Column::Start | Column::Stop)));
    if edges.any(in_feet) {
        return Head::Unclear;
    }
    let mark = options.mark.unwrap_or_default();
    let byte = if mark == DecimalMark::Comma { b',' } else { b'.' };
    let lengths = sheet
        .headings
        .iter()
        .map(|heading| {
            let bare = heading.bare().or(options.unit);
            Lengths { bare, scale: Scale::new(bare, byte) }
        })
        .collect();
    Head::Clear(Layout {
        delimiter: u8::try_from(cut.delimiter).unwrap_or(b','),
        mark,
        no_commas: cut.delimiter != ',' && options.mark.is_none(),
        leading: roles.iter().take_while(|role| role.is_of_visit()).count(),
        state: sheet.headings.into_iter().find(|heading| heading.column == Some(Column::State)),
        roles,
        lengths,
        begins: (end + 1) as u64,
    })
}

/// Where the first row that isn't blank begins and ends; `None` where it doesn't end in the first bytes.
fn heading_row(bytes: &[u8], from: usize) -> Option<(usize, usize)> {
    let mut begin = from;
    loop {
        let end = begin + bytes[begin..].iter().position(|&byte| byte == b'\n')?;
        if bytes[begin..end].iter().any(|byte| !byte.is_ascii_whitespace()) {
            return Some((begin, end));
        }
        begin = end + 1;
    }
}
