//! The browser's disk: IndexedDB as promises, and nothing of what is kept on it.
//!
//! Every transaction that writes is asked to be strict: it is complete when the system says that it is on the disk.

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    DomException, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbObjectStoreParameters, IdbOpenDbRequest,
    IdbRequest, IdbTransaction,
};

/// Revisions, each under its number in the log.
pub(crate) const LOG: &str = "log";
/// The mark of each batch, under the last number of the batch.
pub(crate) const MARKS: &str = "marks";
/// Everything else that is one text under one name: settings, drafts, where a shared notebook has been read to.
pub(crate) const TEXTS: &str = "texts";
/// The bytes of photos, each under its hash.
pub(crate) const PHOTOS: &str = "photos";
/// The index of the log by a revision's name.
pub(crate) const BY_NAME: &str = "name";

const VERSION: u32 = 2;

#[wasm_bindgen]
extern "C" {
    /// `IDBDatabase.transaction` with options, which the general bindings count as unstable.
    #[wasm_bindgen(extends = IdbDatabase)]
    #[derive(Clone)]
    type Database;
    #[wasm_bindgen(method, catch)]
    fn transaction(
        this: &Database,
        stores: &JsValue,
        mode: &str,
        options: &JsValue,
    ) -> Result<IdbTransaction, JsValue>;
}

/// Why the disk did not do what was asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Fault {
    /// There is no room left, or the browser gives none.
    Full,
    /// Something else, in the browser's words.
    Other(String),
}

impl From<JsValue> for Fault {
    fn from(error: JsValue) -> Self {
        match error.dyn_ref::<DomException>() {
            Some(error) if error.name() == "QuotaExceededError" => Self::Full,
            Some(error) => Self::Other(error.name() + ": " + &error.message()),
            None => Self::Other(format!("{error:?}")),
        }
    }
}

/// A database of this browser.
pub(crate) struct Disk {
    database: Database,
}

impl Disk {
    /// Opens a database by its name, or begins it.
    pub(crate) async fn open(name: &str) -> Result<Self, Fault> {
        let window = web_sys::window().ok_or_else(|| Fault::Other(String::new()))?;
        let factory = window.indexed_db()?.ok_or_else(|| Fault::Other(String::new()))?;
        let request = factory.open_with_u32(name, VERSION)?;
        let opened = request.clone();
        let begin = Closure::once_into_js(move || begin(&opened));
        request.set_onupgradeneeded(Some(begin.unchecked_ref()));
        let database: Database = answer(&request).await?.unchecked_into();
        // a newer version in another window waits until this one lets go
        let own: IdbDatabase = database.clone().unchecked_into();
        let let_go = Closure::once_into_js(move || own.close());
        database.set_onversionchange(Some(let_go.unchecked_ref()));
        Ok(Self { database })
    }

    /// Begins a transaction over some of the stores; strict where it writes.
    pub(crate) fn transaction(&self, stores: &[&str], writes: bool) -> Result<Transaction, Fault> {
        let names: js_sys::Array = stores.iter().map(|&name| JsValue::from_str(name)).collect();
        let options = js_sys::Object::new();
        if writes {
            Reflect::set(&options, &"durability".into(), &"strict".into())?;
        }
        let mode = if writes { "readwrite" } else { "readonly" };
        Ok(Transaction { own: self.database.transaction(&names, mode, &options)? })
    }
}

/// Makes the stores of a new database, and those that an older one lacks: one that is there refuses to be made again.
fn begin(request: &IdbOpenDbRequest) {
    let Some(database) = request.result().ok().and_then(|made| made.dyn_into::<IdbDatabase>().ok()) else {
        return;
    };
    // what can't be made here fails the opening, which says so
    if let Ok(log) = database.create_object_store(LOG) {
        let _ = log.create_index_with_str(BY_NAME, "name");
    }
    let _ = database.create_object_store_with_optional_parameters(MARKS, &IdbObjectStoreParameters::new());
    let _ = database.create_object_store_with_optional_parameters(TEXTS, &IdbObjectStoreParameters::new());
    let _ = database.create_object_store_with_optional_parameters(PHOTOS, &IdbObjectStoreParameters::new());
}

/// A transaction: all of it or nothing.
pub(crate) struct Transaction {
    own: IdbTransaction,
}

impl Transaction {
    /// One of its stores.
    pub(crate) fn store(&self, name: &str) -> Result<IdbObjectStore, Fault> {
        Ok(self.own.object_store(name)?)
    }

    /// Waits until everything that was asked of it is on the disk.
    pub(crate) async fn complete(self) -> Result<(), Fault> {
        let own = self.own.clone();
        let promise = Promise::new(&mut |done: Function, failed: Function| {
            own.set_oncomplete(Some(&done));
            own.set_onabort(Some(&failed));
        });
        match JsFuture::from(promise).await {
            Ok(_) => Ok(()),
            Err(event) => Err(self.own.error().map_or(event, JsValue::from).into()),
        }
    }

    /// Gives up: nothing of it is kept.
    pub(crate) fn abort(self) {
        // an error says that it has ended already
        let _ = self.own.abort();
    }
}

/// Waits for what a request gives.
pub(crate) async fn answer(request: &IdbRequest) -> Result<JsValue, Fault> {
    let promise = Promise::new(&mut |done: Function, failed: Function| {
        request.set_onsuccess(Some(&done));
        request.set_onerror(Some(&failed));
    });
    match JsFuture::from(promise).await {
        Ok(_) => Ok(request.result()?),
        Err(event) => Err(request.error().ok().flatten().map_or(event, JsValue::from).into()),
    }
}

/// All keys above a number.
pub(crate) fn above(at: u64) -> Result<IdbKeyRange, Fault> {
    Ok(IdbKeyRange::lower_bound_with_open(&number(at), true)?)
}

/// A number of the log as a key: it stays far below 2^53.
pub(crate) fn number(at: u64) -> JsValue {
    #[expect(clippy::cast_precision_loss, reason = "a log of 2^53 revisions fits no disk")]
    JsValue::from_f64(at as f64)
}
