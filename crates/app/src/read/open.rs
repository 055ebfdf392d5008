//! What is open: one draft, what it is read by, and how much of it is on the disk.

use super::twice::first_of;
use crate::device::drafts::Drafts;
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::cell::Cell;
use std::rc::Rc;
use tautline_store::KeepError;
use tautline_survey::draft::{Key, LineDraft, Remark, Rules, remarks};
use tautline_survey::plan::PlannedLine;
use tautline_survey::plants::PlantList;
use tautline_survey::protocol::Protocol;
use tautline_survey::visit::Visit;

/// What a line is read by, as it stood when the line was opened.
pub(super) struct Known {
    pub(super) protocol: Option<Protocol>,
    pub(super) plants: PlantList,
    pub(super) planned: Option<PlannedLine>,
    /// The species of earlier lines, the newest first.
    pub(super) earlier: Vec<String>,
}

impl Known {
    /// What the notebook and what is shipped say of a draft's line.
    pub(super) fn of(session: Session, draft: &LineDraft) -> Self {
        let standing = session.standing_untracked();
        let setup = draft.setup();
        let protocol = protocols(session).into_iter().find(|one| one.fingerprint() == setup.protocol);
        let mut visits: Vec<_> =
            standing.input.visits.iter().filter(|visit| visit.site == setup.site).collect();
        visits.sort_by_key(|visit| std::cmp::Reverse(visit.date));
        let mut earlier: Vec<String> = Vec::new();
        for intercept in visits.iter().flat_map(|visit| &visit.intercepts) {
            let code = standing.input.plants.code(&intercept.species);
            if !code.is_empty() && !earlier.contains(&code) {
                earlier.push(code);
            }
        }
        Self {
            protocol,
            plants: standing.input.plants.clone(),
            planned: standing.input.planned(&setup.site, &setup.line).cloned(),
            earlier,
        }
    }

    pub(super) fn rules(&self) -> Rules<'_> {
        Rules { protocol: self.protocol.as_ref(), plants: &self.plants, planned: self.planned.as_ref() }
    }
}

/// The protocols of the notebook, then those that are shipped, each meaning once.
pub(super) fn protocols(session: Session) -> Vec<Protocol> {
    let mut known = session.standing_untracked().current.protocols();
    for (_, shipped) in tautline_exchange::protocol::shipped() {
        if known.iter().all(|own| own.fingerprint() != shipped.fingerprint()) {
            known.push(shipped);
        }
    }
    known
}

/// What lies under the thumb.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Panel {
    /// Species and numbers.
    Keys,
    /// A species by a few letters.
    Find,
    /// The protocol, with its rules drawn.
    Rules,
    /// One row, and all that can be done to it.
    Row(u32),
    /// How far the line was read, conditions, what is done seldom.
    More,
    /// A last look before the line is closed.
    Close,
}

/// Where the draft is kept, and what it is read by.
struct Own {
    name: String,
    drafts: Rc<Drafts>,
    known: Rc<Known>,
    /// It is on its way to the disk.
    keeping: Cell<bool>,
}

/// The draft on the screen. Copied freely; all copies are one.
#[derive(Clone, Copy)]
pub(super) struct Open {
    pub(super) session: Session,
    pub(super) draft: RwSignal<LineDraft>,
    /// How many times it was changed, and how many of these are on the disk.
    changed: RwSignal<usize>,
    kept: RwSignal<usize>,
    own: StoredValue<Rc<Own>, LocalStorage>,
    /// What lies under the thumb.
    pub(super) panel: RwSignal<Panel>,
    /// What a listener hears of the last key.
    pub(super) heard: RwSignal<String>,
    /// The visit that the draft became.
    pub(super) closed: RwSignal<Option<Visit>>,
}

impl Open {
    pub(super) fn new(session: Session, drafts: Rc<Drafts>, name: String, draft: LineDraft) -> Self {
        let known = Rc::new(Known::of(session, &draft));
        Self {
            session,
            draft: RwSignal::new(draft),
            changed: RwSignal::new(0),
            kept: RwSignal::new(0),
            own: StoredValue::new_local(Rc::new(Own { name, drafts, known, keeping: Cell::new(false) })),
            panel: RwSignal::new(Panel::Keys),
            heard: RwSignal::new(String::new()),
            closed: RwSignal::new(None),
        }
    }

    pub(super) fn known(self) -> Rc<Known> {
        Rc::clone(&self.own.get_value().known)
    }

    pub(super) fn word(self, code: &str) -> String {
        self.session.word(code)
    }

    /// What is to be said of the rows as they stand.
    pub(super) fn remarks(self) -> Vec<Remark> {
        let known = self.known();
        self.draft.with_untracked(|draft| remarks(draft, known.rules()))
    }

    /// Shows a panel, or the keys again where it is shown already.
    pub(super) fn turn(self, panel: Panel) {
        self.panel.update(|now| *now = if *now == panel { Panel::Keys } else { panel });
    }

    /// Whether everything on the screen is on the disk.
    pub(super) fn is_kept(self) -> bool {
        self.changed.get() == self.kept.get()
    }

    /// Presses a key; whatever is typed next is typed on the keys.
    pub(super) fn press(self, key: Key) -> bool {
        let is_kept_open = matches!(key, Key::Note(..) | Key::Condition(..) | Key::CorrectSpecies(..));
        let pressed = self.change(|draft| draft.press(key));
        if pressed && !is_kept_open && self.panel.get_untracked() != Panel::Keys {
            self.panel.set(Panel::Keys);
        }
        pressed
    }

    pub(super) fn undo(self) {
        self.change(LineDraft::undo);
    }

    pub(super) fn redo(self) {
        self.change(LineDraft::redo);
    }

    fn change(self, how: impl FnOnce(&mut LineDraft) -> bool) -> bool {
        let rows_before = self.draft.with_untracked(|draft| draft.sheet().rows.len());
        let done = self.draft.try_maybe_update(|draft| {
            let done = how(draft);
            (done, done)
        });
        if done != Some(true) {
            return false;
        }
        self.changed.update(|count| *count += 1);
        self.session.quiet();
        if self.draft.with_untracked(|draft| draft.sheet().rows.len()) > rows_before {
            self.say_the_last_row();
        }
        self.keep();
        true
    }

    /// The recorder repeats aloud: so does the app, to whoever listens.
    fn say_the_last_row(self) {
        let known = self.known();
        let (row, said) = self.draft.with_untracked(|draft| {
            let row = draft.sheet().rows.last().cloned();
            let own = row.as_ref().map_or(0, |row| row.id);
            let said: Vec<_> =
                remarks(draft, known.rules()).into_iter().filter(|one| one.row == own).collect();
            (row, said)
        });
        let Some(row) = row else { return };
        let mut heard = vec![super::rows::as_text(&row)];
        heard.extend(said.iter().map(|one| self.session.say(&one.message)));
        self.heard.set(heard.join(". "));
    }

    /// Brings the draft to the disk, and again as long as it changes meanwhile.
    fn keep(self) {
        let own = self.own.get_value();
        if own.keeping.replace(true) {
            return;
        }
        spawn_local(async move {
            loop {
                let so_far = self.changed.get_untracked();
                let text = self.draft.with_untracked(LineDraft::to_text);
                if let Err(fault) = own.drafts.keep(&own.name, Some(&text)).await {
                    self.session.tell_fault(&KeepError::from(fault));
                    break;
                }
                self.kept.set(so_far);
                if self.changed.get_untracked() == so_far {
                    break;
                }
            }
            own.keeping.set(false);
        });
    }

    /// The name that the draft is kept under.
    pub(super) fn name(self) -> String {
        self.own.get_value().name.clone()
    }

    /// Takes the draft away, once what it says stands in the notebook; of a sheet that was typed twice, the first typing goes
    /// with the second.
    pub(super) fn forget(self, then: impl FnOnce() + 'static) {
        let name = self.name();
        let first = first_of(&name).map(str::to_owned);
        self.take_away(std::iter::once(name).chain(first).collect(), then);
    }

    /// Throws this draft alone away.
    pub(super) fn discard(self, then: impl FnOnce() + 'static) {
        self.take_away(vec![self.name()], then);
    }

    fn take_away(self, names: Vec<String>, then: impl FnOnce() + 'static) {
        let own = self.own.get_value();
        spawn_local(async move {
            for name in names {
                if let Err(fault) = own.drafts.keep(&name, None).await {
                    return self.session.tell_fault(&KeepError::from(fault));
                }
            }
            // whoever read blind is done: what was out of sight comes back
            self.session.look_again(then);
        });
    }
}
