//! Which line is read, on which tape, under which rules; and the year's bands and marks.

use crate::device::here;
use crate::session::Session;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use tautline_engine::length::{Bare, DecimalMark, Length, Notation, Unit};
use tautline_engine::practice::level::Level;
use tautline_survey::measure::Measure;
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::{Exercise, Laid, Marking, TapeKind};
use tautline_survey::protocol::Protocol;

/// How tapes are numbered, each with the catalogue's key of its name.
pub(super) const TAPES: [(TapeKind, &str); 3] = [
    (TapeKind::FeetAndInches, "lesson-tape-ft-in"),
    (TapeKind::DecimalFeet, "lesson-tape-decimal-ft"),
    (TapeKind::Metric, "lesson-tape-metric"),
];

/// Lengths that are offered: half the usual one, the usual one, twice as long.
const HALVES: [i64; 3] = [1, 2, 4];

/// What was chosen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Chosen {
    pub(super) level: u8,
    pub(super) number: u64,
    /// The word of the tape's kind.
    pub(super) tape: String,
    /// How many halves of the usual length the line has.
    pub(super) halves: i64,
    /// The fingerprint of the protocol; empty for the usual one.
    pub(super) protocol: String,
}

impl Default for Chosen {
    fn default() -> Self {
        let tape = TapeKind::FeetAndInches.word().to_owned();
        Self { level: 1, number: 1, tape, halves: 2, protocol: String::new() }
    }
}

/// The protocols of the notebook, and those that are shipped, the usual one first.
fn protocols(session: Session) -> Vec<Protocol> {
    let shipped = tautline_exchange::protocol::shipped();
    let (usual, others): (Vec<_>, Vec<_>) =
        shipped.into_iter().partition(|(name, _)| *name == Laid::USUAL_PROTOCOL);
    let own = session.standing_untracked().current.protocols();
    let mut known: Vec<Protocol> = Vec::new();
    for one in usual.into_iter().chain(others).map(|(_, one)| one).chain(own) {
        if known.iter().all(|other| other.fingerprint() != one.fingerprint()) {
            known.push(one);
        }
    }
    known
}

impl Chosen {
    pub(super) fn tape(&self) -> TapeKind {
        TapeKind::from_word(&self.tape).unwrap_or(TapeKind::FeetAndInches)
    }

    /// How the lines of the choice are laid and read.
    pub(super) fn laid(&self, session: Session) -> Laid {
        let known = protocols(session);
        let named = known.iter().position(|one| one.fingerprint() == self.protocol).unwrap_or(0);
        let protocol = known.into_iter().nth(named).unwrap_or_default();
        Laid { length: self.length(), tape: self.tape(), protocol }
    }

    fn length(&self) -> Length {
        length(self.tape(), self.halves)
    }

    pub(super) fn level(&self) -> Level {
        Level::from_number(self.level).unwrap_or(Level::One)
    }

    pub(super) fn exercise(&self, session: Session) -> Exercise {
        self.laid(session).exercise(self.level(), self.number)
    }

    /// What a bare number on a sheet means.
    pub(super) fn unit(&self) -> Bare {
        match self.tape() {
            TapeKind::FeetAndInches => Bare::Unit(Unit::Inch),
            TapeKind::DecimalFeet => Bare::DecimalFeet,
            TapeKind::Metric => Bare::Unit(Unit::Metre),
        }
    }

    /// The unit in which long ways are given on the tape.
    pub(super) fn whole(&self) -> Unit {
        if self.tape() == TapeKind::Metric { Unit::Metre } else { Unit::Foot }
    }

    /// How to type a length, by the tape.
    pub(super) fn hint(&self) -> &'static str {
        match self.tape() {
            TapeKind::FeetAndInches => "lesson-hint-inches",
            TapeKind::DecimalFeet => "lesson-hint-decimal-feet",
            TapeKind::Metric => "lesson-hint-metres",
        }
    }
}

/// A length without needless decimals.
pub(super) fn shown_length(length: Length, unit: Unit) -> Value {
    let whole = length.nanometres() % unit.nanometres() == 0;
    Value::Length(length, Notation::decimals(unit, u8::from(!whole)))
}

fn length(tape: TapeKind, halves: i64) -> Length {
    Length::from_nanometres(tape.usual_length().nanometres() / 2 * halves.clamp(1, 4))
}

/// A number by chance, for a line that nobody has seen yet.
pub(super) fn by_chance() -> u64 {
    let mut bytes = [0; 2];
    here::random(&mut bytes);
    1 + u64::from(u16::from_le_bytes(bytes)) % 9999
}

/// Level, number, tape, length and rules.
pub(super) fn fields(session: Session, chosen: RwSignal<Chosen>) -> impl IntoView {
    let levels = Level::ALL.map(|level| {
        let number = level.number();
        let checked = move || chosen.with(|chosen| chosen.level == number);
        let choose = move |_| chosen.update(|chosen| chosen.level = number);
        view! {
            <label class="option">
                <input type="radio" name="level" prop:checked=checked on:change=choose/>
                <span>{session.word(&format!("lesson-level-{number}"))}</span>
            </label>
        }
    });
    let number = move |event| {
        if let Ok(number) = event_target_value(&event).trim().parse() {
            chosen.update(|chosen| chosen.number = number);
        }
    };
    view! {
        <fieldset><legend>{session.word("lesson-level")}</legend>{levels.collect_view()}</fieldset>
        {tape_fields(session, chosen)}
        <label>{session.word("lesson-number")}
            <input type="text" inputmode="numeric" autocomplete="off" prop:value=move || chosen.with(|chosen| chosen.number.to_string()) on:change=number/>
        </label>
    }
}

/// Tape, length and rules.
pub(super) fn tape_fields(session: Session, chosen: RwSignal<Chosen>) -> impl IntoView {
    let tapes = TAPES.map(|(tape, name)| {
        let selected = move || chosen.with(|chosen| chosen.tape() == tape);
        view! { <option value=tape.word() selected=selected>{session.word(name)}</option> }
    });
    let lengths = move || {
        let (tape, unit) = chosen.with(|chosen| (chosen.tape(), chosen.whole()));
        HALVES
            .map(|halves| {
                let shown = session.words().value(&shown_length(length(tape, halves), unit));
                let selected = move || chosen.with(|chosen| chosen.halves == halves);
                view! { <option value=halves.to_string() selected=selected>{shown}</option> }
            })
            .collect_view()
    };
    let rules = protocols(session).into_iter().map(|protocol| {
        let value = protocol.fingerprint();
        let own = value.clone();
        let selected = move || chosen.with(|chosen| chosen.protocol == own);
        view! { <option value=value selected=selected>{protocol.name}</option> }
    });
    let rules = rules.collect_view();
    let halves = move |event| {
        let halves = event_target_value(&event).parse().unwrap_or(2);
        chosen.update(|chosen| chosen.halves = halves);
    };
    view! {
        <label>{session.word("lesson-tape")}
            <select on:change=move |event| chosen.update(|chosen| chosen.tape = event_target_value(&event))>{tapes.collect_view()}</select>
        </label>
        <label>{session.word("lesson-length")}<select on:change=halves>{lengths}</select></label>
        <label>{session.word("lesson-rules")}
            <select on:change=move |event| chosen.update(|chosen| chosen.protocol = event_target_value(&event))>{rules}</select>
        </label>
    }
}

/// The year's bands and marks as typed; empty ones are the example's.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub(super) struct Year {
    pub(super) bands: String,
    pub(super) marks: String,
    pub(super) tolerance: String,
}

impl Year {
    /// The name under which they are kept.
    pub(super) const NAME: &'static str = "year";

    /// The marking, or what of it can't be understood.
    pub(super) fn marking(&self, unit: Bare) -> Result<Marking, Message> {
        let mut marking = Marking::example();
        let given = |text: &str| !text.trim().is_empty();
        let refused = |code, found: &str| Message::new(code).with("found", found.trim());
        if given(&self.bands) {
            marking.bands = Marking::read_bands(&self.bands)
                .ok_or_else(|| refused("practice-option-bands", &self.bands))?;
            // whoever typed the bands has their year's rules
            marking.example = false;
        }
        if given(&self.marks) {
            [marking.edges, marking.species, marking.arithmetic] = Marking::read_marks(&self.marks)
                .ok_or_else(|| refused("practice-option-marks", &self.marks))?;
        }
        if given(&self.tolerance) {
            let read = Measure::read(&self.tolerance, Some(unit), DecimalMark::Point);
            let read = read.map_err(|_| refused("practice-cell-length", &self.tolerance))?;
            marking.tolerance = Some(read.length());
        }
        Ok(marking)
    }

    /// The marking; the example's where something can't be understood, which [`year`] says beside it.
    pub(super) fn marking_or_example(&self, unit: Bare) -> Marking {
        self.marking(unit).unwrap_or_else(|_| Marking::example())
    }
}

/// Bands, marks and tolerance, to be typed in from the year's rules.
pub(super) fn year(session: Session, year: RwSignal<Year>, unit: Signal<Bare>) -> impl IntoView {
    type Part = fn(&mut Year) -> &mut String;
    let field = move |label: &'static str, example: &'static str, part: Part| {
        let value = move || year.with(|year| part(&mut year.clone()).clone());
        view! {
            <label>{session.word(label)}
                <input type="text" autocomplete="off" placeholder=example prop:value=value
                    on:input=move |event| year.update(|year| *part(year) = event_target_value(&event))/>
            </label>
        }
    };
    let wrong = move || year.with(|year| year.marking(unit.get()).err()).map(|wrong| session.say(&wrong));
    view! {
        <details class="year"><summary>{session.word("lesson-year")}</summary>
            <p>{session.word("practice-example-marks")}</p>
            {field("lesson-year-bands", "1=10, 2=7, 4=4", |year| &mut year.bands)}
            {field("lesson-year-marks", "20, 10, 10", |year| &mut year.marks)}
            {field("lesson-year-tolerance", "", |year| &mut year.tolerance)}
            <p class="wrong" role="alert">{wrong}</p>
        </details>
    }
}
