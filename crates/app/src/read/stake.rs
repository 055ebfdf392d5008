//! Finding a line's zero stake again without a signal, and noting where it stands. The device is asked for its position only
//! while a person has asked for that.

use super::open::Open;
use crate::session::Session;
use js_sys::{Function, Object, Reflect};
use leptos::prelude::*;
use std::rc::Rc;
use tautline_ground::find::way;
use tautline_survey::draft::Key;
use tautline_survey::message::{Message, Value};
use tautline_survey::stake::{Stake, ZERO_STAKE, known};
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    type Geolocation;
    #[wasm_bindgen(method, js_name = watchPosition)]
    fn watch(this: &Geolocation, found: &Function, failed: &Function, options: &JsValue) -> i32;
    #[wasm_bindgen(method, js_name = clearWatch)]
    fn clear(this: &Geolocation, watch: i32);
}

/// The device's own sense of where it is.
fn geolocation() -> Option<Geolocation> {
    let navigator = web_sys::window()?.navigator();
    let found = Reflect::get(&navigator, &"geolocation".into()).ok()?;
    (!found.is_undefined()).then(|| found.unchecked_into())
}

/// Positions for as long as this is kept.
struct Watch {
    geolocation: Geolocation,
    number: i32,
    _found: Closure<dyn Fn(JsValue)>,
    _failed: Closure<dyn Fn(JsValue)>,
}

impl Watch {
    fn begin(found: impl Fn(Option<Stake>) + 'static) -> Option<Self> {
        let geolocation = geolocation()?;
        let found = Rc::new(found);
        let failed = {
            let found = Rc::clone(&found);
            Closure::<dyn Fn(JsValue)>::new(move |_| found(None))
        };
        let found = Closure::<dyn Fn(JsValue)>::new(move |position| found(position_of(&position)));
        let options = Object::new();
        // an option that can't be set is left as the device has it
        let _ = Reflect::set(&options, &"enableHighAccuracy".into(), &true.into());
        let number =
            geolocation.watch(found.as_ref().unchecked_ref(), failed.as_ref().unchecked_ref(), &options);
        Some(Self { geolocation, number, _found: found, _failed: failed })
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.geolocation.clear(self.number);
    }
}

fn position_of(position: &JsValue) -> Option<Stake> {
    let coordinates = Reflect::get(position, &"coords".into()).ok()?;
    let number = |name: &str| Reflect::get(&coordinates, &name.into()).ok()?.as_f64();
    Stake::at(number("latitude")?, number("longitude")?, number("accuracy")?)
}

/// How far and which way the stake is, where its place is known; asked for by hand, ended with the screen.
pub(super) fn find(session: Session, site: &str, line: &str) -> Option<impl IntoView + use<>> {
    let (stake, date) = known(&session.standing_untracked().input, site, line)?;
    let watch = StoredValue::new_local(None::<Watch>);
    let said = RwSignal::new(String::new());
    let ask = move |_| {
        if watch.with_value(Option::is_some) {
            watch.set_value(None);
            said.set(String::new());
            return;
        }
        said.set(session.word("read-stake-waiting"));
        let begun = Watch::begin(move |here| said.set(session.say(&said_way(here, stake))));
        if begun.is_none() {
            said.set(session.word("read-stake-no-position"));
        }
        watch.set_value(begun);
    };
    on_cleanup(move || watch.set_value(None));
    let noted = session.say(&match date {
        Some(date) => Message::new("read-stake-noted").with("date", date.to_string()),
        None => Message::new("read-stake-placed").with("metres", u64::from(stake.within())),
    });
    Some(view! {
        <div class="find-stake">
            <p class="quiet">{noted}</p>
            <button type="button" on:click=ask>{session.word("read-stake-find")}</button>
            <p role="status" aria-live="polite">{said}</p>
        </div>
    })
}

/// The way to the stake in words.
fn said_way(here: Option<Stake>, stake: Stake) -> Message {
    let Some(way) = here.and_then(|here| way(here, stake)) else {
        return Message::new("read-stake-no-position");
    };
    Message::new(if way.is_here() { "read-stake-near" } else { "read-stake-way" })
        .with("metres", Value::Number(way.metres, 0))
        .with("off", Value::Number(way.off, 0))
        .with("bearing", Value::Number(way.bearing, 0))
        .with("way", Value::Word(way.towards()))
}

/// A position this good is taken at once; else the best of so many.
const GOOD: u32 = 10;
const MOST: usize = 6;

/// Notes where the zero stake stands, with a person beside it.
pub(super) fn note(open: Open) -> impl IntoView {
    let watch = StoredValue::new_local(None::<Watch>);
    let positions = StoredValue::new(Vec::<Stake>::new());
    let said = RwSignal::new(open.draft.with_untracked(|draft| {
        let noted = draft.sheet().conditions.iter().find(|(heading, _)| heading == ZERO_STAKE);
        noted.map_or(String::new(), |(_, text)| text.clone())
    }));
    let found = move |here: Option<Stake>| {
        let Some(here) = here else { return said.set(open.word("read-stake-no-position")) };
        positions.update_value(|all| all.push(here));
        let best = positions.with_value(|all| all.iter().copied().min_by_key(|one| one.within()));
        let best = best.unwrap_or(here);
        said.set(best.text());
        if best.within() <= GOOD || positions.with_value(Vec::len) >= MOST {
            open.press(Key::Condition(ZERO_STAKE.to_owned(), best.text()));
            watch.set_value(None);
        }
    };
    let ask = move |_| {
        positions.set_value(Vec::new());
        let begun = Watch::begin(found);
        let word = if begun.is_some() { "read-stake-waiting" } else { "read-stake-no-position" };
        said.set(open.word(word));
        watch.set_value(begun);
    };
    on_cleanup(move || watch.set_value(None));
    view! {
        <div class="choices"><button type="button" on:click=ask>{open.word("read-stake-note")}</button></div>
        <p class="quiet">{open.word("read-stake-where")}</p>
        <p role="status" aria-live="polite">{said}</p>
    }
}
