//! Edges set on the picture: by touch, by mouse, by keyboard; moved a division at a time.

use super::lesson::UnderWay;
use super::picture::{ABOVE, BELOW, Picture, bar, track};
use crate::session::Session;
use leptos::html;
use leptos::prelude::*;
use std::rc::Rc;
use tautline_engine::length::write;
use tautline_survey::message::Message;
use tautline_survey::practice::{Came, Edge, Exercise, Reading, SPECIES, TapeKind, length};
use wasm_bindgen::JsCast as _;
use web_sys::{Element, KeyboardEvent, MouseEvent, PointerEvent};

/// The lesson on the screen. Copied freely; all copies are one.
#[derive(Clone, Copy)]
pub(super) struct Hand {
    session: Session,
    under_way: RwSignal<UnderWay>,
    picture: StoredValue<Rc<Picture>, LocalStorage>,
    walk: NodeRef<html::Div>,
    track: NodeRef<html::Div>,
    wide: RwSignal<bool>,
    /// What came of the last step, for eyes and ears.
    heard: RwSignal<String>,
}

impl Hand {
    pub(super) fn new(session: Session, under_way: RwSignal<UnderWay>, picture: &Rc<Picture>) -> Self {
        Self {
            session,
            under_way,
            picture: StoredValue::new_local(Rc::clone(picture)),
            walk: NodeRef::new(),
            track: NodeRef::new(),
            wide: RwSignal::new(false),
            heard: RwSignal::new(String::new()),
        }
    }

    fn picture(self) -> Rc<Picture> {
        self.picture.get_value()
    }

    fn with<T>(self, ask: impl FnOnce(&Reading) -> T) -> T {
        self.under_way.with(|lesson| ask(&lesson.reading))
    }

    fn change<T>(self, how: impl FnOnce(&mut Reading) -> T) -> Option<T> {
        self.under_way.try_maybe_update(|lesson| (true, how(&mut lesson.reading)))
    }

    /// A place on the tape as people write it.
    fn shown(self, divisions: i64) -> String {
        let notation = self.picture().exercise.tape.notation();
        write(length(divisions, notation), notation)
    }

    /// So many divisions are a longer step: to the next longer tick.
    fn far(self) -> i64 {
        if self.picture().exercise.tape == TapeKind::FeetAndInches { 12 } else { 10 }
    }

    fn step(self, by: i64) {
        self.change(|reading| reading.step(by));
        self.into_sight();
    }

    /// Sets an edge, and says what came of it.
    fn set(self) {
        let came = self.change(Reading::set);
        let last = self.under_way.with_untracked(|lesson| {
            let reading = &lesson.reading;
            reading.rows().iter().find(|row| row.start == reading.at() || row.stop == reading.at()).copied()
        });
        let at = self.under_way.with_untracked(|lesson| lesson.reading.at());
        let message = match (came, last) {
            (Some(Came::Started), _) => Message::new("lesson-started").with("place", self.shown(at)),
            (Some(Came::Stopped | Came::Moved), Some(row)) => Message::new("lesson-stopped")
                .with("species", Exercise::code(Some(row.species)))
                .with("start", self.shown(row.start))
                .with("stop", self.shown(row.stop)),
            _ => Message::new("lesson-no-length"),
        };
        self.heard.set(self.session.say(&message));
    }

    /// Brings the mark back into sight where the picture has run away from it.
    fn into_sight(self) {
        let (Some(walk), Some(track)) = (self.walk.get_untracked(), self.track.get_untracked()) else {
            return;
        };
        let picture = self.picture();
        let at = self.under_way.with_untracked(|lesson| lesson.reading.at());
        let place = picture.x(at) / picture.wide() * f64::from(track.scroll_width());
        let (seen, from) = (f64::from(walk.client_width()), f64::from(walk.scroll_left()));
        if place < from + seen * 0.12 || place > from + seen * 0.88 {
            #[expect(clippy::cast_possible_truncation, reason = "pixels")]
            walk.set_scroll_left((place - seen / 2.0) as i32);
        }
    }

    /// Looks at the place that was pointed to.
    fn point(self, client_x: i32) {
        let Some(track) = self.track.get_untracked() else { return };
        let place = track.get_bounding_client_rect();
        if place.width() > 0.0 {
            let share = (f64::from(client_x) - place.left()) / place.width();
            let at = self.picture().division(share);
            self.change(|reading| reading.go(at));
        }
    }

    fn pressed(self, event: &KeyboardEvent) -> bool {
        let species = i64::from(self.picture().exercise.line.species);
        match event.key().as_str() {
            "ArrowRight" | "ArrowUp" if event.shift_key() => self.step(self.far()),
            "ArrowLeft" | "ArrowDown" if event.shift_key() => self.step(-self.far()),
            "ArrowRight" | "ArrowUp" => self.step(1),
            "ArrowLeft" | "ArrowDown" => self.step(-1),
            "PageUp" => self.step(self.far()),
            "PageDown" => self.step(-self.far()),
            "Home" => self.step(i64::MIN / 2),
            "End" => self.step(i64::MAX / 2),
            "Enter" | " " => self.set(),
            "Backspace" => self.undo(),
            "z" if event.ctrl_key() || event.meta_key() => self.undo(),
            "Escape" => {
                self.change(Reading::leave);
            }
            key => match key.parse::<i64>() {
                Ok(number) if (1..=species).contains(&number) => self.choose(number - 1),
                _ => return false,
            },
        }
        true
    }

    fn undo(self) {
        self.change(Reading::undo);
        self.heard.set(self.session.word("lesson-undone"));
    }

    fn choose(self, species: i64) {
        let species = u32::try_from(species).unwrap_or_default();
        self.change(|reading| reading.choose(species));
    }
}

/// The picture with what was set over it, the mark, and the keys below.
pub(super) fn hand(hand: Hand) -> impl IntoView {
    let session = hand.session;
    let at = Memo::new(move |_| hand.with(Reading::at));
    let place = move || hand.shown(at.get());
    let told = move || {
        let since = hand.with(Reading::since).map(|since| hand.shown(since));
        let species = Exercise::code(Some(hand.with(Reading::species)));
        let code = match (hand.with(|reading| reading.held().is_some()), &since) {
            (true, _) => "lesson-at-held",
            (false, Some(_)) => "lesson-at-open",
            (false, None) => "lesson-at",
        };
        let message = Message::new(code).with("place", place()).with("species", species);
        session.say(&message.with("since", since.unwrap_or_default()))
    };
    let key = move |event: KeyboardEvent| {
        if !event.alt_key() && hand.pressed(&event) {
            event.prevent_default();
        }
    };
    let click = move |event: MouseEvent| hand.point(event.client_x());
    let end = hand.under_way.with_untracked(|lesson| lesson.reading.end());
    view! {
        <div class="walk" node_ref=hand.walk tabindex="0" role="slider" aria-label=session.word("lesson-walk") aria-describedby="lesson-walk-how"
            aria-valuemin="0" aria-valuemax=end.to_string() aria-valuenow=move || at.get().to_string() aria-valuetext=told on:keydown=key>
            <div class="track" class:large=hand.wide node_ref=hand.track on:click=click>
                {track(session, &hand.picture(), over(hand, at).into_any())}
            </div>
        </div>
        <p class="now">{told}</p>
        {keys(hand)}
        <p class="heard quiet" role="status">{hand.heard}</p>
        <details><summary>{session.word("lesson-how")}</summary><p id="lesson-walk-how">{session.word("lesson-walk-how")}</p></details>
        {rows(hand)}
    }
}

/// What was set, what is open, and the mark with the handle that is dragged.
fn over(hand: Hand, at: Memo<i64>) -> impl IntoView {
    let picture = hand.picture();
    let (middle, bottom) = (ABOVE + picture.high / 2.0, ABOVE + picture.high);
    let bars = move || {
        let picture = hand.picture();
        hand.with(|reading| reading.rows().to_vec())
            .into_iter()
            .map(|row| bar(&picture, row, false))
            .collect_view()
    };
    let open = move || {
        let since = hand.with(Reading::since)?;
        let picture = hand.picture();
        let (from, to) = (picture.x(since.min(at.get())), picture.x(since.max(at.get())));
        let start = picture.x(since);
        let way = format!("M{start:.1} 6V{middle:.1}M{from:.1} 28H{to:.1}");
        Some(view! { <path class="open" d=way></path> })
    };
    let dragged = RwSignal::new(false);
    let down = move |event: PointerEvent| {
        event.prevent_default();
        if let Some(handle) = event.current_target().and_then(|target| target.dyn_into::<Element>().ok()) {
            // without it, the drag ends at the handle's edge
            let _ = handle.set_pointer_capture(event.pointer_id());
        }
        dragged.set(true);
    };
    let moved = move |event: PointerEvent| {
        if dragged.get_untracked() {
            hand.point(event.client_x());
        }
    };
    let up = move |_| dragged.set(false);
    let there = move || format!("translate({:.1} 0)", hand.picture().x(at.get()));
    let line = format!("M0 0V{:.1}", bottom + 10.0);
    let handle = format!("{:.1}", bottom + 8.0);
    let grip = format!("M-6 {0:.1}v16M0 {0:.1}v16M6 {0:.1}v16", bottom + 24.0);
    view! {
        {bars}{open}
        <g class="mark" transform=there on:pointerdown=down on:pointermove=moved on:pointerup=up on:pointercancel=up>
            <path class="plumb" d=line></path>
            <rect class="handle" x="-26" y=handle width="52" height=format!("{:.1}", BELOW - 12.0) rx="8"></rect>
            <path class="grip" d=grip></path>
        </g>
    }
}

/// Keys for the thumb.
fn keys(hand: Hand) -> impl IntoView {
    let session = hand.session;
    let step = move |name: &'static str, sign: &'static str, by: i64| {
        view! { <button type="button" aria-label=session.word(name) on:click=move |_| hand.step(by)>{sign}</button> }
    };
    let far = hand.far();
    let set = move || {
        session.word(match (hand.with(|reading| reading.held().is_some()), hand.with(Reading::since)) {
            (true, _) => "lesson-put-down",
            (false, Some(_)) => "lesson-stop-here",
            (false, None) => "lesson-start-here",
        })
    };
    let species = (0..hand.picture().exercise.line.species).map(|number| {
        let pressed = move || hand.with(|reading| reading.species() == number).to_string();
        let name = SPECIES.get(usize::try_from(number).unwrap_or_default());
        let (code, common) = name.map_or(("", ""), |(code, common, _)| (*code, *common));
        view! {
            <button type="button" aria-pressed=pressed title=common on:click=move |_| hand.choose(i64::from(number))>{code}</button>
        }
    });
    let can_undo = move || hand.with(Reading::can_undo);
    let open = move || hand.with(|reading| reading.held().is_some() || reading.since().is_some());
    view! {
        <div class="species chips" role="group" aria-label=session.word("lesson-species")>{species.collect_view()}</div>
        <div class="steps" role="group" aria-label=session.word("lesson-steps")>
            {step("lesson-far-back", "«", -far)}{step("lesson-back", "‹", -1)}
            <button type="button" class="main" on:click=move |_| hand.set()>{set}</button>
            {step("lesson-on", "›", 1)}{step("lesson-far-on", "»", far)}
        </div>
        <div class="choices">
            <button type="button" disabled=move || !can_undo() on:click=move |_| hand.undo()>{session.word("lesson-undo")}</button>
            <button type="button" disabled=move || !open() on:click=move |_| { hand.change(Reading::leave); }>{session.word("lesson-leave")}</button>
            <button type="button" aria-pressed=move || hand.wide.get().to_string() on:click=move |_| { hand.wide.update(|wide| *wide = !*wide); hand.into_sight(); }>
                {session.word("lesson-larger")}
            </button>
        </div>
    }
}

/// What was set, row by row, each edge to be taken up again.
fn rows(hand: Hand) -> impl IntoView {
    let session = hand.session;
    let items = move || {
        let held = hand.with(Reading::held);
        let row = |(at, row): (usize, tautline_survey::practice::Placed)| {
            let said = session.say(
                &Message::new("lesson-stopped")
                    .with("species", Exercise::code(Some(row.species)))
                    .with("start", hand.shown(row.start))
                    .with("stop", hand.shown(row.stop)),
            );
            let take = move |name: &'static str, edge: Edge| {
                let pressed = (held == Some((at, edge))).to_string();
                let up = move |_| {
                    hand.change(|reading| reading.take_up(at, edge));
                    hand.into_sight();
                    if let Some(walk) = hand.walk.get_untracked() {
                        // the picture can have the focus
                        let _ = walk.focus();
                    }
                };
                view! { <button type="button" aria-pressed=pressed on:click=up>{session.word(name)}</button> }
            };
            view! {
                <li><span>{said}</span>
                    {take("lesson-move-start", Edge::Start)}{take("lesson-move-stop", Edge::Stop)}
                    <button type="button" on:click=move |_| { hand.change(|reading| reading.remove(at)); }>{session.word("lesson-take-away")}</button>
                </li>
            }
        };
        hand.with(|reading| reading.rows().to_vec()).into_iter().enumerate().map(row).collect_view()
    };
    view! { <ol class="set plain">{items}</ol> }
}
