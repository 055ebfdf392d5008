//! Answers that take longer: length against number, and surveys drawn one by one. They wait for a pause in typing, let the
//! screen have its turn between pieces, and are given up when something else is asked.

use super::ask::{cost_of, length_of};
use super::sitting::Held;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::time::Duration;
use tautline_engine::effort::length::Cost;
use tautline_survey::effort::simulated::{SimulatedOutput, Simulating};
use tautline_survey::effort::{Ask, Comparing, Foreseen, LengthsOutput, answers, lengths_to_try};

/// What has been found so far.
#[derive(Clone, Debug, Default)]
pub(super) struct Longer {
    pub(super) lengths: Option<LengthsOutput>,
    pub(super) simulated: Vec<SimulatedOutput>,
    pub(super) under_way: bool,
}

/// Typing has paused after so long.
const PAUSE: Duration = Duration::from_millis(350);

/// Surveys of a piece: some thousandths of a second.
const PIECE: u64 = 100;

/// What is asked.
#[derive(Clone, PartialEq)]
struct Asked {
    foreseen: Foreseen,
    ask: Ask,
    cost: Option<(f64, f64, f64)>,
    length_m: f64,
    simulate: bool,
}

/// Works it out behind the screen, each time that something else is asked.
pub(super) fn longer(held: Held, foreseen: Memo<Option<Foreseen>>, ask: Memo<Ask>) -> ReadSignal<Longer> {
    let (found, set) = signal(Longer::default());
    let asked = Memo::new(move |_| {
        Some(Asked {
            foreseen: foreseen.get()?,
            ask: ask.get(),
            cost: held.with(cost_of).map(|cost| (cost.walk, cost.lay, cost.per_metre)),
            length_m: held.with(length_of),
            simulate: held.with(|all| all.number.simulate),
        })
    });
    let turn = StoredValue::new(0_u32);
    Effect::new(move || {
        let asked = asked.get();
        turn.update_value(|turn| *turn = turn.wrapping_add(1));
        let mine = turn.get_value();
        let Some(asked) = asked.filter(|asked| asked.cost.is_some() || asked.simulate) else {
            set.set(Longer::default());
            return;
        };
        set.set(Longer { under_way: true, ..Longer::default() });
        // a screen that was left has no turn any more
        let is_mine = move || turn.try_get_value() == Some(mine);
        set_timeout(move || spawn_local(work(asked, is_mine, set)), PAUSE);
    });
    found
}

async fn work(asked: Asked, is_mine: impl Fn() -> bool, set: WriteSignal<Longer>) {
    if !is_mine() {
        return;
    }
    let mut found = Longer { under_way: true, ..Longer::default() };
    let mut slice = Slice::begin();
    if let Some((walk, lay, per_metre)) = asked.cost {
        let cost = Cost { walk, lay, per_metre };
        let tried = lengths_to_try(&asked.foreseen);
        let mut comparing = Comparing::new(asked.foreseen.clone(), asked.ask.clone(), tried, cost);
        while let Some(comparing) = comparing.as_mut() {
            let first = found.lengths.is_none();
            if first || comparing.is_done() {
                found.lengths = Some(comparing.so_far());
                set.set(found.clone());
            }
            if comparing.is_done() {
                break;
            }
            comparing.run(1);
            slice.turn().await;
            if !is_mine() {
                return;
            }
        }
    }
    let permanent = || {
        let answers = answers(&asked.foreseen, &asked.ask);
        answers.iter().find(|one| one.question == "change-permanent").and_then(|one| one.lines)
    };
    let lines = asked.ask.lines.or_else(permanent).filter(|_| asked.simulate);
    let simulating =
        lines.and_then(|lines| Simulating::new(&asked.foreseen, &asked.ask, lines, asked.length_m));
    if let Some(mut simulating) = simulating {
        let mut pieces = 0_u32;
        while !simulating.is_done() {
            simulating.run(PIECE);
            pieces += 1;
            slice.turn().await;
            if !is_mine() {
                return;
            }
            // told now and then: the first piece at once, for whoever waits
            if pieces % 20 == 1 {
                found.simulated = simulating.so_far();
                set.set(found.clone());
            }
        }
        found.simulated = simulating.so_far();
    }
    if is_mine() {
        found.under_way = false;
        set.set(found);
    }
}

/// A stretch of work between two turns of the screen.
struct Slice {
    begun: f64,
}

/// The screen waits no longer than this for its turn, in milliseconds.
const SLICE: f64 = 24.0;

impl Slice {
    fn begin() -> Self {
        Self { begun: js_sys::Date::now() }
    }

    /// Lets the screen have its turn where the stretch has lasted long enough.
    async fn turn(&mut self) {
        if js_sys::Date::now() - self.begun > SLICE {
            a_turn().await;
            self.begun = js_sys::Date::now();
        }
    }
}

/// Lets the screen have its turn.
pub(super) async fn a_turn() {
    let promise = js_sys::Promise::new(&mut |done, _| {
        if let Some(window) = web_sys::window() {
            // a page without a window waits for nothing
            let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&done, 0);
        }
    });
    // the promise is never refused
    let _ = wasm_bindgen_futures::JsFuture::from(promise).await;
}
