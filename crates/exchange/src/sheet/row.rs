//! A row of readings: a species, then its numbers, each with its marks behind it.

use super::scan::{Piece, Scan, Slip, Span};
use tautline_engine::length::Unit;

/// One stretch as it stands on the row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stretch {
    pub(super) piece: Piece,
    pub(super) dead: bool,
    pub(super) plant: Option<Span>,
    pub(super) height: Option<Span>,
    pub(super) width: Option<Span>,
    pub(super) note: Option<Span>,
}

/// What a row of readings says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Row {
    /// The species' name where the row begins with one; empty brackets are a name left empty.
    pub(super) species: Option<Span>,
    /// Dead, where the mark stands before the numbers.
    pub(super) dead: bool,
    /// What could be read, in the order of the row.
    pub(super) stretches: Vec<Stretch>,
    /// What couldn't, in the order of the row.
    pub(super) slips: Vec<Slip>,
}

/// Reads a row; `dead_above` is the state of the row above, for a row that goes on with it.
pub(super) fn row(scan: &Scan, dead_above: bool) -> Row {
    let mut row = Row { dead: dead_above, ..Row::default() };
    let begin = match species(scan) {
        Ok((None, begin)) => begin,
        Ok((Some(name), end)) => {
            row.species = Some(name);
            let (dead, begin) = state_before_numbers(scan, end);
            row.dead = dead;
            begin
        }
        Err(slip) => {
            row.slips.push(slip);
            return row;
        }
    };
    let mut reading = Reading { scan, row, last: Last::Nothing, last_end: usize::MAX };
    let mut at = begin;
    while at < scan.chars.len() {
        at = match reading.next(at) {
            Ok(end) => end,
            Err(slip) => reading.lose(slip, at),
        };
    }
    let mut row = reading.row;
    if row.stretches.is_empty() && row.slips.is_empty() {
        row.slips.push(Slip { code: "sheet-no-numbers", at: row.species.map_or(begin, |(begin, _)| begin) });
    }
    row
}

/// The name that a row begins with, if any, and where it ends.
fn species(scan: &Scan) -> Result<(Option<Span>, usize), Slip> {
    let begin = scan.skip_blanks(0);
    match scan.at(begin) {
        Some('[') => return bracketed(scan, begin).map(|(name, end)| (Some(name), end)),
        None | Some('(' | '#' | '-' | ',' | ';') => return Ok((None, begin)),
        _ if scan.number_at(begin) && !is_code_with_digit_first(scan, begin) => return Ok((None, begin)),
        _ => {}
    }
    let mut end = begin;
    let mut at = begin;
    while let Some(c) = scan.at(at) {
        let is_name = at == begin
            || !(scan.number_at(at)
                || matches!(c, '-' | '(' | ')' | '[' | '#' | ',' | ';')
                || looks_like_number(scan, at)
                || measures_plant(scan, at)
                || state_before_numbers(scan, at).1 > at);
        if !is_name {
            break;
        }
        end = word_end(scan, at);
        if let Some(digit) = number_run_into(scan, (at, end)) {
            return Err(Slip { code: "sheet-space-missing", at: digit });
        }
        at = scan.skip_blanks(end);
    }
    let name = scan.text((begin, end)).to_lowercase();
    if state(&name).is_some() || is_measure(&name) {
        return Err(Slip { code: "sheet-mark-before-number", at: begin });
    }
    Ok((Some((begin, end)), at))
}

/// A name in square brackets, which may hold anything but a closing one.
pub(super) fn bracketed(scan: &Scan, open: usize) -> Result<(Span, usize), Slip> {
    let close = (open..scan.chars.len()).find(|&at| scan.chars[at] == ']');
    let close = close.ok_or(Slip { code: "sheet-bracket-open", at: open })?;
    let begin = scan.skip_blanks(open + 1).min(close);
    let end = (begin..close).rfind(|&at| scan.chars[at] != ' ').map_or(begin, |last| last + 1);
    Ok(((begin, end), close + 1))
}

/// Codes such as 2FORB, for plants that nobody could name.
fn is_code_with_digit_first(scan: &Scan, begin: usize) -> bool {
    let digits = scan.chars[begin..].iter().take_while(|c| c.is_ascii_digit()).count();
    let letters = begin + digits;
    let word = scan.text((letters, scan.letters_end(letters)));
    word.chars().count() > 1
        && Unit::from_word(&word).is_none()
        && state(&word).is_none()
        && !["to", "ht", "height", "width"].contains(&word.to_lowercase().as_str())
        && !scan.figure_like(begin)
}

/// Digits and what is easily typed for one: a number that nobody would call a name.
fn looks_like_number(scan: &Scan, begin: usize) -> bool {
    let word = scan.text((begin, word_end(scan, begin)));
    scan.figure_like(begin) && scan.at(begin) != Some('-') && word.chars().any(|c| c.is_ascii_digit())
}

/// The first digit of a number that follows a name without a blank: the 1 of `ATCA12-14`.
fn number_run_into(scan: &Scan, word: Span) -> Option<usize> {
    let digit = (word.0..word.1).find(|&at| scan.chars[at].is_ascii_digit()).filter(|&at| at > word.0)?;
    let tail = &scan.chars[digit..word.1];
    let is_number = tail.iter().all(|c| c.is_ascii_digit() || matches!(c, '-' | '.' | ',' | '/'));
    let has_joint =
        tail.windows(2).any(|pair| matches!(pair[0], '-' | '.' | ',' | '/') && pair[1].is_ascii_digit());
    (is_number && has_joint).then_some(digit)
}

/// Whether a mark for dead or live stands here with numbers behind it, and where it ends; live where none stands.
fn state_before_numbers(scan: &Scan, at: usize) -> (bool, usize) {
    let begin = scan.skip_blanks(at);
    let end = scan.letters_end(begin);
    let numbers = scan.skip_blanks(end);
    let followed = numbers > end && (scan.number_at(numbers) || looks_like_number(scan, numbers));
    match state(&scan.text((begin, end))) {
        Some(dead) if followed => (dead, end),
        _ => (false, at),
    }
}

/// Whether a height or a width stands here: its mark with a number behind it.
fn measures_plant(scan: &Scan, at: usize) -> bool {
    let end = scan.letters_end(at);
    let sign = scan.skip_blanks(end);
    let number = if matches!(scan.at(sign), Some('=' | ':')) { scan.skip_blanks(sign + 1) } else { sign };
    is_measure(&scan.text((at, end)).to_lowercase()) && scan.number_at(number)
}

/// The marks for a height and for a width.
fn is_measure(word: &str) -> bool {
    ["h", "ht", "height", "w", "width"].contains(&word)
}

/// The marks for dead and for live.
fn state(word: &str) -> Option<bool> {
    match word.to_lowercase().as_str() {
        "d" | "dead" => Some(true),
        "live" => Some(false),
        _ => None,
    }
}

fn word_end(scan: &Scan, at: usize) -> usize {
    let stops = |&end: &usize| matches!(scan.chars[end], ' ' | '(' | ')' | '[' | '#' | ',' | ';');
    (at + 1..scan.chars.len()).find(stops).unwrap_or(scan.chars.len())
}

/// What a mark on the row speaks of.
enum Last {
    /// Nothing has been read yet.
    Nothing,
    /// The last stretch.
    Good,
    /// Something that could not be read, so that what follows is not said of the stretch before it.
    Lost,
}

struct Reading<'a> {
    scan: &'a Scan<'a>,
    row: Row,
    last: Last,
    last_end: usize,
}

impl Reading<'_> {
    /// Reads the next thing on the row and says where it ends.
    fn next(&mut self, at: usize) -> Result<usize, Slip> {
        let scan = self.scan;
        let Some(c) = scan.at(at) else { return Ok(at + 1) };
        match c {
            ' ' | ';' => Ok(at + 1),
            ',' if !scan.number_at(at) => Ok(at + 1),
            '(' => {
                let end = closing(scan, at).ok_or(Slip { code: "sheet-bracket-open", at })?;
                self.mark(at, |stretch| &mut stretch.note, (at + 1, end));
                Ok(end + 1)
            }
            '#' => {
                let (name, end) = match scan.at(at + 1) {
                    Some('[') => bracketed(scan, at + 1)?,
                    None | Some(' ') => return Err(Slip { code: "sheet-plant-missing", at }),
                    Some(_) => ((at + 1, word_end(scan, at + 1)), word_end(scan, at + 1)),
                };
                self.mark(at, |stretch| &mut stretch.plant, name);
                Ok(end)
            }
            _ if scan.number_at(at) || looks_like_number(scan, at) => self.number(at),
            '-' => Err(Slip { code: "sheet-dash-without-start", at }),
            c if c.is_alphabetic() => self.word(at),
            _ => Err(Slip { code: "sheet-character", at }),
        }
    }

    fn number(&mut self, at: usize) -> Result<usize, Slip> {
        if self.last_end == at {
            return Err(Slip { code: "sheet-space-missing", at });
        }
        let (piece, end) = self.scan.piece(at)?;
        let dead = self.row.dead;
        self.row.stretches.push(Stretch { piece, dead, plant: None, height: None, width: None, note: None });
        self.last = Last::Good;
        self.last_end = end;
        Ok(end)
    }

    fn word(&mut self, at: usize) -> Result<usize, Slip> {
        let scan = self.scan;
        let end = scan.letters_end(at);
        let word = scan.text((at, end)).to_lowercase();
        if let Some(dead) = state(&word) {
            if scan.at(end).is_some_and(|c| c.is_ascii_digit()) {
                return Err(Slip { code: "sheet-word-not-understood", at });
            }
            if let Some(stretch) = self.stretch(at) {
                stretch.dead = dead;
            }
            return Ok(end);
        }
        let kept: fn(&mut Stretch) -> &mut Option<Span> = match word.as_str() {
            "h" | "ht" | "height" => |stretch| &mut stretch.height,
            "w" | "width" => |stretch| &mut stretch.width,
            _ => return Err(Slip { code: "sheet-word-not-understood", at }),
        };
        let sign = scan.skip_blanks(end);
        let sign = if matches!(scan.at(sign), Some('=' | ':')) { sign + 1 } else { sign };
        let length = scan.length(scan.skip_blanks(sign))?;
        self.mark(at, kept, length);
        Ok(length.1)
    }

    /// The stretch that a mark here speaks of, unless that could not be read.
    fn stretch(&mut self, at: usize) -> Option<&mut Stretch> {
        match self.last {
            Last::Nothing => {
                self.row.slips.push(Slip { code: "sheet-mark-before-number", at });
                None
            }
            Last::Good => self.row.stretches.last_mut(),
            Last::Lost => None,
        }
    }

    fn mark(&mut self, at: usize, kept: fn(&mut Stretch) -> &mut Option<Span>, found: Span) {
        match self.stretch(at).map(kept) {
            Some(Some(_)) => self.row.slips.push(Slip { code: "sheet-mark-twice", at }),
            Some(empty) => *empty = Some(found),
            None => {}
        }
    }

    /// Keeps the slip and goes on behind the word it stands in. A number with something unreadable right behind it
    /// may be another number, so it goes too.
    fn lose(&mut self, slip: Slip, at: usize) -> usize {
        if self.last_end == at && matches!(self.last, Last::Good) {
            self.row.stretches.pop();
        }
        self.last = Last::Lost;
        self.last_end = usize::MAX;
        let end = if slip.code == "sheet-bracket-open" {
            self.scan.chars.len()
        } else {
            word_end(self.scan, slip.at.max(at))
        };
        self.row.slips.push(slip);
        end
    }
}

/// The bracket that closes the one here.
fn closing(scan: &Scan, open: usize) -> Option<usize> {
    let mut depth = 0_usize;
    (open..scan.chars.len()).find(|&at| {
        match scan.chars[at] {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ => {}
        }
        depth == 0
    })
}
