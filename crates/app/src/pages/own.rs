//! What a person sets on this device, for this device alone: who writes, language, units, letters, light.

use crate::session::Session;
use crate::settings::{Letters, Settings, Theme};
use leptos::prelude::*;
use tautline_survey::message::Value;
use tautline_words::{Lengths, Words};

/// The names of the languages in the catalogue, each in itself.
const LANGUAGES: [(&str, &str); 2] = [("en", "desk-language-en"), ("es", "desk-language-es")];

/// All of it.
pub(super) fn own(session: Session) -> impl IntoView {
    view! { {about_you(session)}{said(session)}{letters(session)}{look(session)} }
}

/// Changes the settings and keeps them.
fn change(session: Session, change: impl FnOnce(&mut Settings)) {
    let mut settings = session.settings.get_untracked();
    change(&mut settings);
    session.set(settings);
}

fn about_you(session: Session) -> impl IntoView {
    let own = session.settings.get_untracked();
    let typed = move |set: fn(&mut Settings, String)| {
        move |event| change(session, |settings| set(settings, event_target_value(&event)))
    };
    view! {
        <section><h2>{session.word("app-you")}</h2><p class="quiet">{session.word("app-you-what")}</p>
            <label>{session.word("app-your-name")}<input type="text" autocomplete="name" value=own.name on:change=typed(|settings, text| settings.name = text)/></label>
            <label>{session.word("app-device-name")}<input type="text" autocomplete="off" value=own.device on:change=typed(|settings, text| settings.device = text)/></label>
        </section>
    }
}

/// The language, and the units of what was worked out.
fn said(session: Session) -> impl IntoView {
    let own = session.settings.get_untracked();
    let known = LANGUAGES.iter().filter(|(code, _)| Words::LANGUAGES.contains(code));
    let languages = [("", "desk-language-device")].iter().chain(known).map(|&(code, name)| {
        view! { <option value=code lang=code.to_owned() selected=own.language == code>{session.word(name)}</option> }
    });
    let languages = languages.collect_view();
    let speak = move |event| change(session, |settings| settings.language = event_target_value(&event));
    let lengths = Lengths::ALL.map(|lengths| {
        let name = session.word(match lengths {
            Lengths::AsWritten => "desk-lengths-as-written",
            Lengths::Metric => "desk-lengths-metric",
            Lengths::FeetAndInches => "desk-lengths-feet",
        });
        view! { <option value=lengths.code() selected=own.lengths() == lengths>{name}</option> }
    });
    let measure = move |event| change(session, |settings| settings.lengths = event_target_value(&event));
    view! {
        <section><h2>{session.word("desk-said")}</h2>
            <label>{session.word("desk-language")}<select on:change=speak>{languages}</select></label>
            <label>{session.word("desk-lengths")}<select on:change=measure>{lengths.collect_view()}</select></label>
            <p class="quiet">{session.word("desk-lengths-what")}</p>
        </section>
    }
}

fn letters(session: Session) -> impl IntoView {
    let options = Letters::ALL.map(|letters| {
        let chosen = move || session.settings.with(|settings| settings.letters == letters);
        let choose = move |_| change(session, |settings| settings.letters = letters);
        let name = match letters {
            Letters::Usual => session.word("desk-letters-usual"),
            larger => session.words().value(&Value::Share(larger.share(), 0)),
        };
        view! { <label class="option"><input type="radio" name="letters" prop:checked=chosen on:change=choose/>{name}</label> }
    });
    view! { <fieldset><legend>{session.word("desk-letters")}</legend>{options.collect_view()}</fieldset> }
}

fn look(session: Session) -> impl IntoView {
    let themes = Theme::ALL.map(|theme| {
        let chosen = move || session.settings.with(|settings| settings.theme == theme);
        let choose = move |_| change(session, |settings| settings.theme = theme);
        let name = session.word(match theme {
            Theme::Device => "app-theme-device",
            Theme::Light => "app-theme-light",
            Theme::Dark => "app-theme-dark",
            Theme::Sunlight => "app-theme-sunlight",
        });
        view! { <label class="option"><input type="radio" name="theme" prop:checked=chosen on:change=choose/>{name}</label> }
    });
    view! { <fieldset><legend>{session.word("app-look")}</legend>{themes.collect_view()}</fieldset> }
}
