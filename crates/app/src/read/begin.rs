//! Which line is read next: drafts to go on with, planned lines that nobody read this year, or one set up by hand.

use super::open::protocols;
use super::{names, stake};
use crate::device::drafts::Drafts;
use crate::device::here;
use crate::parts::withheld::withheld;
use crate::route::{Route, go};
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use leptos::task::spawn_local;
use tautline_engine::length::{Bare, DecimalMark, Notation, Unit};
use tautline_store::KeepError;
use tautline_survey::date::Date;
use tautline_survey::draft::{LineDraft, Setup};
use tautline_survey::measure::{Measure, unit_words};
use tautline_survey::message::Message;
use tautline_survey::plan::PlannedLine;
use tautline_survey::visit::Outcome;

/// The units of tapes, the one first that is read in most often.
const UNITS: [Bare; 6] = [
    Bare::Unit(Unit::Inch),
    Bare::FeetAndInches,
    Bare::DecimalFeet,
    Bare::Unit(Unit::Centimetre),
    Bare::Unit(Unit::Metre),
    Bare::Unit(Unit::Millimetre),
];

/// So many planned lines are offered at once.
const MOST: usize = 60;

/// What stands in the form.
#[derive(Clone, Copy)]
struct Form {
    site: RwSignal<String>,
    line: RwSignal<String>,
    length: RwSignal<String>,
    unit: RwSignal<String>,
    protocol: RwSignal<String>,
    reader: RwSignal<String>,
    recorder: RwSignal<String>,
    date: RwSignal<String>,
    blind: RwSignal<bool>,
    wrong: RwSignal<Option<Message>>,
}

/// The screen.
pub(crate) fn begin() -> impl IntoView {
    let session = Session::here();
    // drafts are held against what stands, and the form begins as the last line was
    move || session.is_read.get().then(|| screen(session))
}

fn screen(session: Session) -> impl IntoView {
    let drafts = RwSignal::new(Vec::<(String, LineDraft)>::new());
    spawn_local(async move {
        match under_way(session).await {
            Ok(found) => drafts.set(found),
            Err(error) => session.tell_fault(&error),
        }
    });
    let form = Form::new(session);
    view! {
        <h1>{session.word("read-lines")}</h1>
        {withheld(session)}
        {move || going_on(session, &drafts.get())}
        {move || to_read(session, form)}
        {move || names::names(session)}
        {by_hand(session, form)}
    }
}

/// The drafts on this device. One whose visit stands in the notebook already was cut off while it was closed: it is done.
async fn under_way(session: Session) -> Result<Vec<(String, LineDraft)>, KeepError> {
    let disk = Drafts::open().await?;
    let mut open = Vec::new();
    for (name, draft) in disk.all().await? {
        if super::ending::stands(session, &draft) {
            disk.keep(&name, None).await?;
        } else {
            open.push((name, draft));
        }
    }
    Ok(open)
}

fn going_on(session: Session, drafts: &[(String, LineDraft)]) -> Option<impl IntoView + use<>> {
    let standing = session.standing();
    // the first reading of a line that somebody reads blind waits, unfinished as it is
    let (waiting, open): (Vec<_>, Vec<_>) =
        drafts.iter().partition(|(_, draft)| super::waits(&standing, draft.setup()));
    let waiting = (!waiting.is_empty()).then(|| {
        view! { <p class="quiet">{session.say(&Message::new("field-blind-drafts").with("lines", waiting.len()))}</p> }
    });
    let items = open.into_iter().map(|(name, draft)| {
        let setup = draft.setup();
        let said = session.say(
            &Message::new("read-draft")
                .with("site", setup.site.as_str())
                .with("line", setup.line.as_str())
                .with("rows", draft.sheet().standing().count()),
        );
        view! { <li><a class="button" href=Route::Line(name.clone()).address()>{said}</a></li> }
    });
    let items = items.collect_view();
    (!drafts.is_empty())
        .then(|| view! { <section><h2>{session.word("read-going-on")}</h2><ul class="plain">{items}</ul>{waiting}</section> })
}

/// Planned lines that nobody read in the year of today.
fn waiting(standing: &Standing, year: u16) -> Vec<&PlannedLine> {
    let Standing { input, withheld, .. } = standing;
    let out_of_sight = withheld.lines();
    let read = |line: &PlannedLine| {
        out_of_sight.contains(&(&line.site, &line.line))
            || input.visits.iter().any(|visit| {
                visit.site == line.site
                    && visit.line == line.line
                    && visit.date.map(Date::year) == Some(year)
                    && visit.outcome != Outcome::NotRead
            })
    };
    input.plan.iter().filter(|line| !read(line)).collect()
}

fn to_read(session: Session, form: Form) -> Option<impl IntoView + use<>> {
    let standing = session.standing();
    let year = Date::read(&here::today()).map_or(0, Date::year);
    let waiting = waiting(&standing, year);
    if waiting.is_empty() {
        return None;
    }
    let more = waiting.len().saturating_sub(MOST);
    let items = waiting.iter().take(MOST).map(|&line| {
        let said = session.say(
            &Message::new("read-planned").with("site", line.site.as_str()).with("line", line.line.as_str()),
        );
        let line = line.clone();
        view! { <li><button type="button" on:click=move |_| form.fill(session, &line)>{said}</button></li> }
    });
    let items = items.collect_view();
    let more = (more > 0).then(|| session.say(&Message::new("read-more-planned").with("more", more)));
    Some(view! {
        <details class="waiting"><summary>{session.say(&Message::new("read-waiting").with("lines", waiting.len()))}</summary>
            <ul class="plain chips">{items}</ul><p class="quiet">{more}</p>
        </details>
    })
}

impl Form {
    fn new(session: Session) -> Self {
        let own = session.settings.get_untracked().name;
        let form = Self {
            site: RwSignal::default(),
            line: RwSignal::default(),
            length: RwSignal::default(),
            unit: RwSignal::new(unit_words(UNITS[0]).to_owned()),
            protocol: RwSignal::default(),
            reader: RwSignal::new(own),
            recorder: RwSignal::default(),
            date: RwSignal::new(here::today()),
            blind: RwSignal::new(false),
            wrong: RwSignal::new(None),
        };
        form.as_last_time(session);
        form
    }

    /// Unit, protocol and site as they were last; the next line is mostly beside the one before.
    fn as_last_time(self, session: Session) {
        let standing = session.standing_untracked();
        let last = standing.input.visits.iter().max_by_key(|visit| visit.date);
        let Some(last) = last else { return };
        self.site.set(last.site.clone());
        self.protocol.set(last.protocol.clone());
        let first = last.intercepts.first().map(|one| match &one.extent {
            tautline_survey::visit::Extent::Edges { start, .. } => start,
            tautline_survey::visit::Extent::Length(length) => length,
        });
        if let Some(unit) = first.map(unit_of) {
            self.unit.set(unit_words(unit).to_owned());
        }
    }

    fn fill(self, session: Session, line: &PlannedLine) {
        self.site.set(line.site.clone());
        self.line.set(line.line.clone());
        self.length.set(line.length.as_ref().map_or(String::new(), |length| {
            session
                .words()
                .value(&tautline_survey::message::Value::Length(length.length(), length.notation()))
        }));
        let standing = session.standing_untracked();
        let last =
            standing.input.visits.iter().filter(|visit| visit.site == line.site).max_by_key(|v| v.date);
        if let Some(last) = last {
            self.protocol.set(last.protocol.clone());
        }
        focus("read-form");
    }

    fn setup(self) -> Result<Setup, Message> {
        let text = |signal: RwSignal<String>| signal.get_untracked().trim().to_owned();
        let unit = Bare::from_words(&text(self.unit)).unwrap_or(UNITS[0]);
        if text(self.site).is_empty() || text(self.line).is_empty() {
            return Err(Message::new("read-name-the-line"));
        }
        let typed = text(self.length);
        let length = match Measure::read(&typed, Some(unit), DecimalMark::Point) {
            _ if typed.is_empty() => None,
            Ok(length) if length.length().nanometres() > 0 => Some(length),
            _ => return Err(Message::new("read-length-not-read").with("found", typed.as_str())),
        };
        let date = text(self.date);
        let date = match Date::read(&date) {
            None if !date.is_empty() => return Err(Message::new("read-date-not-read").with("found", date)),
            read => read,
        };
        let setup = Setup {
            site: text(self.site),
            line: text(self.line),
            length,
            unit,
            comma: false,
            protocol: text(self.protocol),
            reader: text(self.reader),
            recorder: text(self.recorder),
            date,
            pass: String::new(),
            blind: false,
        };
        let second = || setup.second(&setup.reader, &setup.recorder);
        Ok(if self.blind.get_untracked() { second() } else { setup.clone() })
    }
}

/// What a bare number meant where a length was typed.
fn unit_of(measure: &Measure) -> Bare {
    let Notation { unit, feet_and_inches, .. } = measure.notation();
    measure.unit().unwrap_or(if feet_and_inches { Bare::FeetAndInches } else { Bare::Unit(unit) })
}

fn focus(id: &str) {
    if let Some(place) = document().get_element_by_id(id) {
        place.scroll_into_view();
    }
}

fn by_hand(session: Session, form: Form) -> impl IntoView {
    let begin = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        match form.setup() {
            Ok(setup) => open(session, LineDraft::new(setup)),
            Err(wrong) => form.wrong.set(Some(wrong)),
        }
    };
    let field = move |label: &'static str, value: RwSignal<String>, list: &'static str| {
        view! {
            <label>{session.word(label)}
                <input type="text" autocomplete="off" list=list prop:value=value on:input=move |event| value.set(event_target_value(&event))/>
            </label>
        }
    };
    let sites = move || {
        let standing = session.standing();
        let mut sites: Vec<String> = standing.input.plan.iter().map(|line| line.site.clone()).collect();
        sites.sort();
        sites.dedup();
        sites.into_iter().map(|site| view! { <option value=site></option> }).collect_view()
    };
    let lines = move || {
        let site = form.site.get();
        let standing = session.standing();
        let own = standing.input.plan.iter().filter(|line| line.site == site);
        own.map(|line| view! { <option value=line.line.clone()></option> }).collect_view()
    };
    let units = UNITS.map(|unit| {
        let value = unit_words(unit);
        let chosen = move || form.unit.get() == value;
        view! { <option value=value selected=chosen>{session.word(unit_name(unit))}</option> }
    });
    let none = move || form.protocol.get().is_empty();
    let protocols = protocols(session).into_iter().map(|protocol| {
        let value = protocol.fingerprint();
        let own = value.clone();
        let chosen = move || form.protocol.get() == own;
        view! { <option value=value selected=chosen>{protocol.name}</option> }
    });
    let protocols = protocols.collect_view();
    let wrong = move || form.wrong.get().map(|wrong| session.say(&wrong));
    view! {
        <form id="read-form" class="set-up" on:submit=begin>
            <h2>{session.word("read-set-up")}</h2>
            {field("read-site", form.site, "read-sites")}
            <datalist id="read-sites">{sites}</datalist>
            {field("read-line", form.line, "read-site-lines")}
            <datalist id="read-site-lines">{lines}</datalist>
            {field("read-tape-length", form.length, "")}
            <label>{session.word("read-unit")}
                <select on:change=move |event| form.unit.set(event_target_value(&event))>{units.collect_view()}</select>
            </label>
            <label>{session.word("read-protocol")}
                <select on:change=move |event| form.protocol.set(event_target_value(&event))>
                    <option value="" selected=none>{session.word("read-protocol-none")}</option>{protocols}
                </select>
            </label>
            {field("read-reader", form.reader, "")}
            {field("read-recorder", form.recorder, "")}
            <label>{session.word("read-date")}
                <input type="date" prop:value=form.date on:input=move |event| form.date.set(event_target_value(&event))/>
            </label>
            <label class="option">
                <input type="checkbox" prop:checked=form.blind on:change=move |event| form.blind.set(event_target_checked(&event))/>
                <span>{session.word("read-second-reader")}</span>
            </label>
            {move || stake::find(session, &form.site.get(), &form.line.get())}
            <p class="wrong" role="alert">{wrong}</p>
            <p class="quiet">{session.word("read-permission")}</p>
            <div class="choices"><button type="submit" class="main">{session.word("read-begin")}</button></div>
        </form>
    }
}

const fn unit_name(unit: Bare) -> &'static str {
    match unit {
        Bare::Unit(Unit::Inch) => "read-unit-in",
        Bare::Unit(Unit::Foot) => "read-unit-ft",
        Bare::Unit(Unit::Metre) => "read-unit-m",
        Bare::Unit(Unit::Decimetre) => "read-unit-dm",
        Bare::Unit(Unit::Centimetre) => "read-unit-cm",
        Bare::Unit(Unit::Millimetre) => "read-unit-mm",
        Bare::DecimalFeet => "read-unit-decimal-ft",
        Bare::FeetAndInches => "read-unit-ft-in",
    }
}

/// Keeps a new draft and opens its screen.
pub(super) fn open(session: Session, draft: LineDraft) {
    spawn_local(async move {
        let name = Drafts::name(here::now().1);
        let kept = async { Drafts::open().await?.keep(&name, Some(&draft.to_text())).await };
        match kept.await {
            // what a second reader must not see is out of sight before the line is shown
            Ok(()) => session.look_again(move || go(&Route::Line(name))),
            Err(fault) => session.tell_fault(&KeepError::from(fault)),
        }
    });
}
