//! The bytes of photos on this device: on the disk alone, never all of them in memory.

use super::disk::{Fault, PHOTOS, Transaction, answer};
use super::{Device, list};
use js_sys::Uint8Array;
use std::collections::BTreeSet;
use tautline_store::{KeepError, Memory, Named, may_be_photo};
use tautline_survey::canonical::sha256_hex;
use wasm_bindgen::JsCast as _;

/// The bytes of a photo under their hash.
#[derive(Clone, Debug)]
pub(crate) struct Bytes {
    pub(crate) sha256: String,
    pub(crate) bytes: Vec<u8>,
}

impl Device {
    /// The bytes of a photo; none where they aren't here.
    pub(crate) async fn photo(&self, sha256: &str) -> Result<Option<Vec<u8>>, KeepError> {
        let reading = self.disk.transaction(&[PHOTOS], false)?;
        let request = reading.store(PHOTOS)?.get(&sha256.into()).map_err(Fault::from)?;
        let Some(bytes) = answer(&request).await?.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec) else {
            return Ok(None);
        };
        let whole = sha256_hex(&bytes) == sha256;
        if whole { Ok(Some(bytes)) } else { Err(KeepError::Damaged(sha256.to_owned())) }
    }

    /// Every photo that a revision names, and whether its bytes are here.
    pub(crate) async fn photos(&self) -> Result<Vec<Named>, KeepError> {
        let here = here(&self.disk.transaction(&[PHOTOS], false)?).await?;
        let named = self.memory.named().into_iter();
        Ok(named.map(|sha256| Named { is_here: here.contains(&sha256), sha256 }).collect())
    }

    /// Keeps the bytes of a photo that a revision names; they are on the disk when this returns.
    pub(crate) async fn put_photo(&mut self, sha256: &str, bytes: &[u8]) -> Result<(), KeepError> {
        may_be_photo(sha256, bytes)?;
        if !self.memory.named().contains(sha256) {
            return Err(KeepError::NotNamed);
        }
        let writing = self.disk.transaction(&[PHOTOS], true)?;
        put_one(&writing, sha256, bytes)?;
        Ok(writing.complete().await?)
    }
}

/// Puts photos that come with the revisions that name them; such as nothing names stay out.
pub(super) fn put(writing: &Transaction, photos: &[Bytes], memory: &Memory) -> Result<(), KeepError> {
    if photos.is_empty() {
        return Ok(());
    }
    let named = memory.named();
    for photo in photos.iter().filter(|photo| named.contains(&photo.sha256)) {
        may_be_photo(&photo.sha256, &photo.bytes)?;
        put_one(writing, &photo.sha256, &photo.bytes)?;
    }
    Ok(())
}

fn put_one(writing: &Transaction, sha256: &str, bytes: &[u8]) -> Result<(), Fault> {
    writing.store(PHOTOS)?.put_with_key(&Uint8Array::from(bytes), &sha256.into())?;
    Ok(())
}

/// Lets go of the bytes that no revision names any more.
pub(super) async fn let_go(writing: &Transaction, memory: &Memory) -> Result<(), Fault> {
    let named = memory.named();
    for sha256 in here(writing).await?.difference(&named) {
        writing.store(PHOTOS)?.delete(&sha256.as_str().into())?;
    }
    Ok(())
}

/// The hashes of all that is on the disk.
async fn here(transaction: &Transaction) -> Result<BTreeSet<String>, Fault> {
    let keys = transaction.store(PHOTOS)?.get_all_keys()?;
    Ok(list(&answer(&keys).await?).iter().filter_map(|key| key.as_string()).collect())
}
