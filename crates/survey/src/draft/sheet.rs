//! The sheet that keys fill: rows, the intercept under way, how far the line was read.

use super::key::{Figure, Key};
use super::number::{erased, grown};
use super::setup::Setup;
use crate::plants::GrowthForm;
use crate::visit::State;

/// One row as typed. Numbers are kept as text, so that nothing is lost that a person wrote.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// Its number, never given twice on one line.
    pub id: u32,
    /// The species as chosen or typed; empty where none was named.
    pub species: String,
    /// Where it starts; empty where only lengths are written.
    pub start: String,
    /// Where it stops; empty where only lengths are written.
    pub stop: String,
    /// How long it is; empty where positions are written.
    pub length: String,
    /// Live or dead.
    pub state: State,
    /// The plant's mark.
    pub plant: Option<String>,
    /// Height of the plant; empty where none was read.
    pub height: String,
    /// Width of the plant; empty where none was read.
    pub width: String,
    /// A remark.
    pub note: String,
    /// Taken out; it stays on the sheet, struck through.
    pub removed: bool,
    /// Codes of what was said of it and left so by a person.
    pub left_so: Vec<String>,
}

/// What the next key is expected to tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Expects {
    /// Which species comes next.
    #[default]
    Species,
    /// Where the intercept starts.
    Start,
    /// Where it stops.
    Stop,
    /// How long it is.
    Length,
    /// A figure of a row anew.
    Correction(u32, Figure),
    /// Where the first half of a row stops.
    SplitStop(u32),
    /// Where the second half of a row starts.
    SplitStart(u32),
    /// Up to where the line was read.
    ReadTo,
}

/// How far the line was read, as far as anybody said.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Told {
    /// End to end.
    #[default]
    Whole,
    /// End to end, and nothing was on it.
    Nothing,
    /// Up to this mark.
    To(String),
    /// Not read, and why.
    NotRead(String),
}

/// The intercept under way, or the figure being typed anew.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entry {
    /// What is typed next.
    pub expects: Expects,
    /// The number so far.
    pub text: String,
    /// The letters of a species so far.
    pub letters: String,
    /// The species.
    pub species: String,
    /// Where it started, once that is done.
    pub start: String,
    /// Live or dead.
    pub state: State,
    /// The plant's mark.
    pub plant: Option<String>,
    /// In front of which row it goes; at the end where none is named.
    pub before: Option<u32>,
}

/// The sheet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheet {
    /// Rows in the order of the sheet.
    pub rows: Vec<Row>,
    /// What is under way.
    pub entry: Entry,
    /// The intercept that waits while a figure of a row is typed anew.
    waiting: Option<Entry>,
    /// Only lengths are written.
    pub lengths_only: bool,
    /// How far the line was read.
    pub told: Told,
    /// Plants under working names, with their growth form where that is known.
    pub new_plants: Vec<(String, Option<GrowthForm>)>,
    /// Conditions by heading.
    pub conditions: Vec<(String, String)>,
    last_id: u32,
}

impl Sheet {
    /// The row with this number.
    pub fn row(&self, id: u32) -> Option<&Row> {
        self.rows.iter().find(|row| row.id == id)
    }

    /// The rows that were not taken out.
    pub fn standing(&self) -> impl DoubleEndedIterator<Item = &Row> {
        self.rows.iter().filter(|row| !row.removed)
    }

    fn row_mut(&mut self, id: u32) -> Option<&mut Row> {
        self.rows.iter_mut().find(|row| row.id == id)
    }

    /// What one key does; nothing where it makes no sense here.
    pub(super) fn with(&self, key: &Key, setup: &Setup) -> Option<Self> {
        let mut next = self.clone();
        next.take(key, setup)?;
        (next != *self).then_some(next)
    }

    fn take(&mut self, key: &Key, setup: &Setup) -> Option<()> {
        match key {
            Key::Letter(letter) if self.entry.expects == Expects::Species => {
                self.entry.letters.push(*letter);
            }
            Key::Digit(_) | Key::Mark | Key::FeetAndInches | Key::Fraction(..) | Key::Letter(_) => {
                self.number(key, setup)?;
            }
            Key::Erase => self.erase()?,
            Key::Done => self.done(setup)?,
            Key::Species(name) => self.choose(name),
            Key::NewPlant(name, form) => {
                let name = name.trim();
                if name.is_empty() || self.new_plants.iter().any(|(known, _)| known == name) {
                    return None;
                }
                self.new_plants.push((name.to_owned(), *form));
                self.choose(name);
            }
            Key::Rename(was, now) => self.rename(was, now.trim()),
            Key::Dead(row) => {
                let state = match row {
                    Some(id) => &mut self.row_mut(*id)?.state,
                    None => &mut self.entry.state,
                };
                *state = if *state == State::Live { State::Dead } else { State::Live };
            }
            Key::SamePlant(row) => self.same_plant(*row)?,
            Key::Plant(mark) => {
                self.entry.plant = Some(mark.trim().to_owned()).filter(|mark| !mark.is_empty());
            }
            Key::Swap(id) => {
                let row = self.row_mut(*id)?;
                core::mem::swap(&mut row.start, &mut row.stop);
            }
            Key::Correct(id, figure) => {
                let row = self.row(*id)?;
                let positions = row.length.is_empty();
                let has = match figure {
                    Figure::Start | Figure::Stop => positions,
                    Figure::Length => !positions,
                    Figure::Height | Figure::Width => true,
                };
                has.then(|| self.turn_to(Expects::Correction(*id, *figure)))?;
            }
            Key::CorrectSpecies(id, name) => name.trim().clone_into(&mut self.row_mut(*id)?.species),
            Key::Insert(id) => self.entry.before = self.row(*id).map(|row| row.id),
            Key::Split(id) => {
                self.row(*id).filter(|row| row.length.is_empty() && !row.removed)?;
                self.turn_to(Expects::SplitStop(*id));
            }
            Key::Join(first, second) => self.join(*first, *second, setup)?,
            Key::Remove(id) => {
                let row = self.row_mut(*id)?;
                row.removed = !row.removed;
            }
            Key::Note(id, note) => note.trim().clone_into(&mut self.row_mut(*id)?.note),
            Key::Leave => self.leave(),
            Key::LengthsOnly(only) => {
                if self.standing().next().is_some() || self.entry.expects != Expects::Species {
                    return None;
                }
                self.lengths_only = *only;
            }
            Key::Nothing if self.told == Told::Nothing => self.told = Told::Whole,
            Key::Nothing if self.standing().next().is_some() => return None,
            Key::Nothing => self.told = Told::Nothing,
            Key::ReadTo => self.turn_to(Expects::ReadTo),
            Key::NotRead(why) => self.told = Told::NotRead(why.trim().to_owned()),
            Key::Whole => self.told = Told::Whole,
            Key::Condition(heading, value) => self.condition(heading.trim(), value.trim())?,
            Key::LeaveSo(id, code) => {
                let row = self.row_mut(*id)?;
                if !row.left_so.contains(code) {
                    row.left_so.push(code.clone());
                }
            }
        }
        Some(())
    }

    fn number(&mut self, key: &Key, setup: &Setup) -> Option<()> {
        if self.entry.expects == Expects::Species {
            if !self.entry.letters.is_empty() {
                return None;
            }
            // a number without a species goes on with the row before, as on a typed sheet
            let last = self.standing().next_back().map(|row| row.species.clone());
            self.choose(&last.unwrap_or_default());
        }
        self.entry.text = grown(&self.entry.text, key, setup)?;
        Some(())
    }

    fn erase(&mut self) -> Option<()> {
        if self.entry.expects == Expects::Species {
            self.entry.letters.pop().map(|_| ())
        } else {
            self.entry.text = erased(&self.entry.text)?;
            Some(())
        }
    }

    fn choose(&mut self, name: &str) {
        let entry = &mut self.entry;
        name.trim().clone_into(&mut entry.species);
        entry.letters.clear();
        if entry.expects == Expects::Species {
            entry.expects = if self.lengths_only { Expects::Length } else { Expects::Start };
        }
    }

    fn rename(&mut self, was: &str, now: &str) {
        for row in self.rows.iter_mut().filter(|row| row.species == was) {
            now.clone_into(&mut row.species);
        }
        if self.entry.species == was {
            now.clone_into(&mut self.entry.species);
        }
        self.new_plants.retain(|(name, _)| name != was);
    }

    fn done(&mut self, setup: &Setup) -> Option<()> {
        let corrected = |text: &str| (text.is_empty() || setup.measure(text).is_ok()).then_some(());
        let text = core::mem::take(&mut self.entry.text);
        match self.entry.expects {
            Expects::Species => return None,
            // a height may be taken back by leaving it empty; no other figure is empty
            Expects::Correction(_, Figure::Height | Figure::Width) => corrected(&text)?,
            _ => setup.measure(&text).ok().map(|_| ())?,
        }
        match self.entry.expects {
            Expects::Species => {}
            Expects::Start => {
                self.entry.start = text;
                self.entry.expects = Expects::Stop;
            }
            Expects::Stop => self.finish(|row| row.stop = text),
            Expects::Length => self.finish(|row| row.length = text),
            Expects::Correction(id, figure) => {
                let row = self.row_mut(id)?;
                *match figure {
                    Figure::Start => &mut row.start,
                    Figure::Stop => &mut row.stop,
                    Figure::Length => &mut row.length,
                    Figure::Height => &mut row.height,
                    Figure::Width => &mut row.width,
                } = text;
                self.turn_back();
            }
            Expects::SplitStop(id) => {
                self.entry.start = text;
                self.entry.expects = Expects::SplitStart(id);
            }
            Expects::SplitStart(id) => self.split(id, text)?,
            Expects::ReadTo => {
                self.told = Told::To(text);
                self.turn_back();
            }
        }
        Some(())
    }

    /// A figure of a row is typed now; the intercept under way waits.
    fn turn_to(&mut self, expects: Expects) {
        let under_way = core::mem::take(&mut self.entry);
        self.waiting.get_or_insert(under_way);
        self.entry.expects = expects;
    }

    fn turn_back(&mut self) {
        self.entry = self.waiting.take().unwrap_or_default();
    }

    fn leave(&mut self) {
        self.turn_back();
    }

    fn fresh_id(&mut self) -> u32 {
        self.last_id += 1;
        self.last_id
    }

    fn finish(&mut self, last: impl FnOnce(&mut Row)) {
        let entry = core::mem::take(&mut self.entry);
        let id = self.fresh_id();
        let (species, start, state, plant) = (entry.species, entry.start, entry.state, entry.plant);
        let mut row = Row { id, species, start, state, plant, ..Row::default() };
        last(&mut row);
        let at = entry.before.and_then(|before| self.rows.iter().position(|row| row.id == before));
        self.rows.insert(at.unwrap_or(self.rows.len()), row);
        if self.told == Told::Nothing {
            self.told = Told::Whole;
        }
    }

    fn split(&mut self, id: u32, second_starts: String) -> Option<()> {
        let first_stops = core::mem::take(&mut self.entry.start);
        let fresh = self.fresh_id();
        let at = self.rows.iter().position(|row| row.id == id)?;
        let second = Row { id: fresh, start: second_starts, ..self.rows[at].clone() };
        self.rows[at].stop = first_stops;
        self.rows.insert(at + 1, second);
        self.turn_back();
        Some(())
    }

    fn join(&mut self, first: u32, second: u32, setup: &Setup) -> Option<()> {
        let (a, b) = (self.row(first)?, self.row(second)?);
        if first == second || a.removed || b.removed {
            return None;
        }
        let read = |text: &str| setup.measure(text).ok().map(|measure| measure.length());
        let start = if read(&a.start)? <= read(&b.start)? { &a.start } else { &b.start }.clone();
        let stop = if read(&a.stop)? >= read(&b.stop)? { &a.stop } else { &b.stop }.clone();
        let row = self.row_mut(first)?;
        (row.start, row.stop) = (start, stop);
        self.row_mut(second)?.removed = true;
        Some(())
    }

    /// The mark that this and the row before it share; both get one where neither has.
    fn same_plant(&mut self, row: Option<u32>) -> Option<()> {
        let before = match row {
            Some(id) => self.rows.iter().take_while(|row| row.id != id).filter(|row| !row.removed).last()?.id,
            None => self.standing().next_back()?.id,
        };
        let marks = self.rows.iter().filter_map(|row| row.plant.as_deref()?.parse::<u32>().ok());
        let fresh = marks.max().unwrap_or(0).saturating_add(1).to_string();
        let mark = Some(self.row_mut(before)?.plant.get_or_insert(fresh).clone());
        match row {
            Some(id) => self.row_mut(id)?.plant = mark,
            None => self.entry.plant = mark,
        }
        Some(())
    }

    fn condition(&mut self, heading: &str, value: &str) -> Option<()> {
        if heading.is_empty() {
            return None;
        }
        let known = self.conditions.iter().position(|(name, _)| name == heading);
        match (known, value.is_empty()) {
            (Some(at), true) => drop(self.conditions.remove(at)),
            (Some(at), false) => value.clone_into(&mut self.conditions[at].1),
            (None, true) => return None,
            (None, false) => self.conditions.push((heading.to_owned(), value.to_owned())),
        }
        Some(())
    }
}
