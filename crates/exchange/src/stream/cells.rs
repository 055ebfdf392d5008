//! Cells of a row straight from its bytes, eight bytes at a time.

use crate::table::plain;
use tautline_engine::length::{Bare, Length, Unit};

/// How many bytes must stand behind the last row of a buffer, so that eight can always be loaded.
pub(super) const PADDING: usize = 16;

const ONES: u64 = 0x0101_0101_0101_0101;
const HIGHS: u64 = 0x8080_8080_8080_8080;

/// Eight times the same byte.
const fn spread(byte: u8) -> u64 {
    ONES * byte as u64
}

/// The high bit of every byte that is zero; a bit above the lowest one set may be wrong, the lowest never is.
const fn zero_bytes(word: u64) -> u64 {
    word.wrapping_sub(ONES) & !word & HIGHS
}

/// The lowest `count` bytes set.
const fn low_bytes(count: usize) -> u64 {
    if count >= 8 { u64::MAX } else { (1 << (8 * count)) - 1 }
}

fn word_at(bytes: &[u8], at: usize) -> u64 {
    let eight = bytes.get(at..at + 8).and_then(<[u8]>::first_chunk);
    u64::from_le_bytes(*eight.expect("rows have PADDING bytes behind them"))
}

/// Where a cell stands in the buffer, without its quotes.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Cell {
    pub(super) begin: usize,
    pub(super) end: usize,
}

impl Cell {
    pub(super) fn of(self, bytes: &[u8]) -> &[u8] {
        &bytes[self.begin..self.end]
    }

    /// The cell as text, space around it cut away. The buffer was found to be UTF-8, and cells end at ASCII marks.
    pub(super) fn text(self, bytes: &[u8]) -> &str {
        plain(str::from_utf8(self.of(bytes)).unwrap_or_default().trim())
    }

    /// A cell of at most eight bytes as one number, zeros behind; text holds no zero bytes, so no two are alike.
    pub(super) fn packed(self, bytes: &[u8]) -> Option<u64> {
        let length = self.end - self.begin;
        (length <= 8).then(|| word_at(bytes, self.begin) & low_bytes(length))
    }
}

/// Walks along the cells of one row.
pub(super) struct Cursor<'a> {
    bytes: &'a [u8],
    pub(super) at: usize,
    delimiter: u8,
    /// The row has no more cells.
    pub(super) over: bool,
    /// A quoted cell goes on over the end of the row, holds quotes, or has something behind its closing quote.
    pub(super) hard_quotes: bool,
}

impl<'a> Cursor<'a> {
    pub(super) fn new(bytes: &'a [u8], at: usize, delimiter: u8) -> Self {
        Self { bytes, at, delimiter, over: false, hard_quotes: false }
    }

    /// The next cell; an empty one behind the last.
    #[expect(clippy::inline_always, reason = "a quarter of the reader's time would go to the call")]
    #[inline(always)]
    pub(super) fn cell(&mut self) -> Cell {
        if self.over {
            return Cell::default();
        }
        let begin = self.at;
        if self.bytes[begin] == b'"' {
            return self.quoted();
        }
        let mut at = begin;
        let found = loop {
            let word = word_at(self.bytes, at);
            let marks = zero_bytes(word ^ spread(self.delimiter)) | zero_bytes(word ^ spread(b'\n'));
            if marks != 0 {
                break at + (marks.trailing_zeros() / 8) as usize;
            }
            at += 8;
        };
        self.at = found + 1;
        let mut end = found;
        if self.bytes[found] == b'\n' {
            self.over = true;
            if end > begin && self.bytes[end - 1] == b'\r' {
                end -= 1;
            }
        }
        Cell { begin, end }
    }

    #[cold]
    fn quoted(&mut self) -> Cell {
        let begin = self.at + 1;
        let inside = self.bytes[begin..].iter().take_while(|&&byte| byte != b'"' && byte != b'\n').count();
        let end = begin + inside;
        let (behind, over) = match &self.bytes[end..] {
            [b'"', b'\n', ..] => (2, true),
            [b'"', b'\r', b'\n', ..] => (3, true),
            [b'"', other, ..] if *other == self.delimiter => (2, false),
            _ => {
                self.hard_quotes = true;
                (1, true)
            }
        };
        self.over = over;
        self.at = end + behind;
        Cell { begin, end }
    }
}

/// What a plain decimal number means in a column: nanometres for each place behind the mark.
#[derive(Clone, Debug)]
pub(super) struct Scale {
    mark: u8,
    /// Nanometres of the last place with so many decimals; 0 where they aren't whole or where decimals are refused.
    last_place: [i64; 8],
}

impl Scale {
    /// The scale of bare numbers; `None` where a bare number has no single meaning.
    pub(super) fn new(bare: Option<Bare>, mark: u8) -> Option<Self> {
        let (unit, most_decimals) = match bare? {
            // 5.11 could be 5.11 ft or 5 ft 11 in
            Bare::Unit(Unit::Foot) => (Unit::Foot, 0),
            Bare::Unit(unit) => (unit, 7),
            Bare::DecimalFeet => (Unit::Foot, 7),
            Bare::FeetAndInches => return None,
        };
        let mut last_place = [0; 8];
        let mut whole = unit.nanometres();
        for place in last_place.iter_mut().take(most_decimals + 1) {
            *place = whole;
            if whole % 10 != 0 {
                break;
            }
            whole /= 10;
        }
        Some(Self { mark, last_place })
    }

    /// A plain decimal number of at most eight characters as an exact length; `None` for anything else.
    #[expect(clippy::inline_always, reason = "a quarter of the reader's time would go to the call")]
    #[inline(always)]
    pub(super) fn length(&self, bytes: &[u8], cell: Cell) -> Option<Length> {
        let count = cell.end - cell.begin;
        if count == 0 || count > 8 {
            return None;
        }
        let word = word_at(bytes, cell.begin) & low_bytes(count);
        let mark = zero_bytes(word ^ spread(self.mark)) & low_bytes(count);
        let (digits, count, decimals) = if mark == 0 {
            (word, count, 0)
        } else {
            let before = (mark.trailing_zeros() / 8) as usize;
            let decimals = count - before - 1;
            if before == 0 || decimals == 0 {
                return None;
            }
            let whole = word & low_bytes(before);
            (whole | ((word >> 8) & !low_bytes(before)), count - 1, decimals)
        };
        // eight digits, zeros in front
        let missing = 8 - count;
        let digits = if missing == 0 {
            digits
        } else {
            (digits << (8 * missing)) | (spread(b'0') & low_bytes(missing))
        };
        let number = eight_digits(digits)?;
        let last_place = self.last_place[decimals];
        let nanometres = number * last_place;
        (last_place > 0 && nanometres <= Length::LONGEST.nanometres())
            .then(|| Length::from_nanometres(nanometres))
    }
}

/// The number that eight ASCII digits write, the first in the lowest byte.
///
/// # Source
/// Pairs, then fours, then the whole, by multiplication: common practice, from memory; a test compares it with
/// the standard library.
fn eight_digits(word: u64) -> Option<i64> {
    let highs = 0xf0f0_f0f0_f0f0_f0f0;
    let digits = spread(b'0');
    if word & highs != digits || word.wrapping_add(0x0606_0606_0606_0606) & highs != digits {
        return None;
    }
    let ones = word - digits;
    let pairs = ones * 10 + (ones >> 8);
    let lanes = 0x0000_00ff_0000_00ff;
    let high = (pairs & lanes).wrapping_mul(0x000f_4240_0000_0064);
    let low = ((pairs >> 16) & lanes).wrapping_mul(0x0000_2710_0000_0001);
    i64::try_from(high.wrapping_add(low) >> 32).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use tautline_engine::length::{DecimalMark, read};

    fn padded(text: &str) -> Vec<u8> {
        let mut bytes = text.as_bytes().to_vec();
        bytes.push(b'\n');
        bytes.resize(bytes.len() + PADDING, 0);
        bytes
    }

    fn cells(text: &str) -> Vec<String> {
        let bytes = padded(text);
        let mut cursor = Cursor::new(&bytes, 0, b',');
        let mut found = Vec::new();
        while !cursor.over {
            found.push(cursor.cell().text(&bytes).to_owned());
        }
        found
    }

    #[test]
    fn cells_end_at_delimiters_and_rows_at_their_end() {
        assert_eq!(
            cells("S000001,L01,, a longer cell than eight ,x\r"),
            ["S000001", "L01", "", "a longer cell than eight", "x"]
        );
        assert_eq!(cells("\"a,b\",\"c\"\r"), ["a,b", "c"]);
        assert_eq!(cells("5'3\",x"), ["5'3\"", "x"]);
        let hard = |text: &str| {
            let bytes = padded(text);
            let mut cursor = Cursor::new(&bytes, 0, b',');
            cursor.cell();
            cursor.hard_quotes
        };
        assert!(hard("\"a\"\"b\",c") && hard("\"never closed,c") && !hard("\"a\",c"));
    }

    proptest! {
        /// A number that the quick way takes is the one that the general reader takes; what it doesn't take, that
        /// reader refuses too, or it has more than two decimals or more than eight characters.
        #[test]
        fn plain_numbers_are_the_general_readers(
            text in prop_oneof!["[0-9]{1,8}", "[0-9]{1,6}\\.[0-9]{1,6}", "[0-9.,a-e ½-]{0,9}"],
            unit in prop::sample::select(vec!["mm", "cm", "in", "dm", "ft", "m", "decimal ft", "ft-in"]),
            comma in any::<bool>(),
        ) {
            let text = if comma { text.replace('.', ",") } else { text };
            let bare = Bare::from_words(unit);
            let (mark, byte) = if comma { (DecimalMark::Comma, b',') } else { (DecimalMark::Point, b'.') };
            let bytes = padded(&text);
            let cell = Cell { begin: 0, end: text.len() };
            let quick = Scale::new(bare, byte).and_then(|scale| scale.length(&bytes, cell));
            let general = read(&text, bare, mark).ok().filter(|written| !written.rounded);
            if let Some(length) = quick {
                prop_assert_eq!(Some(length), general.map(|written| written.length));
            } else {
                let plain = text.bytes().all(|b| b.is_ascii_digit() || b == byte)
                    && !text.starts_with(char::from(byte));
                let decimals = text.split(char::from(byte)).nth(1).map_or(0, str::len);
                let common = plain && decimals <= 2 && text.len() <= 8 && unit != "ft-in";
                prop_assert!(general.is_none() || !common);
            }
        }

        #[test]
        fn eight_digits_are_their_number(number in 0_i64..100_000_000) {
            let text = format!("{number:08}");
            prop_assert_eq!(eight_digits(word_at(text.as_bytes(), 0)), Some(number));
        }
    }
}
