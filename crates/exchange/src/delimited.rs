//! Delimited text in: readings, lines, plants, strata, goals and what was settled, each known by its headings.

mod above;
mod alike;
mod cells;
pub mod goals;
mod lists;
mod places;
mod readings;
mod settled;
mod totals;
mod unplaced;
mod visits;

use crate::headings::{Column, Heading, heading_under};
use crate::limits::{LARGEST_FILE, MOST_COLUMNS};
use crate::sheet::{TypedSheet, is_sheet};
use crate::shown::{short, shorten};
use crate::source::Source;
use crate::text::Doubt;
use crate::{protocol, text};
use above::{Above, above};
use alike::Alike;
pub(crate) use cells::ONE_SITE;
use cells::Row;
pub(crate) use readings::state;
use tautline_engine::length::{Bare, DecimalMark};
use tautline_survey::assess::SiteGoal;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::finding::{Finding, Place};
use tautline_survey::input::{Input, SourceFile};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::protocol::Protocol;
pub(crate) use totals::sums_up;
pub(crate) use visits::unnamed_protocol;

/// Headings that are named where none is understood.
const MOST_HEADINGS_SHOWN: usize = 12;

/// What the person says about the files beside what they say themselves.
#[derive(Clone, Debug, Default)]
pub struct Options {
    /// What bare numbers mean where neither column nor sheet says it.
    pub unit: Option<Bare>,
    /// The decimal mark; by default a comma where the delimiter is a semicolon and the file shows one.
    pub mark: Option<DecimalMark>,
    /// The site, for files without that column.
    pub site: Option<String>,
    /// The length of every line that states none.
    pub line_length: Option<Measure>,
    /// The protocol that the lines were read under, for files that name none.
    pub protocol: Option<Protocol>,
    /// Protocols that are known already, in a notebook that the files go into: files may name them, and the only one
    /// is taken where files neither name nor bring any.
    pub known_protocols: Vec<Protocol>,
    /// What an office writes over its columns, and the heading that it stands for.
    pub headings: Vec<(String, String)>,
    /// That each finding is wanted by itself, however many there are of a kind: for a table to sign, for another program.
    pub every_finding: bool,
    /// Who knows datums, for lines out of a map that isn't on WGS 84.
    #[cfg(feature = "boundaries")]
    pub on_wgs84: Option<crate::boundary::OnWgs84>,
}

/// What came out of the files.
#[derive(Clone, Debug, Default)]
pub struct Read {
    /// Plan, plants, protocols, visits and findings.
    pub input: Input,
    /// Goals.
    pub goals: Vec<SiteGoal>,
}

/// Reads files. Nothing stops it: what can't be read is a finding, with its place and what would do.
///
/// # Example
/// ```
/// use tautline_exchange::{Options, Source, read};
/// let sheet = "site,line,line length,species,start (in),stop (in)\nInvented Flat,1,65 ft,SHAD,12,17\n";
/// let found = read(&[Source { name: "sheet.csv".into(), bytes: sheet.into() }], &Options::default());
/// assert_eq!(found.input.visits[0].intercepts.len(), 1);
/// ```
pub fn read(sources: &[Source], options: &Options) -> Read {
    read_with(sources, Vec::new(), options)
}

/// Reads files, and sheets that were cut already.
pub(crate) fn read_with(sources: &[Source], mut sheets: Vec<Sheet>, options: &Options) -> Read {
    let mut read = Read::default();
    for source in sources {
        let sha256 = sha256_hex(&source.bytes);
        if belongs_to_another(source, sources) {
            read.input.files.push(SourceFile { name: source.name.clone(), sha256 });
            continue;
        }
        if let Some(same) = read.input.files.iter().find(|file| file.sha256 == sha256) {
            let finding = same_twice(&source.name, &same.name);
            read.input.findings.push(finding);
            continue;
        }
        read.input.files.push(SourceFile { name: source.name.clone(), sha256 });
        take(source, sources, options, &mut sheets, &mut read.input);
    }
    // plants, plans and areas first, so that readings find them whatever the order of the files
    sheets.sort_by_key(|sheet| sheet.kind);
    let mut so_far = readings::SoFar::default();
    let mut alike = Alike::new(options);
    for sheet in &mut sheets {
        sheet.name_what_stands_above(&mut read.input.findings);
        sheet.set_misshapen_rows_aside(&mut alike, &mut read.input.findings);
        sheet.name_unused_columns(&mut read.input.findings);
    }
    for sheet in &sheets {
        alike.end_of_sheet();
        match sheet.kind {
            Kind::Plants => lists::plants(sheet, &mut alike, &mut read.input),
            Kind::Strata => lists::strata(sheet, options, &mut read.input),
            Kind::Sites => places::sites(sheet, options, &mut read.input),
            Kind::Goals => goals::goals(sheet, &mut read),
            Kind::Settled => settled::settled(sheet, &mut read.input),
            Kind::Lines | Kind::Readings => {
                alike.mind(&read.input.settlements);
                readings::readings(sheet, options, &mut so_far, &mut alike, &mut read.input);
            }
            Kind::LengthOfWhat => {
                let message = Message::new("length-of-what");
                let place = sheet.place(sheet.first, Some(Column::Length));
                read.input.findings.push(Finding::must_settle(message).at(place));
            }
            Kind::TooManyColumns => {
                let message = Message::new("too-many-columns").with("most", MOST_COLUMNS);
                read.input.findings.push(Finding::must_settle(message).at(sheet.place(sheet.first, None)));
            }
            Kind::Unknown => {
                let headings = sheet.headings.iter().take(MOST_HEADINGS_SHOWN);
                let found: Vec<String> = headings.map(|heading| short(&heading.text)).collect();
                let message = Message::new("headings-not-understood")
                    .with("file", sheet.name.as_str())
                    .with("found", found);
                read.input.findings.push(Finding::must_settle(message));
            }
        }
    }
    readings::finish(options, &so_far, &mut read.input);
    shorten(&mut read.input.findings);
    read
}

fn same_twice(file: &str, same: &str) -> Finding {
    Finding::note(Message::new("same-file-twice").with("file", file).with("same", same))
}

/// Whether a file is the table or the reference of a shapefile that is read.
#[cfg(feature = "boundaries")]
fn belongs_to_another(file: &Source, files: &[Source]) -> bool {
    use crate::boundary::{BESIDE_SHAPES, belongs, is_shapes};
    files.iter().any(|one| is_shapes(&one.bytes) && belongs(&file.name, &one.name, &BESIDE_SHAPES))
}

#[cfg(not(feature = "boundaries"))]
const fn belongs_to_another(_: &Source, _: &[Source]) -> bool {
    false
}

/// Takes a file, which may have others beside it, as what it is: a protocol, a typed sheet, a table, or a packed file of several.
fn take(
    source: &Source,
    #[cfg_attr(not(feature = "boundaries"), expect(unused_variables, reason = "only a shapefile has any"))]
    beside: &[Source],
    options: &Options,
    sheets: &mut Vec<Sheet>,
    input: &mut Input,
) {
    #[cfg(feature = "workbooks")]
    if crate::workbook::is_packed(&source.bytes) {
        return take_packed(source, options, sheets, input);
    }
    #[cfg(feature = "boundaries")]
    if crate::boundary::is_map(&source.bytes) {
        return take_map(source, beside, options, sheets, input);
    }
    let text = match text_of(source, &mut input.findings) {
        Ok(text) => text,
        Err(refusal) => return input.findings.push(refusal),
    };
    let is_toml =
        std::path::Path::new(&source.name).extension().is_some_and(|e| e.eq_ignore_ascii_case("toml"));
    if is_toml {
        let (protocol, findings) = protocol::read(&source.name, &text);
        // one misread rule would move every figure, so a protocol with anything wrong in it isn't used
        if findings.is_empty() {
            input.add_protocol(protocol);
        }
        input.findings.extend(findings);
    } else if is_sheet(&source.name, &text) {
        sheets.push(Sheet::typed(&source.name, &text, options));
    } else {
        sheets.push(Sheet::cut(&source.name, &text, options));
    }
}

/// Takes where lines lie out of a map, as if somebody had typed it into a table.
#[cfg(feature = "boundaries")]
fn take_map(
    source: &Source,
    beside: &[Source],
    options: &Options,
    sheets: &mut Vec<Sheet>,
    input: &mut Input,
) {
    let about = |code| Message::new(code).with("file", source.name.as_str());
    let map = match crate::boundary::lines(source, beside, options.site.as_deref(), options.on_wgs84) {
        Ok(map) => map,
        Err(why) => {
            return input.findings.push(Finding::must_settle(about("boundary-refused").with("why", why)));
        }
    };
    for (code, shapes) in [("map-no-lines", map.others), ("map-kept-back", map.kept_back)] {
        if shapes > 0 {
            input.findings.push(Finding::note(about(code).with("shapes", shapes)));
        }
    }
    if let Some((reference, error)) = map.brought {
        let message = about("map-brought-over").with("found", reference.to_string());
        input.findings.push(Finding::note(message.with("metres", u64::from(error))));
    }
    if map.count > 0 {
        sheets.push(Sheet::cut(&source.name, &map.table, &Options::default()));
    } else {
        input.findings.push(Finding::must_settle(about("map-nothing")));
    }
}

/// Takes the sheets of a workbook, or each file of a packed folder; a folder packed within a folder is left out.
#[cfg(feature = "workbooks")]
fn take_packed(source: &Source, options: &Options, sheets: &mut Vec<Sheet>, input: &mut Input) {
    use crate::workbook::{Opened, Room, is_packed, open, sheet};
    let mut room = Room::new();
    let (files, mut others) = match open(source, &mut room) {
        Err(message) => return input.findings.push(Finding::must_settle(message)),
        Ok(Opened::Sheets(grids)) => {
            return sheets.extend(sheet::all(&source.name, grids, options, &mut input.findings));
        }
        Ok(Opened::Folder(files, others)) => (files, others),
    };
    let mut seen: Vec<(String, &str)> = Vec::new();
    for file in &files {
        if belongs_to_another(file, &files) {
            continue;
        }
        let sha256 = sha256_hex(&file.bytes);
        if let Some((_, same)) = seen.iter().find(|(known, _)| *known == sha256) {
            input.findings.push(same_twice(&file.name, same));
            continue;
        }
        seen.push((sha256, &file.name));
        if !is_packed(&file.bytes) {
            take(file, &files, options, sheets, input);
            continue;
        }
        match open(file, &mut room) {
            Err(message) => input.findings.push(Finding::must_settle(message)),
            Ok(Opened::Sheets(grids)) => {
                sheets.extend(sheet::all(&file.name, grids, options, &mut input.findings));
            }
            Ok(Opened::Folder(..)) => others.push(file.name.clone()),
        }
    }
    if files.is_empty() {
        let message = Message::new("packed-without-tables").with("file", source.name.as_str());
        input.findings.push(Finding::must_settle(message));
    }
    if !others.is_empty() {
        let found: Vec<String> = others.iter().take(MOST_HEADINGS_SHOWN).map(|name| short(name)).collect();
        let message = Message::new("packed-left-out").with("file", source.name.as_str()).with("found", found);
        input.findings.push(Finding::note(message));
    }
}

/// The text of a file, and what had to be taken for granted; or why it isn't read.
pub(crate) fn text_of(source: &Source, findings: &mut Vec<Finding>) -> Result<String, Finding> {
    let refuse = |code| Finding::must_settle(Message::new(code).with("file", source.name.as_str()));
    if source.bytes.len() as u64 > LARGEST_FILE {
        return Err(refuse("file-too-large"));
    }
    let decoded = text::decode(&source.bytes).map_err(|problem| match problem {
        text::TextError::Empty => refuse("file-empty"),
        text::TextError::Binary => refuse("file-not-text"),
    })?;
    let place = |row| Place { file: source.name.clone(), row, column: None, character: None };
    if let Some(row) = text::row_beyond_reading(&decoded.text) {
        return Err(Finding::must_settle(Message::new("row-beyond-reading")).at(place(row)));
    }
    findings.extend(decoded.doubt.map(|doubt| match doubt {
        Doubt::Windows1252 { row } => Finding::note(Message::new("file-read-as-windows-1252")).at(place(row)),
        Doubt::CutOff { row } => Finding::must_settle(Message::new("file-cut-off")).at(place(row)),
    }));
    Ok(decoded.text)
}

/// What a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    Plants,
    Strata,
    Goals,
    Settled,
    Sites,
    Lines,
    Readings,
    /// Lines with lengths and nothing else: of the lines, or of intercepts?
    LengthOfWhat,
    TooManyColumns,
    Unknown,
}

impl Kind {
    /// What a table is, by its headings.
    pub(crate) fn of(headings: &[Heading], options: &Options) -> Self {
        let has = |column| headings.iter().any(|heading| heading.column == Some(column));
        // “length” is the intercept's once the tape's own length stands somewhere else
        let length_is_read =
            has(Column::Length) && (has(Column::LineLength) || options.line_length.is_some());
        if headings.len() > MOST_COLUMNS {
            Self::TooManyColumns
        } else if has(Column::Finding) && has(Column::SettledBy) {
            Self::Settled
        } else if has(Column::Line) && (has(Column::Species) || has(Column::Start) || length_is_read) {
            Self::Readings
        } else if has(Column::Line) && has(Column::Length) {
            Self::LengthOfWhat
        } else if has(Column::Line) {
            Self::Lines
        } else if (has(Column::Code) || has(Column::Species)) && has(Column::Form) {
            Self::Plants
        } else if has(Column::Stratum) && has(Column::Area) {
            Self::Strata
        } else if has(Column::Ownership) || has(Column::Nest) || has(Column::Places) {
            Self::Sites
        } else if has(Column::Goal) {
            Self::Goals
        } else {
            Self::Unknown
        }
    }
}

/// A file cut into rows under headings.
pub(crate) struct Sheet {
    name: String,
    pub(crate) kind: Kind,
    pub(crate) headings: Vec<Heading>,
    /// The row of the headings.
    first: u64,
    /// What is said above them.
    above: Vec<String>,
    pub(crate) rows: Vec<(u64, Vec<String>)>,
    /// The numbers of rows that were set aside since their cells can't be told apart.
    misshapen: Vec<u64>,
    mark: DecimalMark,
    /// The rows of a typed sheet, which has no headings.
    typed: Option<TypedSheet>,
}

impl Sheet {
    fn typed(name: &str, text: &str, options: &Options) -> Self {
        let typed = TypedSheet::read(name, text, options.unit, options.mark);
        let mark = typed.mark;
        let (headings, rows) = (Vec::new(), Vec::new());
        Self {
            name: name.to_owned(),
            kind: Kind::Readings,
            headings,
            first: 1,
            above: Vec::new(),
            rows,
            misshapen: Vec::new(),
            mark,
            typed: Some(typed),
        }
    }

    /// Cuts text into rows under its headings.
    pub(crate) fn cut(name: &str, text: &str, options: &Options) -> Self {
        let Above { texts: above, lines, table } = above(text, options);
        let mut cut = text::rows(table);
        for (row, _) in &mut cut.rows {
            *row += lines as u64;
        }
        let first = if cut.rows.is_empty() { Vec::new() } else { cut.rows.remove(0).1 };
        let headings: Vec<Heading> = first
            .iter()
            .take(MOST_COLUMNS + 1)
            .map(|cell| heading_under(&short(cell), &options.headings))
            .collect();
        let kind = Kind::of(&headings, options);
        let cells = cut.rows.iter().flat_map(|(_, cells)| cells).map(String::as_str);
        let mark = options.mark.unwrap_or_else(|| decimal_mark(cut.delimiter, &cells));
        let first = lines as u64 + 1;
        let (rows, misshapen) = (cut.rows, Vec::new());
        Self { name: name.to_owned(), kind, headings, first, above, rows, misshapen, mark, typed: None }
    }

    /// Names the texts above the headings, which are nobody's readings.
    fn name_what_stands_above(&self, findings: &mut Vec<Finding>) {
        if !self.above.is_empty() {
            let message = Message::new("rows-above-headings").with("found", self.above.clone());
            findings.push(Finding::note(message).at(self.place(1, None)));
        }
    }

    /// Rows of which the headings are known already, those of a spreadsheet.
    #[cfg(feature = "workbooks")]
    pub(crate) fn under(
        name: String,
        kind: Kind,
        (first, headings): (u64, Vec<Heading>),
        rows: Vec<(u64, Vec<String>)>,
        mark: DecimalMark,
    ) -> Self {
        let (above, misshapen) = (Vec::new(), Vec::new());
        Self { name, kind, headings, first, above, rows, misshapen, mark, typed: None }
    }

    /// Sets aside rows whose cells can't be told apart, and names them: more cells than headings, as a decimal
    /// comma between commas makes them, or a cell over several rows, as a quote that never closes makes it.
    fn set_misshapen_rows_aside(&mut self, alike: &mut Alike, findings: &mut Vec<Finding>) {
        if matches!(self.kind, Kind::Unknown | Kind::TooManyColumns) {
            return;
        }
        for (at, heading) in self.headings.iter().enumerate().filter(|(_, heading)| heading.column.is_some())
        {
            if self.headings[..at].iter().any(|before| before.column == heading.column) {
                let message = Message::new("heading-twice").with("found", heading.text.as_str());
                findings.push(Finding::must_settle(message).at(self.place(self.first, heading.column)));
            }
        }
        let rows = std::mem::take(&mut self.rows);
        let (good, misshapen): (Vec<_>, Vec<_>) = rows.into_iter().partition(|(_, cells)| {
            let filled = cells.iter().rposition(|cell| !cell.is_empty()).map_or(0, |last| last + 1);
            filled <= self.headings.len() && self.over_several_rows(cells).is_none()
        });
        self.misshapen = misshapen.iter().map(|(row, _)| *row).collect();
        for (row, cells) in misshapen {
            let (message, column) = match self.over_several_rows(&cells) {
                Some(column) => (Message::new("cell-over-several-rows"), Some(column)),
                None => (Message::new("row-too-long").with("found", cells.len()), None),
            };
            let message = message.with("headings", self.headings.len());
            alike.keep(Finding::must_settle(message).at(self.place(row, column)), findings);
        }
        alike.end_of_sheet();
        self.rows = good;
    }

    /// Columns that nothing is done with. On readings and lines they are kept as conditions.
    fn name_unused_columns(&self, findings: &mut Vec<Finding>) {
        if !matches!(self.kind, Kind::Plants | Kind::Strata | Kind::Sites | Kind::Goals) {
            return;
        }
        let unused =
            self.headings.iter().filter(|heading| heading.column.is_none() && !heading.text.is_empty());
        let found: Vec<String> = unused.map(|heading| heading.text.clone()).collect();
        if !found.is_empty() {
            let message = Message::new("columns-not-used").with("found", found);
            findings.push(Finding::note(message).at(self.place(self.first, None)));
        }
    }

    /// The understood column, notes aside, in which a cell goes over several rows.
    fn over_several_rows(&self, cells: &[String]) -> Option<Column> {
        let long = |(heading, cell): (&Heading, &String)| heading.column.filter(|_| cell.contains('\n'));
        self.headings.iter().zip(cells).filter_map(long).find(|&column| column != Column::Note)
    }

    /// The first of two columns, or the second where the sheet lacks it.
    fn first_of(&self, [first, second]: [Column; 2]) -> Column {
        let has = self.headings.iter().any(|heading| heading.column == Some(first));
        if has { first } else { second }
    }

    fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        let typed = self.typed.iter().flat_map(|typed| &typed.rows);
        let typed = typed.map(|row| Row { sheet: self, number: row.number, cells: &[], typed: Some(row) });
        let cut = self.rows.iter();
        cut.map(|(number, cells)| Row { sheet: self, number: *number, cells, typed: None }).chain(typed)
    }

    /// Whether the file says anywhere which site it speaks of.
    fn names_sites(&self) -> bool {
        self.headings.iter().any(|heading| heading.column == Some(Column::Site))
            || self.typed.as_ref().is_some_and(TypedSheet::names_sites)
    }

    const fn mark(&self) -> DecimalMark {
        self.mark
    }

    fn place(&self, row: u64, column: Option<Column>) -> Place {
        let heading =
            column.and_then(|column| self.headings.iter().find(|heading| heading.column == Some(column)));
        Place {
            file: self.name.clone(),
            row,
            column: heading.map(|heading| heading.text.clone()),
            character: None,
        }
    }
}

/// A comma where cells are parted by something else, some cell shows one between digits, and none a point.
///
/// Commas with three digits behind them in every cell could be marks of thousands: then the point stays, and each
/// such cell is refused.
pub(crate) fn decimal_mark<'a>(
    delimiter: char,
    cells: &(impl Iterator<Item = &'a str> + Clone),
) -> DecimalMark {
    let behind = |mark: char| {
        cells.clone().filter_map(move |cell| {
            let (before, after) = cell.split_once(mark)?;
            let digits = after.chars().take_while(char::is_ascii_digit).count();
            (before.ends_with(|c: char| c.is_ascii_digit()) && digits > 0).then_some(digits)
        })
    };
    let comma = delimiter != ',' && behind(',').any(|digits| digits != 3) && behind('.').next().is_none();
    if comma { DecimalMark::Comma } else { DecimalMark::Point }
}

#[cfg(test)]
mod tests;
