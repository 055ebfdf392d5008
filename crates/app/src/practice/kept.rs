//! What practice keeps on this device: in a database of its own beside the notebook, so that no copy, export or exchange of the
//! notebook ever holds a learner.

use crate::device::disk::{Disk, Fault, TEXTS, answer};
use crate::session::Session;
use leptos::prelude::*;
use leptos::task::spawn_local;
use serde::Serialize;
use serde::de::DeserializeOwned;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use tautline_store::KeepError;

/// The name of the database.
const NAME: &str = "tautline-practice";

/// What is waiting to be written under a name.
#[derive(Default)]
struct Queue {
    /// The newest text; an empty one takes away what stands there.
    waiting: RefCell<Option<String>>,
    busy: Cell<bool>,
}

/// What is kept under one name: read when the screen opens, written at each change, taken away when it is empty again.
pub(super) struct Kept<T: Send + Sync + 'static> {
    /// What it is.
    pub(super) value: RwSignal<T>,
    is_read: RwSignal<bool>,
}

impl<T: Send + Sync + 'static> Clone for Kept<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for Kept<T> {}

impl<T: Clone + Default + PartialEq + Serialize + DeserializeOwned + Send + Sync + 'static> Kept<T> {
    /// What is kept under a name; the default until it is read.
    pub(super) fn of(session: Session, name: &'static str) -> Self {
        let kept = Self { value: RwSignal::new(T::default()), is_read: RwSignal::new(false) };
        spawn_local(async move {
            match read(name).await {
                Ok(text) => {
                    // what another version wrote and this one can't read is begun anew
                    let value = text.and_then(|text| serde_json::from_str::<T>(&text).ok());
                    kept.value.set(value.unwrap_or_default());
                }
                Err(fault) => session.tell_fault(&KeepError::from(fault)),
            }
            kept.is_read.set(true);
        });
        let queue = Rc::new(Queue::default());
        Effect::new(move |before: Option<Option<T>>| {
            let value = kept.value.get();
            if !kept.is_read.get() {
                return None;
            }
            if before.flatten().is_some_and(|before| before != value) {
                let is_empty = value == T::default();
                let text = if is_empty { None } else { serde_json::to_string(&value).ok() };
                write(session, name, text.unwrap_or_default(), &queue);
            }
            Some(value)
        });
        kept
    }

    /// Whether it was read; a screen that asks follows it.
    pub(super) fn is_read(self) -> bool {
        self.is_read.get()
    }
}

/// Brings the newest text to the disk, and again as long as it changes meanwhile.
fn write(session: Session, name: &'static str, text: String, queue: &Rc<Queue>) {
    queue.waiting.replace(Some(text));
    if queue.busy.replace(true) {
        return;
    }
    let queue = Rc::clone(queue);
    spawn_local(async move {
        while let Some(text) = queue.waiting.take() {
            if let Err(fault) = put(name, &text).await {
                session.tell_fault(&KeepError::from(fault));
                break;
            }
        }
        queue.busy.set(false);
    });
}

async fn read(name: &str) -> Result<Option<String>, Fault> {
    let disk = Disk::open(NAME).await?;
    let reading = disk.transaction(&[TEXTS], false)?;
    Ok(answer(&reading.store(TEXTS)?.get(&name.into())?).await?.as_string())
}

async fn put(name: &str, text: &str) -> Result<(), Fault> {
    let disk = Disk::open(NAME).await?;
    let writing = disk.transaction(&[TEXTS], true)?;
    let store = writing.store(TEXTS)?;
    if text.is_empty() {
        store.delete(&name.into())?;
    } else {
        store.put_with_key(&text.into(), &name.into())?;
    }
    writing.complete().await
}
