//! The long picture of a line, seen from above, that one walks along: pieces side by side, and what is drawn over them.

use crate::session::Session;
use leptos::prelude::*;
use std::rc::Rc;
use tautline_engine::length::{Length, Unit};
use tautline_engine::practice::line::Other;
use tautline_figures::practice::{Words, draw_meaning, draw_piece, piece_height};
use tautline_figures::{Frame, Palette};
use tautline_survey::message::Message;
use tautline_survey::practice::{Exercise, Placed, SPECIES, TapeKind};

/// How wide a piece is drawn, in pixels. So a half inch, a centimetre and a hundredth of a foot are a few whole pixels.
const PIECE: u16 = 600;
/// Room above the picture for what was set, and below it for the mark that is dragged.
pub(super) const ABOVE: f64 = 34.0;
pub(super) const BELOW: f64 = 60.0;

/// A picture of a line.
pub(super) struct Picture {
    pub(super) exercise: Exercise,
    each: Length,
    pieces: u32,
    /// How high the ground is drawn.
    pub(super) high: f64,
}

impl Picture {
    pub(super) fn of(exercise: Exercise) -> Rc<Self> {
        let each = match exercise.tape {
            TapeKind::Metric => Length::from_units(150, Unit::Centimetre),
            TapeKind::FeetAndInches | TapeKind::DecimalFeet => Length::from_units(60, Unit::Inch),
        };
        let (whole, part) = (exercise.line.length.nanometres(), each.nanometres());
        let pieces = u32::try_from((whole + part - 1) / part).unwrap_or(1).max(1);
        let high = f64::from(PIECE) * piece_height(each);
        Rc::new(Self { exercise, each, pieces, high })
    }

    /// How wide it is all together.
    pub(super) fn wide(&self) -> f64 {
        f64::from(PIECE) * f64::from(self.pieces)
    }

    /// Where a place on the tape lies on it.
    pub(super) fn x(&self, divisions: i64) -> f64 {
        let step = self.exercise.line.step().in_unit(Unit::Metre);
        #[expect(clippy::cast_precision_loss, reason = "divisions of a tape")]
        let metres = divisions as f64 * step;
        metres / self.each.in_unit(Unit::Metre) * f64::from(PIECE)
    }

    /// The division nearest to a share of its width.
    pub(super) fn division(&self, share: f64) -> i64 {
        let metres = share * f64::from(self.pieces) * self.each.in_unit(Unit::Metre);
        #[expect(clippy::cast_possible_truncation, reason = "divisions of a tape")]
        let nearest = (metres / self.exercise.line.step().in_unit(Unit::Metre)).round() as i64;
        nearest
    }

    /// All pieces side by side.
    fn drawn(&self, session: Session) -> String {
        let name = self.exercise.name();
        let piece = |number: u32| {
            let place = |number: u32| Length::from_nanometres(self.each.nanometres() * i64::from(number));
            let frame = Frame {
                title: session.say(
                    &Message::new("lesson-piece")
                        .with("line", name.as_str())
                        .with("piece", u64::from(number + 1))
                        .with("pieces", u64::from(self.pieces)),
                ),
                mark: session.words().mark(),
                ..Frame::new(&format!("walk-{name}-{number}"), PIECE, Palette::screen())
            };
            let drawn = draw_piece(&self.exercise.line, (place(number), place(number + 1)), &frame);
            ["<div class=\"piece\">", &drawn, "</div>"].concat()
        };
        (0..self.pieces).map(piece).collect()
    }

    /// What the marks mean, as wide as the screen.
    pub(super) fn meaning(&self, session: Session) -> impl IntoView + use<> {
        let words = session.words();
        let names = Words {
            species: SPECIES.iter().map(|(code, common, _)| [code, " ", common].concat()).collect(),
            dead: words.word("practice-dead"),
            others: Other::ALL.map(|other| words.word(other.code())),
            edge: words.word("practice-edge"),
        };
        let drawn = [(720, "wide"), (360, "narrow")].map(|(width, name)| {
            let frame = Frame {
                title: words.word("lesson-meaning"),
                ..Frame::new(&format!("meaning-{name}"), width, Palette::screen())
            };
            let drawn = draw_meaning(&self.exercise.line, &names, &frame);
            ["<div class=\"", name, "\">", &drawn, "</div>"].concat()
        });
        view! { <div class="meaning" inner_html=drawn.concat()></div> }
    }
}

/// The pieces with something drawn over them, on one track.
pub(super) fn track(session: Session, picture: &Picture, over: AnyView) -> impl IntoView + use<> {
    let box_of_it = format!("0 0 {} {}", picture.wide(), ABOVE + picture.high + BELOW);
    view! {
        <div class="pieces" inner_html=picture.drawn(session)></div>
        <svg class="over figure" viewBox=box_of_it aria-hidden="true">{over}</svg>
    }
}

/// An intercept over the picture: a bar with its species above the ground, its edges down to the tape or below it.
pub(super) fn bar(picture: &Picture, set: Placed, under: bool) -> impl IntoView + use<> {
    let (from, to) = (picture.x(set.start), picture.x(set.stop));
    let middle = ABOVE + picture.high / 2.0;
    let (top, far) = if under { (ABOVE + picture.high + 6.0, middle) } else { (6.0, middle) };
    let tone = set.species % 4 + 1;
    let text = |number: f64| format!("{number:.1}");
    let near = if under { top } else { top + 22.0 };
    let edges = format!("M{from:.1} {near:.1}V{far:.1}M{to:.1} {near:.1}V{far:.1}");
    let code = Exercise::code(Some(set.species));
    view! {
        <path class=format!("edges figure-line-tone-{tone}") d=edges></path>
        <rect class=format!("figure-fill-tone-{tone}") x=text(from) y=text(top) width=text((to - from).max(1.0)) height="22"></rect>
        <text class="code" x=text(f64::midpoint(from, to)) y=text(top + 16.0) text-anchor="middle">{code}</text>
    }
}
