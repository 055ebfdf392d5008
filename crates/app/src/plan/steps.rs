//! The steps of a plan, and what stands around each.

use super::sitting::Held;
use crate::route::Route;
use leptos::prelude::*;

/// A step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Step {
    Aim,
    Number,
    Where,
    Packet,
}

impl Step {
    const ALL: [Self; 4] = [Self::Aim, Self::Number, Self::Where, Self::Packet];

    /// The step of an address.
    pub(super) fn of(rest: &str) -> Self {
        Self::ALL.into_iter().find(|step| step.word() == rest).unwrap_or(Self::Aim)
    }

    const fn word(self) -> &'static str {
        match self {
            Self::Aim => "aim",
            Self::Number => "lines",
            Self::Where => "where",
            Self::Packet => "packet",
        }
    }

    const fn code(self) -> &'static str {
        match self {
            Self::Aim => "plan-step-aim",
            Self::Number => "plan-step-lines",
            Self::Where => "plan-step-where",
            Self::Packet => "plan-step-packet",
        }
    }

    pub(super) fn route(self) -> Route {
        Route::Plan(self.word().to_owned())
    }

    fn next(self) -> Option<Self> {
        let at = Self::ALL.into_iter().position(|step| step == self)?;
        Self::ALL.get(at + 1).copied()
    }
}

/// The steps above, the step itself, and the way on below.
pub(super) fn around<V: IntoView + 'static>(
    step: Step,
    held: Held,
    shown: impl Fn() -> Option<V> + Send + Sync + 'static,
) -> impl IntoView {
    let session = held.session;
    let links = Step::ALL.map(|to| {
        let here = (to == step).then_some("step");
        view! { <li><a href=to.route().address() aria-current=here>{session.word(to.code())}</a></li> }
    });
    let on = step.next().map(|next| {
        view! { <a class="button main" href=next.route().address()>{session.word(next.code())}</a> }
    });
    let anew = move |_| {
        held.begin_anew();
        session.tell(session.word("plan-begun-anew"));
    };
    // a step begins at its beginning, wherever the one before was left
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
    let reading =
        move || (!held.is_read()).then(|| view! { <p class="quiet">{session.word("app-reading")}</p> });
    view! {
        <div class="planning">
            <nav class="plan-steps" aria-label=session.word("plan-steps")><ol>{links.collect_view()}</ol></nav>
            <h1>{session.word(step.code())}</h1>
            {reading}
            {shown}
            <div class="choices onward">
                {on}
                <button type="button" on:click=anew>{session.word("plan-begin-anew")}</button>
            </div>
            <p class="quiet">{session.word("plan-kept-here")}</p>
        </div>
    }
}
