//! One site: its report as it would be printed, and what can be asked of it without changing anything.

use super::sites::{about, cover_words, written_twice};
use super::what_if::{Asked, what_if};
use super::{chain, permission, photos};
use crate::parts::files::hand_out;
use crate::parts::sheet::sheet;
use crate::parts::small;
use crate::parts::withheld::withheld;
use crate::route::Route;
use crate::session::Session;
use crate::standing::Standing;
use leptos::prelude::*;
use std::time::Duration;
use tautline_report::Telling;
use tautline_survey::assess::{Assessment, Question, assess};
use tautline_survey::explain::verdict_words;
use tautline_survey::input::Input;
use tautline_survey::sites::of_site;

/// The whole report is drawn anew once nothing was asked for so long; the answer itself is there at once.
const PAUSE: Duration = Duration::from_millis(350);

/// The answer: the site alone, and what it comes to.
struct Answer {
    input: Input,
    question: Question,
    assessments: Vec<Assessment>,
}

impl Answer {
    fn of(standing: &Standing, site: &str, asked: &Asked) -> Self {
        let input = of_site(&standing.input, site);
        let question = asked.question(standing);
        let assessments = assess(&input, &question);
        Self { input, question, assessments }
    }
}

/// The screen.
pub(crate) fn site(name: String) -> impl IntoView {
    let session = Session::here();
    let asked = RwSignal::new(Asked::default());
    let drawn = RwSignal::new(Asked::default());
    let mut draw = leptos::leptos_dom::helpers::debounce(PAUSE, move |()| {
        drawn.try_set(asked.get_untracked());
    });
    Effect::new(move |first: Option<()>| {
        asked.track();
        if first.is_some() {
            draw(());
        }
    });
    let waiting = move || asked.with(|asked| drawn.with(|drawn| asked != drawn));
    let [called, head_of, ask_of, chain_of, permission_of, photos_of] = [(); 6].map(|()| name.clone());
    let report = move || report(session, &name, &drawn.get());
    view! {
        <h1>{called}</h1>
        {withheld(session)}
        {move || head(session, &head_of)}
        {move || what_if(session, &ask_of, asked)}
        <div class="report" class:waiting=waiting aria-busy=move || waiting().to_string()>{report}</div>
        {chain::chains(session, chain_of, drawn)}
        {permission::permissions(permission_of)}
        {photos::photos(photos_of)}
    }
}

/// The verdict first, then the figure, then how it was come by and what waits.
fn head(session: Session, name: &str) -> Option<impl IntoView + use<>> {
    let summaries = session.summaries();
    let summary = summaries.sites().get(name)?;
    let newest = summary.years.last()?;
    let words = session.words();
    let mut verdicts = Vec::new();
    for (goal, code) in &newest.verdicts {
        let verdict = (code, words.say(&verdict_words(goal, code)));
        // one number from two sources is one sentence; the report below names both
        if !verdicts.contains(&verdict) {
            verdicts.push(verdict);
        }
    }
    let verdicts =
        verdicts.into_iter().map(|(code, said)| view! { <p class=format!("verdict {code}")>{said}</p> });
    let verdicts = verdicts.collect_view();
    let cover = cover_words(newest).map(|message| words.say(&message));
    let twice = written_twice(session).get(name).copied().unwrap_or(0);
    let about: Vec<String> = about(summary, twice).iter().map(|message| words.say(message)).collect();
    Some(view! {
        <section class="head">
            {verdicts}
            {small::of_year(newest, small::end_of([newest]))}
            <p>{cover}</p>
            <p class="quiet">{about.join(" · ")}</p>
        </section>
    })
}

/// The report on screen, and as a file.
fn report(session: Session, name: &str, asked: &Asked) -> AnyView {
    let answer = Answer::of(&session.standing(), name, asked);
    if answer.assessments.is_empty() {
        return view! { <p>{session.word("app-site-unknown")}</p> }.into_any();
    }
    let words = session.result_words();
    let body =
        tautline_report::body_of(&Telling::new(&answer.input, &answer.question, &answer.assessments, &words));
    let file = format!("{name}.html");
    let take = move |_| {
        hand_out(
            &file,
            "text/html",
            &tautline_report::html(&answer.input, &answer.question, &answer.assessments, &words),
        );
    };
    view! {
        <p class="choices">
            <a class="button" href=Route::Follow(Some(name.to_owned())).address()>{session.word("app-follow-site")}</a>
            <button type="button" on:click=take>{session.word("app-report-file")}</button>
        </p>
        {sheet(body, tautline_report::style())}
    }
    .into_any()
}
