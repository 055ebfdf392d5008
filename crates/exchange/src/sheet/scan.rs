//! Numbers on a row: where each begins and ends, and what a dash between two of them means.

use tautline_engine::length::{Bare, DecimalMark, Unit};

/// A stretch of characters: from, up to but not including.
pub(super) type Span = (usize, usize);

/// What is wrong, and at which character, counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Slip {
    pub(super) code: &'static str,
    pub(super) at: usize,
}

/// One length as far as it reaches, its unit included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Number {
    span: Span,
    unit: Option<(Unit, Span)>,
    /// Nothing but whole digits.
    whole: bool,
    /// Nothing but a fraction, as in `1/2`.
    fraction: bool,
}

/// Two edges, or one length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Piece {
    /// From here to there. The start's text has the stop's unit, where only the stop has one.
    Edges { start: Span, start_text: String, stop: Span },
    /// Only a length.
    Length(Span),
}

/// A row with its look-alikes evened out, and what a bare number on it means.
#[derive(Clone, Copy)]
pub(super) struct Scan<'a> {
    pub(super) chars: &'a [char],
    pub(super) bare: Option<Bare>,
    pub(super) mark: DecimalMark,
}

impl Scan<'_> {
    pub(super) fn at(&self, at: usize) -> Option<char> {
        self.chars.get(at).copied()
    }

    pub(super) fn text(&self, span: Span) -> String {
        self.chars[span.0..span.1].iter().collect()
    }

    pub(super) fn skip_blanks(&self, mut at: usize) -> usize {
        while self.at(at) == Some(' ') {
            at += 1;
        }
        at
    }

    /// Where the run of letters that begins here ends.
    pub(super) fn letters_end(&self, mut at: usize) -> usize {
        while self.at(at).is_some_and(char::is_alphabetic) {
            at += 1;
        }
        at
    }

    fn digits_end(&self, mut at: usize) -> usize {
        while self.at(at).is_some_and(|c| c.is_ascii_digit()) {
            at += 1;
        }
        at
    }

    fn digit_at(&self, at: usize) -> bool {
        self.at(at).is_some_and(|c| c.is_ascii_digit())
    }

    /// Whether a number begins here.
    pub(super) fn number_at(&self, at: usize) -> bool {
        match self.at(at) {
            Some('.') => self.digit_at(at + 1),
            Some(',') => self.mark == DecimalMark::Comma && self.digit_at(at + 1),
            Some(c) => c.is_ascii_digit() || is_vulgar(c),
            None => false,
        }
    }

    /// The length that begins here, with its unit and the smaller parts behind it: `5 1/2`, `5'3"`, `5 ft 3 in`.
    fn number(&self, begin: usize) -> Result<Number, Slip> {
        if !self.number_at(begin) {
            let letter = matches!(self.at(begin), Some('O' | 'o' | 'l' | 'I'));
            let code = if letter { "sheet-letter-for-digit" } else { "sheet-number-missing" };
            return Err(Slip { code, at: begin });
        }
        let mut number = self.figure(begin);
        let mut parts = 1;
        while let Some((unit, _)) = number.unit {
            let next_at = self.skip_blanks(number.span.1);
            if !self.number_at(next_at) {
                break;
            }
            let next = self.figure(next_at);
            // behind feet a number without unit is inches, as everywhere
            let joins = next.unit.map_or(unit == Unit::Foot && parts == 1, |(smaller, _)| smaller < unit);
            if !joins {
                break;
            }
            number.span.1 = next.span.1;
            number.whole = false;
            parts += 1;
            match next.unit {
                Some(_) => number.unit = next.unit,
                None => break,
            }
        }
        if parts > 1 {
            // several units: none of them is the start's as well
            number.unit = number.unit.map(|(unit, _)| (unit, (begin, begin)));
        }
        let end = number.span.1;
        let other_mark = if self.mark == DecimalMark::Comma { '.' } else { ',' };
        if let Some(at) = (begin..end).find(|&at| self.chars[at] == other_mark && self.digit_at(at + 1)) {
            return Err(Slip { code: "sheet-decimal-mark", at });
        }
        match self.at(end) {
            Some('O' | 'o' | 'l' | 'I') if self.figure_like(end) => {
                Err(Slip { code: "sheet-letter-for-digit", at: end })
            }
            _ => Ok(number),
        }
    }

    /// Whether the word that begins here is digits with letters among them that look like digits.
    pub(super) fn figure_like(&self, begin: usize) -> bool {
        let rest = self.chars.iter().skip(begin);
        rest.take_while(|c| !matches!(c, ' ' | '(' | '#'))
            .all(|c| c.is_ascii_digit() || matches!(c, 'O' | 'o' | 'l' | 'I' | '.' | ',' | '/' | '-'))
    }

    /// Digits with decimals or a fraction, and one unit.
    fn figure(&self, begin: usize) -> Number {
        let mut at = self.digits_end(begin);
        let mut whole = at > begin;
        let mut fraction = false;
        while matches!(self.at(at), Some('.' | ',')) && self.digit_at(at + 1) {
            whole = false;
            at = self.digits_end(at + 1);
        }
        if whole && self.at(at) == Some('/') && self.digit_at(at + 1) {
            at = self.digits_end(at + 1);
            whole = false;
            fraction = true;
        } else if whole || at == begin {
            let next = if whole { self.skip_blanks(at) } else { at };
            let end = self.digits_end(next);
            if self.at(next).is_some_and(is_vulgar) {
                fraction = !whole;
                whole = false;
                at = next + 1;
            } else if end > next && self.at(end) == Some('/') && self.digit_at(end + 1) {
                whole = false;
                at = self.digits_end(end + 1);
            }
        }
        let unit = self.unit(self.skip_blanks(at));
        let end = unit.map_or(at, |(_, span)| span.1);
        Number { span: (begin, end), unit, whole: whole && unit.is_none(), fraction }
    }

    /// The unit that stands here, as a word or a mark.
    fn unit(&self, at: usize) -> Option<(Unit, Span)> {
        let mut end = self.letters_end(at);
        if end == at && matches!(self.at(at), Some('\'' | '′' | '’' | '"' | '″' | '”')) {
            let doubled = self.at(at) == Some('\'') && self.at(at + 1) == Some('\'');
            end = at + 1 + usize::from(doubled);
        }
        let unit = Unit::from_word(&self.text((at, end)))?;
        let dotted = self.at(end) == Some('.') && self.at(end + 1).is_none_or(|c| c == ' ');
        Some((unit, (at, end + usize::from(dotted && self.letters_end(at) == end))))
    }

    /// One length that stands alone, such as a height: where it ends.
    pub(super) fn length(&self, begin: usize) -> Result<Span, Slip> {
        let number = self.number(begin)?;
        let dash = self.at(number.span.1) == Some('-');
        if self.bare == Some(Bare::FeetAndInches) && number.unit.is_none() && dash {
            let inches = self.number(number.span.1 + 1)?;
            return Ok((begin, inches.span.1));
        }
        Ok(number.span)
    }

    /// The edges or the length that begin here, and where they end.
    pub(super) fn piece(&self, begin: usize) -> Result<(Piece, usize), Slip> {
        // numbers, and whether a word stood between this one and the one before instead of a dash
        let mut numbers = vec![(self.number(begin)?, false)];
        let mut dashes = vec![begin];
        let mut end = numbers[0].0.span.1;
        while let Some((dash, next, is_word)) = self.joint(end) {
            let number = self.number(next)?;
            end = number.span.1;
            numbers.push((number, is_word));
            dashes.push(dash);
        }
        let feet_and_inches = self.bare == Some(Bare::FeetAndInches);
        let own_unit = numbers.iter().any(|(number, _)| number.unit.is_some());
        let words: Vec<usize> = (0..numbers.len()).filter(|&at| numbers[at].1).collect();
        let too_many = |at: usize| Slip { code: "sheet-too-many-dashes", at: dashes[at] };
        // how many numbers make one length on this sheet: 5-3 is one of feet and inches
        let split = match (words.as_slice(), numbers.len()) {
            ([], 1) => None,
            ([], 2) if feet_and_inches && !own_unit => None,
            ([], 2) => Some(1),
            ([], 4) if feet_and_inches => Some(2),
            (&[at], count) if at <= 2 && count - at <= 2 && (feet_and_inches || count == 2) => Some(at),
            (_, count) => return Err(too_many(count - 1)),
        };
        let last = numbers[numbers.len() - 1].0;
        let Some(split) = split else { return Ok((Piece::Length((begin, last.span.1)), end)) };
        let first = numbers[split - 1].0;
        let start = (begin, first.span.1);
        if split == 1 && first.whole && last.fraction && !numbers[1].1 && self.text(start) != "0" {
            return Err(Slip { code: "sheet-dash-or-fraction", at: dashes[1] });
        }
        let unit = match (first.unit, last.unit) {
            (None, Some((_, span))) if span.1 > span.0 => format!(" {}", self.text(span)),
            _ => String::new(),
        };
        let start_text = self.text(start) + &unit;
        Ok((Piece::Edges { start, start_text, stop: (numbers[split].0.span.0, last.span.1) }, end))
    }

    /// What joins a start and a stop: a dash, two dots, or `to`. Its place, the next number's, and whether it is
    /// anything but a dash.
    fn joint(&self, end: usize) -> Option<(usize, usize, bool)> {
        let at = self.skip_blanks(end);
        let mut next = at;
        while self.at(next) == Some('-') {
            next += 1;
        }
        if next > at {
            return Some((at, self.skip_blanks(next), false));
        }
        let is_word = (self.at(at), self.at(at + 1)) == (Some('.'), Some('.'))
            || (self.letters_end(at) == at + 2 && self.text((at, at + 2)).eq_ignore_ascii_case("to"));
        is_word.then(|| (at, self.skip_blanks(at + 2), true))
    }
}

fn is_vulgar(c: char) -> bool {
    matches!(c, '½' | '¼' | '¾' | '⅛' | '⅜' | '⅝' | '⅞' | '⅓' | '⅔')
}
