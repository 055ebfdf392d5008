//! The row that begins a line: its name, how long it is, where it lies, and how far it was read.

use super::row::bracketed;
use super::scan::{Scan, Slip, Span};
use tautline_engine::length::DecimalMark;

/// How far a line was read, where the sheet says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Told {
    /// Read from end to end, and nothing stood on it.
    Nothing,
    /// Not read, and why, if that is said.
    NotRead(Option<Span>),
    /// Read from zero to here.
    ReadTo(Span),
    /// Laid out and not yet read.
    Planned,
    /// The rest of a line that stands further up.
    Continued,
}

/// What the row says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Begun {
    pub(super) name: Span,
    pub(super) length: Option<Span>,
    pub(super) stratum: Option<Span>,
    pub(super) plot: Option<Span>,
    pub(super) slope: Option<Span>,
    pub(super) pass: Option<Span>,
    pub(super) told: Option<(usize, Told)>,
    pub(super) slips: Vec<Slip>,
}

/// Reads what stands behind the word `Line`.
pub(super) fn begun(scan: &Scan, value: Span) -> Begun {
    let mut begun = Begun::default();
    let mut items = items(scan, value);
    let Some(first) = items.first().copied() else {
        begun.slips.push(Slip { code: "sheet-line-without-name", at: value.0 });
        return begun;
    };
    if scan.at(first.0) == Some('[') {
        match bracketed(scan, first.0) {
            Ok((name, end)) => {
                begun.name = name;
                items = self::items(scan, (end, value.1));
            }
            Err(slip) => {
                begun.slips.push(slip);
                return begun;
            }
        }
    } else {
        // `Line 1 65 ft` and `Line 1 nothing`, with the comma forgotten
        let word_end = (first.0..first.1).find(|&at| scan.chars[at] == ' ').unwrap_or(first.1);
        let rest = (scan.skip_blanks(word_end).min(first.1), first.1);
        // the 2 of `North 2` is no length; the 65 of `2 65` is one that lacks its unit
        let bare = scan.chars[rest.1 - 1].is_ascii_digit() && !scan.number_at(first.0);
        let parts = if rest.0 < rest.1 { length_apart(scan, rest) } else { Vec::new() };
        let sound = parts.iter().all(|&part| Begun::default().take(scan, part).is_ok());
        let forgotten = !parts.is_empty() && !bare && sound;
        begun.name = if forgotten { (first.0, word_end) } else { first };
        items.splice(..1, if forgotten { parts } else { Vec::new() });
    }
    if begun.name.0 == begun.name.1 {
        begun.slips.push(Slip { code: "sheet-line-without-name", at: value.0 });
    }
    for item in items.into_iter().flat_map(|item| length_apart(scan, item)) {
        if let Err(slip) = begun.take(scan, item) {
            begun.slips.push(slip);
        }
    }
    begun
}

/// A length and what stands behind it, as in `65 ft nothing`.
fn length_apart(scan: &Scan, item: Span) -> Vec<Span> {
    match scan.length(item.0) {
        Ok(length) if length.1 < item.1 && scan.number_at(item.0) => {
            vec![length, (scan.skip_blanks(length.1).min(item.1), item.1)]
        }
        _ => vec![item],
    }
}

impl Begun {
    fn take(&mut self, scan: &Scan, item: Span) -> Result<(), Slip> {
        let twice = Slip { code: "sheet-mark-twice", at: item.0 };
        if let Some(told) = told(scan, item)? {
            return if self.told.replace((item.0, told)).is_some() { Err(twice) } else { Ok(()) };
        }
        if scan.number_at(item.0) {
            let length = scan.length(item.0)?;
            if length.1 < item.1 {
                return Err(Slip { code: "sheet-line-item", at: item.0 });
            }
            return if self.length.replace(length).is_some() { Err(twice) } else { Ok(()) };
        }
        let word_end = scan.letters_end(item.0);
        let value = (scan.skip_blanks(word_end).min(item.1), item.1);
        let kept = match scan.text((item.0, word_end)).to_lowercase().as_str() {
            "stratum" => &mut self.stratum,
            "plot" => &mut self.plot,
            "slope" => &mut self.slope,
            "pass" => &mut self.pass,
            _ => return Err(Slip { code: "sheet-line-item", at: item.0 }),
        };
        let value = if scan.at(value.0) == Some('[') { bracketed(scan, value.0)?.0 } else { value };
        if value.0 == value.1 {
            return Err(Slip { code: "sheet-line-item", at: item.0 });
        }
        if kept.replace(value).is_some() { Err(twice) } else { Ok(()) }
    }
}

/// `nothing`, `not read` with the reason behind it, `read to 24 m`, `planned` or `continued`, if that is what it says.
pub(super) fn told(scan: &Scan, item: Span) -> Result<Option<Told>, Slip> {
    let text = scan.text(item).to_lowercase();
    let text = text.trim_end_matches([' ', '.', '!']);
    Ok(Some(match text {
        "nothing" | "nothing found" | "nothing on it" | "read, nothing found" => Told::Nothing,
        "planned" => Told::Planned,
        "continued" | "cont" => Told::Continued,
        "not read" => Told::NotRead(None),
        _ => {
            if let Some(rest) = text.strip_prefix("not read") {
                let Some(reason) = reason(scan, item, rest) else { return Ok(None) };
                Told::NotRead(Some(reason))
            } else if text.starts_with("read to") && !scan.at(item.0 + 7).is_some_and(char::is_alphabetic) {
                let begin = scan.skip_blanks(item.0 + 7);
                let to = scan.length(begin)?;
                if to.1 < item.1 && scan.chars[to.1..item.1].iter().any(|c| !matches!(c, ' ' | '.')) {
                    return Err(Slip { code: "sheet-line-item", at: to.1 });
                }
                Told::ReadTo(to)
            } else {
                return Ok(None);
            }
        }
    }))
}

/// The reason behind `not read`: after a colon, `because`, a comma or a dash, or in brackets.
fn reason(scan: &Scan, item: Span, rest: &str) -> Option<Span> {
    let because = rest.trim_start().starts_with("because ");
    if !because && !rest.trim_start().starts_with([':', ',', '-', '(', ';', '=']) {
        return None;
    }
    let mut begin = scan.skip_blanks(item.0 + "not read".len());
    begin += if because { "because".len() } else { 1 };
    let mut end = item.1;
    while end > begin && matches!(scan.chars[end - 1], ' ' | ')') {
        end -= 1;
    }
    Some((scan.skip_blanks(begin).min(end), end))
}

/// The row cut at its commas and semicolons, except inside brackets, between the digits of a decimal comma, and
/// behind `not read`, whose reason goes to the end of the row.
fn items(scan: &Scan, value: Span) -> Vec<Span> {
    let mut items = Vec::new();
    let mut begin = value.0;
    let mut depth = 0_i32;
    let mut in_name = false;
    let digit = |at: usize| scan.at(at).is_some_and(|c| c.is_ascii_digit());
    let mut push = |from: usize, to: usize| {
        let from = scan.skip_blanks(from).min(to);
        let to = (from..to).rfind(|&at| scan.chars[at] != ' ').map_or(from, |last| last + 1);
        if to > from {
            items.push((from, to));
        }
    };
    for at in value.0..value.1 {
        let decimal = scan.mark == DecimalMark::Comma && at > value.0 && digit(at - 1) && digit(at + 1);
        match scan.chars[at] {
            // in square brackets a name may hold anything
            '[' if !in_name => in_name = true,
            ']' => in_name = false,
            _ if in_name => {}
            '(' => depth += 1,
            ')' => depth -= 1,
            ',' | ';' if depth <= 0 && !decimal => {
                push(begin, at);
                begin = at + 1;
            }
            _ => {}
        }
        let from = scan.skip_blanks(begin);
        if from == at && scan.text((at, value.1.min(at + 8))).eq_ignore_ascii_case("not read") {
            break;
        }
    }
    push(begin, value.1);
    items
}
