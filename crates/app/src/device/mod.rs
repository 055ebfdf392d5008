//! The notebook on this device: revisions in the browser's database, and what stands in them at hand.
//!
//! What is written is worked out in memory, goes to the disk in one strict transaction, and is acknowledged when that is
//! complete. Where another window of this browser has written meanwhile, that is read first and the writing begun again.

#[cfg(feature = "conformance")]
pub(crate) mod conformance;
pub(crate) mod disk;
pub(crate) mod drafts;
pub(crate) mod here;
mod photos;
pub(crate) mod share;

pub(crate) use photos::Bytes;

use disk::{BY_NAME, Disk, Fault, LOG, MARKS, PHOTOS, TEXTS, Transaction, above, answer, number};
use js_sys::{Array, Reflect};
use std::collections::BTreeMap;
use tautline_store::{Appended, Cursor, Keep as _, KeepError, Memory};
use tautline_survey::notebook::hand::{Draft, Hand};
use tautline_survey::revision::{ActionId, DeviceId, Revision};
use tautline_survey::sync::Entry;
use wasm_bindgen::{JsCast as _, JsValue};
use web_sys::IdbObjectStore;

/// The name of the database. Another name would be another notebook.
pub(crate) const NAME: &str = "tautline";

/// So many revisions are read without a pause.
const SLICE: usize = 500;

/// The name under which this copy of the notebook keeps its own id.
const DEVICE: &str = "device";

impl From<Fault> for KeepError {
    fn from(fault: Fault) -> Self {
        match fault {
            Fault::Full => Self::Full,
            Fault::Other(why) => Self::System(why),
        }
    }
}

/// The notebook on this device.
pub(crate) struct Device {
    disk: Disk,
    memory: Memory,
    /// What this copy of the notebook is called by others.
    pub(crate) id: DeviceId,
}

/// Who writes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Author {
    /// The person.
    pub(crate) name: String,
    /// What they call this device.
    pub(crate) device: String,
}

impl Device {
    /// Opens the notebook of this browser, or begins it. Nothing of it is in memory before [`Device::load`].
    pub(crate) async fn open(name: &str) -> Result<Self, KeepError> {
        let disk = Disk::open(name).await?;
        let id = own_id(&disk).await?;
        Ok(Self { disk, memory: Memory::default(), id })
    }

    /// What it holds.
    pub(crate) const fn memory(&self) -> &Memory {
        &self.memory
    }

    /// Reads everything, or everything again.
    pub(crate) async fn load(&mut self) -> Result<(), KeepError> {
        let reading = self.disk.transaction(&[LOG, MARKS], false)?;
        let (log, marks) = (reading.store(LOG)?, reading.store(MARKS)?);
        let asked = [log.get_all_keys(), log.get_all(), marks.get_all_keys(), marks.get_all()]
            .map(|one| one.map_err(Fault::from));
        let [keys, values, batches, mark] = asked;
        let (keys, values, batches, mark) = (keys?, values?, batches?, mark?);
        let (keys, values) = (list(&answer(&keys).await?), list(&answer(&values).await?));
        let (batches, mark) = (list(&answer(&batches).await?), list(&answer(&mark).await?));
        let mut log = Vec::new();
        for (number, (at, value)) in keys.iter().zip(values.iter()).enumerate() {
            // a notebook of many years is long; whoever types meanwhile isn't kept waiting
            if number % SLICE == SLICE - 1 {
                here::a_turn().await;
            }
            log.extend(entry(&at, &value));
        }
        let marks: BTreeMap<u64, String> = batches
            .iter()
            .zip(mark.iter())
            .filter_map(|(at, mark)| Some((whole(&at)?, mark.as_string()?)))
            .collect();
        self.memory = Memory::restored(log, marks);
        Ok(())
    }

    /// Takes a batch in, with the photos that it names and other texts, all of it or nothing. It is on the disk when this
    /// returns.
    pub(crate) async fn append(
        &mut self,
        batch: &[Revision],
        photos: &[Bytes],
        texts: &[(&str, &str)],
    ) -> Result<Appended, KeepError> {
        loop {
            match self.try_append(batch, photos, texts).await {
                Ok(Some(appended)) => return Ok(appended),
                // another window has written meanwhile: what it wrote comes first
                Ok(None) => self.load().await?,
                Err(error) => {
                    // memory is ahead of the disk, which holds nothing of this
                    self.memory = Memory::default();
                    self.load().await?;
                    return Err(error);
                }
            }
        }
    }

    /// The same; none where the disk holds what memory does not, and then nothing of it is written.
    async fn try_append(
        &mut self,
        batch: &[Revision],
        photos: &[Bytes],
        texts: &[(&str, &str)],
    ) -> Result<Option<Appended>, KeepError> {
        let last = self.end();
        let appended = self.memory.append(batch)?;
        let new = self.memory.log(Cursor(last), usize::MAX)?;
        let mark = self.memory.end()?.filter(|place| place.at > last);
        let writing = self.disk.transaction(&[LOG, MARKS, TEXTS, PHOTOS], true)?;
        let log = writing.store(LOG)?;
        let beyond = log.get_all_keys_with_key_and_limit(&above(last)?.into(), 1).map_err(Fault::from)?;
        if list(&answer(&beyond).await?).length() > 0 {
            writing.abort();
            return Ok(None);
        }
        for Entry { at, revision } in &new {
            move_to(&log, *at, revision).await?;
        }
        if let Some(place) = mark {
            writing.store(MARKS)?.put_with_key(&place.mark.into(), &number(place.at)).map_err(Fault::from)?;
        }
        put_texts(&writing, texts)?;
        photos::put(&writing, photos, &self.memory)?;
        if appended.erased > 0 {
            photos::let_go(&writing, &self.memory).await?;
        }
        writing.complete().await?;
        Ok(Some(appended))
    }

    /// Makes revisions of drafts and takes them in, with the photos that they name: one action, all of it or nothing.
    pub(crate) async fn write(
        &mut self,
        what: &str,
        drafts: Vec<Draft>,
        photos: &[Bytes],
        author: &Author,
        reason: &str,
    ) -> Result<Option<ActionId>, KeepError> {
        let (time, milliseconds) = here::now();
        let mut hand = Hand {
            author: author.name.clone(),
            reason: reason.to_owned(),
            device: self.id,
            device_name: author.device.clone(),
            time,
            milliseconds,
            counter: self.memory.counter()?,
            random: &mut here::random,
        };
        let made = hand.write(what, drafts).map_err(|error| KeepError::System(error.code().to_owned()))?;
        self.append(&made, photos, &[]).await?;
        Ok(made.first().map(|one| one.head().action.id))
    }

    /// A text by its name.
    pub(crate) async fn text(&self, name: &str) -> Result<Option<String>, KeepError> {
        Ok(text(&self.disk, name).await?)
    }

    /// Keeps a text under its name; none takes it away.
    pub(crate) async fn keep_text(&self, name: &str, text: Option<&str>) -> Result<(), KeepError> {
        let writing = self.disk.transaction(&[TEXTS], true)?;
        let store = writing.store(TEXTS)?;
        match text {
            Some(text) => store.put_with_key(&text.into(), &name.into()),
            None => store.delete(&name.into()),
        }
        .map_err(Fault::from)?;
        Ok(writing.complete().await?)
    }

    fn end(&self) -> u64 {
        self.memory.end().ok().flatten().map_or(0, |place| place.at)
    }
}

/// The id of this copy of the notebook, made the first time.
async fn own_id(disk: &Disk) -> Result<DeviceId, Fault> {
    if let Some(id) = text(disk, DEVICE).await?.as_deref().and_then(DeviceId::read) {
        return Ok(id);
    }
    let mut drawn = [0; 10];
    here::random(&mut drawn);
    let id = DeviceId::made(here::now().1, drawn);
    let writing = disk.transaction(&[TEXTS], true)?;
    put_texts(&writing, &[(DEVICE, &id.to_string())])?;
    writing.complete().await?;
    Ok(id)
}

async fn text(disk: &Disk, name: &str) -> Result<Option<String>, Fault> {
    let reading = disk.transaction(&[TEXTS], false)?;
    Ok(answer(&reading.store(TEXTS)?.get(&name.into())?).await?.as_string())
}

fn put_texts(writing: &Transaction, texts: &[(&str, &str)]) -> Result<(), Fault> {
    let store = writing.store(TEXTS)?;
    for (name, text) in texts {
        store.put_with_key(&(*text).into(), &(*name).into())?;
    }
    Ok(())
}

/// Puts a revision at its place in the log; where it stood before, it stands no more.
async fn move_to(log: &IdbObjectStore, at: u64, revision: &Revision) -> Result<(), Fault> {
    let name = format!("{} {}", revision.id(), revision.sha256());
    if revision.is_erased() {
        let before = answer(&log.index(BY_NAME)?.get_key(&name.as_str().into())?).await?;
        if !before.is_undefined() {
            log.delete(&before)?;
        }
    }
    let value = js_sys::Object::new();
    for (field, text) in [
        ("name", Some(name.as_str())),
        ("head", Some(revision.head_text().as_str())),
        ("sha256", Some(revision.sha256())),
        ("content", revision.content_text()),
    ] {
        Reflect::set(&value, &field.into(), &text.map_or(JsValue::NULL, JsValue::from_str))?;
    }
    log.put_with_key(&value, &number(at))?;
    Ok(())
}

/// An entry of the log; what is no revision any more is passed over, and the mark of the log tells.
fn entry(at: &JsValue, value: &JsValue) -> Option<Entry> {
    let field = |name: &str| Reflect::get(value, &name.into()).ok().and_then(|field| field.as_string());
    let revision = Revision::kept(&field("head")?, field("sha256")?, field("content"))?;
    Some(Entry { at: whole(at)?, revision })
}

fn whole(at: &JsValue) -> Option<u64> {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "written by `number`")]
    at.as_f64().map(|at| at as u64)
}

fn list(value: &JsValue) -> Array {
    value.dyn_ref::<Array>().cloned().unwrap_or_default()
}
