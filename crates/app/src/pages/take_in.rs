//! Files and sheets taken in: read and checked at once, shown before anything is written, written when the person says so.

use crate::device::Bytes;
use crate::parts::files;
use crate::parts::findings::findings;
use crate::route::Route;
use crate::session::{Copies, Session};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::rc::Rc;
use std::time::Duration;
use tautline_exchange::{Options, Source, read};
use tautline_ground::datum::pair_on_wgs84;
use tautline_survey::check::check;
use tautline_survey::draft::LineDraft;
use tautline_survey::finding::Finding;
use tautline_survey::message::{Message, Value};
use tautline_survey::notebook::gather::{Gathered, gather};
use tautline_survey::revision::{FORMAT, Header, Held, read_held};
use wasm_bindgen::JsCast as _;
use web_sys::{DragEvent, FileList, HtmlInputElement};

/// A sheet of so many bytes, some lines with their intercepts, is read within a picture.
const AT_EACH_KEY: usize = 2000;

/// How long a person who types a longer one must rest.
const PAUSE: Duration = Duration::from_millis(250);

/// What was understood of files, before anything is written.
#[derive(Default)]
struct Understood {
    gathered: Gathered,
    /// What is in other notebooks.
    copies: Copies,
    /// Unfinished lines of other devices, each under its name.
    unfinished: Vec<(String, LineDraft)>,
    findings: Vec<Finding>,
}

impl Understood {
    fn of(session: Session, sources: Vec<Source>) -> Self {
        let standing = session.standing();
        let (copies, sheets): (Vec<Source>, Vec<Source>) = sources.into_iter().partition(is_copy);
        let mut understood = Self::default();
        for copy in &copies {
            understood.copy(copy);
        }
        if !sheets.is_empty() {
            let options = Options {
                known_protocols: standing.current.protocols(),
                on_wgs84: Some(pair_on_wgs84),
                ..Options::default()
            };
            let mut read = read(&sheets, &options);
            understood.gathered = gather(&standing.current, &read.input, &read.goals);
            check(&mut read.input);
            understood.findings.append(&mut understood.gathered.findings);
            understood.findings.append(&mut read.input.findings);
        }
        understood
    }

    /// A notebook's lines of JSON; lines that aren't whole are counted, the others are taken.
    fn copy(&mut self, copy: &Source) {
        let text = String::from_utf8_lossy(&copy.bytes);
        let mut lines = text.lines().filter(|line| !line.trim().is_empty());
        let known = lines.next().is_some_and(|header| Header::read(header).is_ok());
        let mut broken = 0_usize;
        for line in lines.filter(|_| known) {
            match (read_held(line), LineDraft::from_copy_line(line)) {
                (Ok(Held::Revision(revision)), _) => self.copies.revisions.push(*revision),
                (Ok(Held::Photo { sha256, bytes }), _) => self.copies.photos.push(Bytes { sha256, bytes }),
                (_, Some(draft)) => self.unfinished.push(draft),
                (Err(_), None) => broken += 1,
            }
        }
        if !known {
            let message = Message::new("lines-not-a-notebook").with("file", copy.name.as_str());
            self.findings.push(Finding::must_settle(message));
        }
        if broken > 0 {
            let message =
                Message::new("app-lines-broken").with("file", copy.name.as_str()).with("lines", broken);
            self.findings.push(Finding::must_settle(message));
        }
    }

    fn brings_nothing(&self) -> bool {
        self.gathered.drafts.is_empty() && self.copies.revisions.is_empty() && self.unfinished.is_empty()
    }
}

fn is_copy(source: &Source) -> bool {
    let start = &source.bytes[..source.bytes.len().min(200)];
    start.starts_with(b"{") && start.windows(FORMAT.len()).any(|part| part == FORMAT.as_bytes())
}

/// The screen.
pub(crate) fn take_in() -> impl IntoView {
    let session = Session::here();
    let understood = RwSignal::new_local(None::<Rc<Understood>>);
    let take = move |sources: Vec<Source>| understood.set(Some(Rc::new(Understood::of(session, sources))));
    let (over, set_over) = signal(false);
    let dropped = move |event: DragEvent| {
        event.prevent_default();
        set_over.set(false);
        if let Some(list) = event.data_transfer().and_then(|data| data.files()) {
            read_files(session, list, take);
        }
    };
    let picked = move |event: web_sys::Event| {
        let list = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok())
            .and_then(|input| input.files());
        if let Some(list) = list {
            read_files(session, list, take);
        }
    };
    view! {
        <h1>{session.word("app-take-in")}</h1>
        <p>{session.word("app-take-in-what")}</p>
        <label class="drop" class:over=over on:drop=dropped on:dragleave=move |_| set_over.set(false)
            on:dragover=move |event| { event.prevent_default(); set_over.set(true); }>
            <span>{session.word("app-pick-files")}</span>
            <input type="file" multiple on:change=picked/>
        </label>
        {typed(session, take, move || understood.set(None))}
        <div aria-live="polite">{move || understood.get().map(|found| shown(session, &found, understood))}</div>
    }
}

fn read_files(session: Session, list: FileList, take: impl Fn(Vec<Source>) + 'static) {
    spawn_local(async move {
        let (sources, left) = files::read(list).await;
        if !left.is_empty() {
            let names = left.into_iter().map(Value::from).collect();
            session.tell(session.say(&Message::new("app-files-left").with("files", Value::List(names))));
        }
        if !sources.is_empty() {
            take(sources);
        }
    });
}

/// A sheet typed from paper, read at each key; a long one in each pause, and until then nothing is understood of it.
fn typed(
    session: Session,
    take: impl Fn(Vec<Source>) + Copy + 'static,
    forget: impl Fn() + 'static,
) -> impl IntoView {
    let read = move |text: String| {
        if !text.trim().is_empty() {
            take(vec![Source { name: session.word("app-typed-name"), bytes: text.into_bytes() }]);
        }
    };
    let mut read_later = leptos::leptos_dom::helpers::debounce(PAUSE, read);
    let type_on = move |event| {
        let text = event_target_value(&event);
        if text.len() > AT_EACH_KEY {
            forget();
            read_later(text);
        } else {
            read(text);
        }
    };
    view! {
        <label class="typed">{session.word("app-typed")}
            <textarea rows="10" spellcheck="false" autocapitalize="off" placeholder=session.word("app-typed-example") on:input=type_on></textarea>
        </label>
    }
}

fn shown(
    session: Session,
    found: &Rc<Understood>,
    all: RwSignal<Option<Rc<Understood>>, LocalStorage>,
) -> impl IntoView + use<> {
    let words = session.words();
    let tally = found.gathered.tally.iter().map(|(kind, tally)| {
        let message = Message::new("app-understood").with("kind", Value::Word(kind_word(kind)));
        let message =
            message.with("new", tally.new).with("changed", tally.changed).with("known", tally.known);
        view! { <li>{words.say(&message)}</li> }
    });
    let tally = tally.collect_view();
    let copies = (!found.copies.revisions.is_empty()).then(|| {
        let message = Message::new("app-understood-copy").with("revisions", found.copies.revisions.len());
        view! { <li>{words.say(&message)}</li> }
    });
    let unfinished = (!found.unfinished.is_empty()).then(|| {
        let message = Message::new("app-understood-unfinished").with("lines", found.unfinished.len());
        view! { <li>{words.say(&message)}</li> }
    });
    let nothing = found.brings_nothing();
    let keep = {
        let found = Rc::clone(found);
        move |_| write(session, &found, all)
    };
    view! {
        <section class="understood">
            <h2>{words.word("app-understood-heading")}</h2>
            <ul>{tally}{copies}{unfinished}</ul>
            {nothing.then(|| view! { <p>{words.word("app-brings-nothing")}</p> })}
            {findings(&found.findings)}
            <div class="choices">
                <button type="button" class="main" disabled=nothing on:click=keep>{words.word("app-keep")}</button>
                <button type="button" on:click=move |_| all.set(None)>{words.word("app-leave")}</button>
            </div>
        </section>
    }
}

/// The catalogue's key for records of a kind.
fn kind_word(kind: &str) -> &'static str {
    match kind {
        "visit" => "app-kind-visit",
        "line" => "app-kind-line",
        "stratum" => "app-kind-stratum",
        "plants" => "app-kind-plants",
        "protocol" => "app-kind-protocol",
        "goal" => "app-kind-goal",
        "calibration" => "app-kind-calibration",
        "settlement" => "app-kind-settlement",
        "photo" => "app-kind-photo",
        _ => "app-kind-other",
    }
}

fn write(session: Session, found: &Understood, all: RwSignal<Option<Rc<Understood>>, LocalStorage>) {
    let kept = move |_| {
        all.set(None);
        session.tell(session.word("app-kept"));
        super::sites::open();
    };
    let drafts = found.gathered.drafts.clone();
    let copies = found.copies.clone();
    session.take_in_drafts(found.unfinished.clone());
    if copies.revisions.is_empty() {
        session.write("import", drafts, String::new(), kept);
    } else {
        session.join(copies, move |_| session.write("import", drafts, String::new(), kept));
    }
}

/// Takes the demo in. It lies beside the app and is fetched once, with everything else.
pub(crate) fn demo(session: Session) {
    spawn_local(async move {
        let files = fetch_demo().await.unwrap_or_default();
        let sources: Vec<Source> =
            files.into_iter().map(|(name, text)| Source { name, bytes: text.into_bytes() }).collect();
        if sources.is_empty() {
            session.tell(session.word("app-demo-missing"));
            return;
        }
        let understood = Understood::of(session, sources);
        session.write("import", understood.gathered.drafts, session.word("app-demo-reason"), move |_| {
            session.tell(session.word("app-demo-kept"));
            crate::route::go(&Route::Sites);
        });
    });
}

async fn fetch_demo() -> Option<Vec<(String, String)>> {
    use wasm_bindgen_futures::JsFuture;
    let response = JsFuture::from(web_sys::window()?.fetch_with_str("demo.json")).await.ok()?;
    let text = JsFuture::from(response.dyn_into::<web_sys::Response>().ok()?.text().ok()?).await.ok()?;
    serde_json::from_str(&text.as_string()?).ok()
}
