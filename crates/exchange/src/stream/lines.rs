//! Rows become lines: consecutive rows of one visit are one run, and a run comes to a length under canopy.

use super::Stop;
use super::cells::{self, Cursor};
use super::known::Known;
use super::layout::{Layout, Lengths, Role};
use super::terms::Terms;
use crate::delimited::{state, sums_up};
use std::cell::Cell;
use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::ops::Range;
use tautline_engine::cover::{Canopy, CanopyLength, Intercept, Life};
use tautline_engine::length::{Division, Length, Notation, Unit, read};
use tautline_engine::stretch::Stretch;
use tautline_survey::date::Date;
use tautline_survey::visit::State;

/// The lines of one piece of a file, in the order of its rows.
#[derive(Default)]
pub(super) struct Lines {
    text: String,
    pub(super) sites: Vec<SiteRun>,
    runs: Vec<LineRun>,
}

/// Consecutive lines of one site.
pub(super) struct SiteRun {
    name: Range<u32>,
    lines: Range<u32>,
    /// Something about it is beyond the quick reader.
    pub(super) odd: bool,
}

/// One line of one visit.
pub(super) struct LineRun {
    name: Range<u32>,
    pub(super) year: Option<u16>,
    pub(super) length: Length,
    pub(super) canopy: Canopy,
    /// Rows that were read.
    pub(super) rows: u32,
    /// The same for readings that agree in every row, and hardly for others.
    pub(super) print: u64,
}

impl Lines {
    fn keep(&mut self, text: &str) -> Range<u32> {
        let begin = place(self.text.len());
        self.text.push_str(text);
        begin..place(self.text.len())
    }

    fn at(&self, range: &Range<u32>) -> &str {
        &self.text[range.start as usize..range.end as usize]
    }

    /// The name of a site.
    pub(super) fn site(&self, site: &SiteRun) -> &str {
        self.at(&site.name)
    }

    /// Whether some row doesn't say its site.
    pub(super) fn names_no_site(&self) -> bool {
        self.sites.iter().any(|site| self.site(site).is_empty())
    }

    /// The lines of a site with their names.
    pub(super) fn of_site(&self, site: &SiteRun) -> impl Iterator<Item = (&str, &LineRun)> {
        let lines = &self.runs[site.lines.start as usize..site.lines.end as usize];
        lines.iter().map(|line| (self.at(&line.name), line))
    }
}

fn place(at: usize) -> u32 {
    u32::try_from(at).expect("a piece of a file stays below 4 GB")
}

/// What a state cell says, as one small value.
#[derive(Clone, Copy, Default)]
enum Said {
    #[default]
    Nonsense,
    Known(Life),
}

/// A species as written.
#[derive(Clone, Copy, Default)]
struct Species {
    /// Its number, if it counts.
    number: Option<u32>,
    /// Stands for its code wherever codes are only told apart.
    print: u64,
    /// It names a sum, which is no species.
    sums_up: bool,
}

/// Takes rows and gives lines.
pub(super) struct Reader<'a> {
    layout: &'a Layout,
    terms: &'a Terms<'a>,
    canopy: CanopyLength,
    species: Known<Species>,
    states: Known<Said>,
    numbers: HashMap<String, u32>,
    /// Some length stands in hundredths of a foot, which all readings together may show to be inches.
    hundredths_of_feet: Cell<bool>,
    /// The cells that tell this visit from others, by column, as they stand.
    visit: Vec<Vec<u8>>,
    /// The leading cells of the row before, as they stand.
    leading: Vec<u8>,
    /// The line's length among them.
    leading_length: Option<Length>,
    /// The next run began before this piece of the file.
    next_is_elsewhere: bool,
    run: Run,
    pub(super) lines: Lines,
}

/// The visit whose rows are being read.
#[derive(Default)]
struct Run {
    rows: usize,
    /// It began before this piece of the file, and is somebody else's.
    elsewhere: bool,
    odd: bool,
    length: Option<Length>,
    furthest: Length,
    intercepts: Vec<Intercept>,
    print: u64,
}

/// What a row says beside which visit it belongs to.
struct Row {
    start: Option<Length>,
    stop: Option<Length>,
    species: Species,
    life: Life,
    line_length: Option<Length>,
    odd: bool,
}

impl<'a> Reader<'a> {
    pub(super) fn new(layout: &'a Layout, terms: &'a Terms<'a>) -> Self {
        Self {
            layout,
            terms,
            canopy: CanopyLength::under(terms.rule),
            species: Known::default(),
            states: Known::default(),
            numbers: HashMap::new(),
            hundredths_of_feet: Cell::new(false),
            visit: vec![Vec::new(); layout.roles.len()],
            leading: Vec::new(),
            leading_length: None,
            next_is_elsewhere: false,
            run: Run::default(),
            lines: Lines::default(),
        }
    }

    /// Begins a piece of the file, whose first run may have begun before it.
    pub(super) fn begin(&mut self, first_is_elsewhere: bool) {
        self.leading.clear();
        self.run.rows = 0;
        self.next_is_elsewhere = first_is_elsewhere;
        // no cell is a zero byte, so the first row is another visit than any before
        self.visit.iter_mut().for_each(|cell| *cell = vec![0]);
    }

    /// The lines of the piece that ends here.
    pub(super) fn end(&mut self) -> Lines {
        self.close_run();
        std::mem::take(&mut self.lines)
    }

    /// Reads the row at a byte and says where the next begins; `None` where `within_run` and it belongs to another run.
    #[inline]
    pub(super) fn row(&mut self, bytes: &[u8], at: usize, within_run: bool) -> Result<Option<usize>, Stop> {
        match bytes[at] {
            b'\n' => return Ok(Some(at + 1)),
            // the buffer was found to have line feeds behind carriage returns
            b'\r' => return Ok(Some(at + 2)),
            _ => {}
        }
        let mut cursor = Cursor::new(bytes, at, self.layout.delimiter);
        let mut row = Row {
            start: None,
            stop: None,
            species: Species::default(),
            life: Life::Live,
            line_length: None,
            odd: false,
        };
        let mut another = false;
        let same = !self.leading.is_empty() && bytes[at..].starts_with(&self.leading);
        if same {
            cursor.at += self.leading.len();
            row.line_length = self.leading_length;
        }
        let first = if same { self.layout.leading } else { 0 };
        for (column, &role) in self.layout.roles.iter().enumerate().skip(first) {
            let cell = cursor.cell();
            if role.is_of_visit() {
                if role == Role::LineLength {
                    row.line_length = self.line_length(bytes, cell, column, &mut row.odd);
                } else if self.visit[column] != cell.of(bytes) {
                    if !another && within_run {
                        return Ok(None);
                    }
                    if !another {
                        self.close_run();
                        another = true;
                    }
                    cell.of(bytes).clone_into(&mut self.visit[column]);
                }
            } else {
                self.cell(bytes, cell, column, role, &mut row);
            }
            if !same && column + 1 == self.layout.leading {
                self.leading.clear();
                self.leading_length = row.line_length;
                if !cursor.over {
                    self.leading.extend_from_slice(&bytes[at..cursor.at]);
                }
            }
        }
        // a row with more cells than headings may belong to its neighbours, whichever they are
        let mut too_long = false;
        while !cursor.over {
            too_long |= !cursor.cell().text(bytes).is_empty();
        }
        if too_long || cursor.hard_quotes || self.hundredths_of_feet.get() {
            return Err(Stop::Unclear);
        }
        if another {
            self.open_run();
        }
        self.run.take(&row);
        Ok(Some(cursor.at))
    }

    #[inline]
    fn cell(&mut self, bytes: &[u8], cell: cells::Cell, column: usize, role: Role, row: &mut Row) {
        match role {
            Role::Start => row.start = self.length(bytes, cell, &self.layout.lengths[column]),
            Role::Stop => row.stop = self.length(bytes, cell, &self.layout.lengths[column]),
            Role::Species => {
                let (terms, numbers) = (self.terms, &mut self.numbers);
                row.species = self.species.get(cell.packed(bytes), cell.of(bytes), || {
                    let (code, counts) = terms.species(cell.text(bytes));
                    let mut hasher = DefaultHasher::new();
                    code.hash(&mut hasher);
                    let next = place(numbers.len());
                    let number = counts.then(|| *numbers.entry(code).or_insert(next));
                    Species { number, print: hasher.finish(), sums_up: sums_up(cell.text(bytes)) }
                });
                row.odd |= row.species.sums_up;
            }
            Role::State => {
                let heading = self.layout.state.as_ref();
                let said = self.states.get(cell.packed(bytes), cell.of(bytes), || {
                    match state(cell.text(bytes), heading) {
                        Some(State::Live) => Said::Known(Life::Live),
                        Some(State::Dead) => Said::Known(Life::Dead),
                        None => Said::Nonsense,
                    }
                });
                match said {
                    Said::Known(life) => row.life = life,
                    Said::Nonsense => row.odd = true,
                }
            }
            Role::OtherLength => {
                let text = cell.text(bytes);
                row.odd |= !text.is_empty()
                    && read(text, self.layout.lengths[column].bare, self.layout.mark).is_err();
            }
            Role::Plant => row.odd |= self.terms.marks_matter() && !cell.text(bytes).is_empty(),
            Role::Empty => row.odd |= !cell.text(bytes).is_empty(),
            _ => {}
        }
    }

    #[inline]
    fn length(&self, bytes: &[u8], cell: cells::Cell, column: &Lengths) -> Option<Length> {
        let quick = column.scale.as_ref().and_then(|scale| scale.length(bytes, cell));
        quick.or_else(|| self.any_length(cell.text(bytes), column))
    }

    /// A length as only the general reader knows it: `5'3"`, `12 cm`. One that was rounded wants a word.
    #[cold]
    fn any_length(&self, text: &str, column: &Lengths) -> Option<Length> {
        let written = read(text, column.bare, self.layout.mark).ok()?;
        self.hundredths_of_feet.set(self.hundredths_of_feet.get() || is_hundredths_of_feet(written.notation));
        (!written.rounded).then_some(written.length)
    }

    fn line_length(&self, bytes: &[u8], cell: cells::Cell, column: usize, odd: &mut bool) -> Option<Length> {
        let column = &self.layout.lengths[column];
        let text = cell.text(bytes);
        if text.is_empty() {
            return None;
        }
        let quick = column.scale.as_ref().and_then(|scale| scale.length(bytes, cell));
        let length = quick.or_else(|| Some(read(text, column.bare, self.layout.mark).ok()?.length));
        *odd |= length.is_none();
        length
    }

    /// The text of the column with this role, as the run's rows have it.
    fn of_visit(&self, role: Role) -> Option<&str> {
        let column = self.layout.roles.iter().position(|&own| own == role)?;
        Some(str::from_utf8(&self.visit[column]).unwrap_or_default().trim())
    }

    fn open_run(&mut self) {
        self.run.rows = 0;
        self.run.elsewhere = std::mem::take(&mut self.next_is_elsewhere);
        self.run.odd = false;
        self.run.length = None;
        self.run.furthest = Length::ZERO;
        self.run.intercepts.clear();
        self.run.print = 0;
    }

    fn close_run(&mut self) {
        if self.run.rows == 0 || self.run.elsewhere {
            return;
        }
        let line = self.of_visit(Role::Line).unwrap_or_default().to_owned();
        let date = self.of_visit(Role::Date).filter(|text| !text.is_empty()).map(Date::read);
        let length = self.run.length.or(self.terms.line_length).unwrap_or_default();
        let odd = self.run.odd
            || line.is_empty()
            || sums_up(&line)
            || self.of_visit(Role::Site).is_some_and(sums_up)
            || date == Some(None)
            || length == Length::ZERO
            || self.run.furthest > length;
        let canopy =
            if odd { Canopy::default() } else { self.canopy.of_line(length, &mut self.run.intercepts) };
        let site = self.terms.site(self.of_visit(Role::Site));
        let goes_on = self.lines.sites.last().is_some_and(|last| self.lines.site(last) == site);
        if !goes_on {
            let site = site.to_owned();
            let name = self.lines.keep(&site);
            let begin = place(self.lines.runs.len());
            self.lines.sites.push(SiteRun { name, lines: begin..begin, odd: false });
        }
        let name = self.lines.keep(&line);
        let year = date.flatten().map(Date::year);
        self.lines.runs.push(LineRun {
            name,
            year,
            length,
            canopy,
            rows: place(self.run.rows),
            print: self.run.print,
        });
        let site = self.lines.sites.last_mut().expect("the line's site was just begun");
        site.lines.end = place(self.lines.runs.len());
        site.odd |= odd;
    }
}

fn is_hundredths_of_feet(notation: Notation) -> bool {
    notation.unit == Unit::Foot && notation.division == Division::Decimals(2)
}

/// One number for what a row says; added up they tell readings apart whatever the order of their rows.
fn print(row: &Row, stretch: Stretch) -> u64 {
    let [start, stop] = [stretch.start(), stretch.stop()].map(|at| at.nanometres().cast_unsigned());
    let dead = u64::from(row.life == Life::Dead) << 63;
    let mixed = (row.species.print ^ start ^ stop.rotate_left(32) ^ dead).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    (mixed ^ (mixed >> 32)).wrapping_mul(0xd6e8_feb8_6659_fd93)
}

impl Run {
    #[inline]
    fn take(&mut self, row: &Row) {
        self.rows += 1;
        self.odd |= row.odd;
        if let Some(length) = row.line_length {
            self.odd |= *self.length.get_or_insert(length) != length;
        }
        let stretch = row.start.zip(row.stop).and_then(|(start, stop)| Stretch::new(start, stop));
        let Some(stretch) = stretch else {
            self.odd = true;
            return;
        };
        self.furthest = self.furthest.max(stretch.stop());
        if let Some(species) = row.species.number {
            self.intercepts.push(Intercept { stretch, species, plant: None, life: row.life });
        }
        self.print = self.print.wrapping_add(print(row, stretch));
    }
}
