//! Answers that take a while: worked out after a pause in typing, in slices between which the browser has its turn, and given up
//! where the question changes or the screen is left.

use crate::device::here::a_turn;
use leptos::leptos_dom::helpers::set_timeout;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

/// Nobody types on after this pause.
const PAUSE: Duration = Duration::from_millis(300);

/// So long the work goes on before the browser has its turn, in milliseconds.
const SLICE: f64 = 40.0;

/// An answer, and whether it is still being worked out.
pub(super) struct Slow<T: 'static> {
    /// The answer so far; none before the first.
    pub(super) answer: RwSignal<Option<Rc<T>>, LocalStorage>,
    /// It is being worked out.
    pub(super) works: RwSignal<bool>,
    latest: StoredValue<Rc<Cell<u64>>, LocalStorage>,
}

impl<T> Clone for Slow<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Slow<T> {}

impl<T> Slow<T> {
    /// Gives the work up; what was told stays.
    pub(super) fn stop(self) {
        self.latest.with_value(|latest| latest.set(latest.get() + 1));
        self.works.set(false);
    }
}

/// The work's own side: it tells what it has, and asks whether to go on.
pub(super) struct Turn<T: 'static> {
    slow: Slow<T>,
    latest: Rc<Cell<u64>>,
    own: u64,
    since: Cell<f64>,
}

impl<T> Turn<T> {
    fn is_wanted(&self) -> bool {
        self.latest.get() == self.own
    }

    /// Tells an answer; a later one takes its place.
    pub(super) fn tell(&self, answer: T) {
        if self.is_wanted() {
            self.slow.answer.set(Some(Rc::new(answer)));
        }
    }

    /// Whether a slice is over: then is the time to tell what there is so far, and to [rest](Self::rest).
    pub(super) fn is_over(&self) -> bool {
        js_sys::Date::now() - self.since.get() > SLICE
    }

    /// Lets the browser have its turn; false where nobody waits for the answer any more.
    pub(super) async fn rest(&self) -> bool {
        a_turn().await;
        self.since.set(js_sys::Date::now());
        self.is_wanted()
    }
}

/// Answers a question, and again whenever it changes.
pub(super) fn answered<Q: 'static, T: 'static>(
    question: impl Fn() -> Q + 'static,
    work: impl AsyncFn(Q, &Turn<T>) + 'static,
) -> Slow<T> {
    let latest = Rc::new(Cell::new(0));
    let slow = Slow {
        answer: RwSignal::new_local(None),
        works: RwSignal::new(true),
        latest: StoredValue::new_local(Rc::clone(&latest)),
    };
    let work = Rc::new(work);
    Effect::new(move |before: Option<()>| {
        let asked = question();
        let own = latest.get() + 1;
        latest.set(own);
        slow.works.set(true);
        let turn = Turn { slow, latest: Rc::clone(&latest), own, since: Cell::new(0.0) };
        let work = Rc::clone(&work);
        let begin = move || {
            spawn_local(async move {
                if turn.rest().await {
                    work(asked, &turn).await;
                }
                if turn.is_wanted() {
                    slow.works.set(false);
                }
            });
        };
        match before {
            None => begin(),
            Some(()) => set_timeout(begin, PAUSE),
        }
    });
    // a screen that is left waits for nothing; its signals are gone by then
    on_cleanup(move || {
        let _ = slow.latest.try_with_value(|latest| latest.set(latest.get() + 1));
    });
    slow
}
