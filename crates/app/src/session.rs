//! What is open: the notebook on this device, what stands in it, the words, and what a person set.

use crate::device::here::a_turn;
use crate::device::{Bytes, Device, NAME, drafts, share};
use crate::later;
use crate::settings::Settings;
use crate::standing::{Asked, Log, Standing, Stood};
use crate::words::{self, Spoken, Which};
use js_sys::Array;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;
use std::time::Duration;
use tautline_store::{Keep as _, KeepError};
use tautline_survey::draft::LineDraft;
use tautline_survey::message::Message;
use tautline_survey::notebook::hand::Draft;
use tautline_survey::revision::{ActionId, Revision, header, line, photo_line};
use tautline_survey::summary::Summaries;
use tautline_survey::sync::Badge;
use tautline_words::Words;

/// How long what was said stays: time to read two sentences twice.
const SAID_FOR: Duration = Duration::from_secs(10);

/// The name under which the sites' summaries are kept beside the notebook.
const SUMMARIES: &str = "summaries";

/// What another copy of a notebook brought.
#[derive(Clone, Debug, Default)]
pub(crate) struct Copies {
    pub(crate) revisions: Vec<Revision>,
    pub(crate) photos: Vec<Bytes>,
}

/// Whether and how this device shares its notebook.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sharing {
    /// Not tried yet.
    Unknown,
    /// An exchange is under way.
    UnderWay,
    /// Nobody answered; all is kept here.
    Nobody,
    /// The last exchange came to its end.
    Done,
}

/// Everything that screens share. Copied freely; all copies are one.
#[derive(Clone, Copy)]
pub(crate) struct Session {
    device: StoredValue<Rc<RefCell<Option<Device>>>, LocalStorage>,
    words: StoredValue<Rc<Words>, LocalStorage>,
    result_words: StoredValue<Rc<Words>, LocalStorage>,
    standing: RwSignal<Rc<Standing>, LocalStorage>,
    summaries: RwSignal<Arc<Summaries>>,
    /// The notebook was read whole; before that, there are only the summaries kept from last time.
    pub(crate) is_read: RwSignal<bool>,
    pub(crate) settings: RwSignal<Settings>,
    pub(crate) badge: RwSignal<Badge>,
    pub(crate) sharing: RwSignal<Sharing>,
    /// What stands is being worked out.
    looking: StoredValue<bool>,
    /// Something was written while an exchange was under way: another follows.
    share_again: StoredValue<bool>,
    /// The address that the shared notebook moves to, where it said so.
    pub(crate) moving_to: RwSignal<Option<String>>,
    /// What was said last, for eyes and ears.
    pub(crate) said: RwSignal<String>,
}

impl Session {
    /// Opens the notebook of this browser. What every site came to last time is there at once; the notebook itself is
    /// read by [`Session::read`].
    pub(crate) async fn open() -> Result<Self, KeepError> {
        let device = Device::open(NAME).await?;
        let settings = Settings::kept(&device).await;
        let spoken = words::spoken(&settings, Which::First).await.unwrap_or_default();
        let summaries = Summaries::read(&device.text(SUMMARIES).await?.unwrap_or_default());
        let session = Self {
            badge: RwSignal::new(Badge::Here(0)),
            device: StoredValue::new_local(Rc::new(RefCell::new(Some(device)))),
            words: StoredValue::new_local(Rc::new(spoken.words)),
            result_words: StoredValue::new_local(Rc::new(spoken.results)),
            standing: RwSignal::new_local(Rc::new(Standing::default())),
            summaries: RwSignal::new(Arc::new(summaries)),
            is_read: RwSignal::new(false),
            settings: RwSignal::new(settings),
            sharing: RwSignal::new(Sharing::Unknown),
            looking: StoredValue::new(false),
            share_again: StoredValue::new(false),
            moving_to: RwSignal::new(None),
            said: RwSignal::new(String::new()),
        };
        Ok(session)
    }

    /// Reads the notebook, then shares it where somebody answers.
    pub(crate) fn read(self) {
        self.with_device(
            async |device| device.load().await,
            move |done| {
                if let Err(error) = done {
                    self.tell_fault(&error);
                }
                self.look_again(move || {
                    self.is_read.set(true);
                    crate::shell::at_hand();
                    self.share();
                });
            },
        );
    }

    /// The session of this page.
    pub(crate) fn here() -> Self {
        expect_context()
    }

    pub(crate) fn words(self) -> Rc<Words> {
        self.words.get_value()
    }

    /// Waits for the words that only rooms need.
    pub(crate) async fn all_words(self) {
        if !words::are_all(&self.words())
            && let Some(spoken) = words::spoken(&self.settings.get_untracked(), Which::All).await
        {
            self.speak(spoken);
        }
    }

    /// Goes on in these words.
    fn speak(self, spoken: Spoken) {
        self.words.set_value(Rc::new(spoken.words));
        self.result_words.set_value(Rc::new(spoken.results));
    }

    /// The words for what was worked out: lengths stand in the units that the person likes. A tape is read in its own.
    /// A screen that says something in them follows those units.
    pub(crate) fn result_words(self) -> Rc<Words> {
        self.settings.track();
        self.result_words.get_value()
    }

    /// The words for a code.
    pub(crate) fn word(self, code: &str) -> String {
        self.words().word(code)
    }

    /// The words for a message.
    pub(crate) fn say(self, message: &Message) -> String {
        self.words().say(message)
    }

    /// What stands; a screen that reads it follows it.
    pub(crate) fn standing(self) -> Rc<Standing> {
        self.standing.get()
    }

    /// What every site comes to; a screen that reads it follows it.
    pub(crate) fn summaries(self) -> Arc<Summaries> {
        self.summaries.get()
    }

    /// What every site comes to now, for what is done once.
    pub(crate) fn summaries_untracked(self) -> Arc<Summaries> {
        self.summaries.get_untracked()
    }

    /// What stands now, for what is done once.
    pub(crate) fn standing_untracked(self) -> Rc<Standing> {
        self.standing.get_untracked()
    }

    /// Says something to eyes and ears. It goes by itself, so that it covers nothing for long.
    pub(crate) fn tell(self, text: String) {
        self.said.set(text.clone());
        let go = move || {
            if self.said.with_untracked(|said| *said == text) {
                self.said.set(String::new());
            }
        };
        set_timeout(go, SAID_FOR);
    }

    /// Takes back what was said: whoever works on has seen it.
    pub(crate) fn quiet(self) {
        if self.said.with_untracked(|said| !said.is_empty()) {
            self.said.set(String::new());
        }
    }

    pub(crate) fn tell_fault(self, error: &KeepError) {
        let device = self.word("app-this-device");
        self.tell(self.say(&error.message(&device)));
    }

    /// Takes the notebook for work that waits on the disk; nothing else writes meanwhile. None while other work has it.
    fn take(self) -> Option<Device> {
        self.device.get_value().borrow_mut().take()
    }

    fn put_back(self, device: Device) {
        *self.device.get_value().borrow_mut() = Some(device);
    }

    /// Does something with the notebook in turn: while other work has it, this waits.
    pub(crate) fn with_device<T: 'static>(
        self,
        work: impl AsyncFnOnce(&mut Device) -> T + 'static,
        then: impl FnOnce(T) + 'static,
    ) {
        spawn_local(async move {
            let mut device = loop {
                match self.take() {
                    Some(device) => break device,
                    None => a_turn().await,
                }
            };
            let done = work(&mut device).await;
            self.put_back(device);
            then(done);
        });
    }

    /// Looks again at what stands, after the notebook or a draft has changed; then goes on. This waits for nothing but the
    /// disk: an exchange that is under way must neither show what is to be out of sight nor hold a reader up.
    pub(crate) fn look_again(self, then: impl FnOnce() + 'static) {
        spawn_local(async move {
            // one look after the other: each begins from what the last one saw
            while self.looking.get_value() {
                a_turn().await;
            }
            self.looking.set_value(true);
            let drafts = match drafts::texts().await {
                Ok(texts) => Some(texts),
                Err(error) => {
                    self.tell_fault(&error);
                    None
                }
            };
            // an empty notebook stands as it is
            if let Some(asked) = self.ask(drafts) {
                match later::work(asked).await {
                    Ok(stood) => self.stand(stood),
                    Err(_) => self.tell(self.word("app-room-not-here")),
                }
            }
            self.looking.set_value(false);
            self.renew_badge();
            then();
        });
    }

    /// What there is to work on; nothing in a notebook that is empty and was.
    fn ask(self, drafts: Option<Vec<String>>) -> Option<Asked> {
        let held = self.device.get_value();
        let held = held.borrow();
        let before = self.standing_untracked();
        let summaries = Summaries::clone(&self.summaries.get_untracked());
        // while other work has the notebook, what stood before stands, seen by those who read now
        let changed = held.as_ref().filter(|device| !before.is_of(device));
        let log = changed.map(|device| Log {
            heads: device.memory().heads().unwrap_or_default(),
            end: device.memory().end().ok().flatten(),
        });
        let is_empty = summaries.sites().is_empty()
            && drafts.as_ref().is_none_or(Vec::is_empty)
            && log.as_ref().is_none_or(|log| log.heads.is_empty());
        (!is_empty).then_some(Asked { log, before, drafts, summaries })
    }

    fn stand(self, stood: Stood) {
        if let Some((summaries, text)) = stood.renewed {
            self.summaries.set(Arc::new(summaries));
            // a summary that can't be kept is worked out again next time
            self.with_device(
                async move |device| device.keep_text(SUMMARIES, Some(&text)).await.is_ok(),
                |_| (),
            );
        }
        if let Some(standing) = stood.standing {
            self.standing.set(Rc::new(standing));
        }
    }

    /// Takes unfinished lines of a copy in.
    pub(crate) fn take_in_drafts(self, copied: Vec<(String, LineDraft)>) {
        spawn_local(async move {
            if let Err(error) = drafts::take_in(&copied).await {
                self.tell_fault(&error);
            }
            self.look_again(|| ());
        });
    }

    /// Makes revisions of drafts, says what came of it, and shares it where somebody answers.
    pub(crate) fn write(
        self,
        what: &'static str,
        drafts: Vec<Draft>,
        reason: String,
        then: impl FnOnce(Option<ActionId>) + 'static,
    ) {
        self.write_with(what, drafts, Vec::new(), reason, then);
    }

    /// The same, with the photos that the drafts name.
    pub(crate) fn write_with(
        self,
        what: &'static str,
        drafts: Vec<Draft>,
        photos: Vec<Bytes>,
        reason: String,
        then: impl FnOnce(Option<ActionId>) + 'static,
    ) {
        let author = self.settings.get_untracked().author();
        self.with_device(
            async move |device| device.write(what, drafts, &photos, &author, &reason).await,
            move |done| match done {
                Ok(action) => self.look_again(move || {
                    then(action);
                    self.share();
                }),
                Err(error) => self.tell_fault(&error),
            },
        );
    }

    /// Takes revisions in that were made elsewhere, with the photos that they name.
    pub(crate) fn join(self, copies: Copies, then: impl FnOnce(usize) + 'static) {
        self.with_device(
            async move |device| device.append(&copies.revisions, &copies.photos, &[]).await,
            move |done| match done {
                Ok(appended) => self.look_again(move || {
                    then(appended.new + appended.erased);
                    self.share();
                }),
                Err(error) => self.tell_fault(&error),
            },
        );
    }

    /// Everything on this device as lines of JSON. Each photo goes over to the browser by itself, so that they are never
    /// all in this program's own memory.
    pub(crate) fn all(self, then: impl FnOnce(Array) + 'static) {
        let lines = async |device: &mut Device| -> Result<Array, KeepError> {
            let mut text = header() + "\n";
            for revision in device.memory().records().revisions() {
                text += &line(revision);
                text.push('\n');
            }
            let parts = Array::of1(&text.into());
            for photo in device.photos().await? {
                if let Some(bytes) = device.photo(&photo.sha256).await? {
                    parts.push(&(photo_line(&photo.sha256, &bytes) + "\n").into());
                }
            }
            Ok(parts)
        };
        self.with_device(lines, move |done| match done {
            Ok(parts) => then(parts),
            Err(error) => self.tell_fault(&error),
        });
    }

    /// Keeps what a person set, and goes on by it.
    pub(crate) fn set(self, settings: Settings) {
        let kept = settings.clone();
        let before = self.settings.get_untracked();
        let speaks_another = before.language != settings.language;
        self.with_device(
            async move |device| kept.keep(device).await,
            move |()| {
                // another language, another page: every word of it
                if speaks_another && let Some(window) = web_sys::window() {
                    // a page that can't be loaded again speaks it the next time
                    let _ = window.location().reload();
                }
            },
        );
        if speaks_another || before.lengths == settings.lengths {
            return self.settings.set(settings);
        }
        let which = if words::are_all(&self.words()) { Which::All } else { Which::First };
        spawn_local(async move {
            match words::spoken(&settings, which).await {
                Some(spoken) => self.speak(spoken),
                None => self.tell(self.word("app-room-not-here")),
            }
            self.settings.set(settings);
        });
    }

    /// Shares with the notebook that this page came from, until each has what the other has.
    pub(crate) fn share(self) {
        if self.sharing.get_untracked() == Sharing::UnderWay {
            return self.share_again.set_value(true);
        }
        self.share_again.set_value(false);
        self.sharing.set(Sharing::UnderWay);
        self.share_on();
    }

    fn share_on(self) {
        let origin = origin();
        self.with_device(
            async move |device| share::exchange(device, &origin).await,
            move |done| match done {
                Ok(exchanged) => {
                    self.moving_to.set(exchanged.moving_to);
                    if !exchanged.done {
                        return self.share_on();
                    }
                    self.look_again(move || self.share_photos());
                }
                Err(_) => self.shared(Sharing::Nobody),
            },
        );
    }

    /// The photos, once both hold the same revisions.
    fn share_photos(self) {
        let origin = origin();
        self.with_device(
            async move |device| share::photos::begin(device, &origin).await,
            move |begun| match begun {
                Ok(round) => self.share_photo(round),
                Err(_) => self.shared(Sharing::Nobody),
            },
        );
    }

    /// One photo after the other; between two, others have their turn.
    fn share_photo(self, mut round: share::photos::Round) {
        let origin = origin();
        self.with_device(
            async move |device| (share::photos::one(device, &origin, &mut round).await, round),
            move |(done, round)| match done {
                Ok(true) => self.share_photo(round),
                Ok(false) => self.shared(Sharing::Done),
                Err(_) => self.shared(Sharing::Nobody),
            },
        );
    }

    fn shared(self, how: Sharing) {
        self.sharing.set(how);
        self.renew_badge();
        if how == Sharing::Done && self.share_again.get_value() {
            self.share();
        }
    }

    fn renew_badge(self) {
        let origin = origin();
        let conflicts = self.standing.get_untracked().current.conflicts.len();
        self.with_device(
            async move |device| share::badge(device, &origin, conflicts).await,
            move |badge| self.badge.set(badge),
        );
    }
}

/// The address that this page came from.
fn origin() -> String {
    web_sys::window().and_then(|window| window.location().origin().ok()).unwrap_or_default()
}
