//! The bytes of photos, one by one, once both hold the same revisions. What breaks off goes on at the next photo.

use super::{NotShared, ask, nobody, read};
use crate::device::Device;
use js_sys::Uint8Array;
use serde::Deserialize;
use std::collections::BTreeSet;
use tautline_store::KeepError;
use wasm_bindgen_futures::JsFuture;

/// What the notebook at an address has no bytes of.
#[derive(Deserialize)]
struct Lacking {
    sha256: BTreeSet<String>,
}

/// What is left to do of one round: the hashes to send and to bring.
#[derive(Debug, Default)]
pub(crate) struct Round {
    send: Vec<String>,
    bring: Vec<String>,
}

/// The name under which the photos are kept that the notebook at an address has.
fn name(origin: &str) -> String {
    format!("photos at {origin}")
}

/// The photos that the notebook at an address is known to have.
async fn there(device: &Device, origin: &str) -> Result<BTreeSet<String>, KeepError> {
    let kept = device.text(&name(origin)).await?;
    Ok(kept.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default())
}

async fn keep_there(device: &mut Device, origin: &str, there: &BTreeSet<String>) -> Result<(), NotShared> {
    let text = serde_json::to_string(there).map_err(|_| NotShared::NotUnderstood)?;
    Ok(device.keep_text(&name(origin), Some(&text)).await?)
}

/// How many photos have their bytes on this device alone, as far as is known.
pub(crate) async fn waiting(device: &Device, origin: &str) -> Result<usize, KeepError> {
    let there = there(device, origin).await?;
    let photos = device.photos().await?;
    Ok(photos.iter().filter(|photo| photo.is_here && !there.contains(&photo.sha256)).count())
}

/// Begins a round: asks what the notebook lacks, and looks what this device lacks.
pub(crate) async fn begin(device: &mut Device, origin: &str) -> Result<Round, NotShared> {
    let photos = device.photos().await?;
    if photos.is_empty() {
        return Ok(Round::default());
    }
    let response = ask("GET", &format!("{origin}/api/photos"), None).await?;
    if !response.ok() {
        return Err(NotShared::Nobody);
    }
    let lacking: Lacking = read(&response).await?;
    let (here, bring): (Vec<_>, Vec<_>) = photos.into_iter().partition(|photo| photo.is_here);
    let (send, there): (Vec<String>, Vec<String>) =
        here.into_iter().map(|photo| photo.sha256).partition(|sha256| lacking.sha256.contains(sha256));
    keep_there(device, origin, &there.into_iter().collect()).await?;
    // what the notebook lacks itself can't be brought from it
    let bring = bring.into_iter().map(|photo| photo.sha256).filter(|one| !lacking.sha256.contains(one));
    Ok(Round { send, bring: bring.collect() })
}

/// Sends or brings one photo; false where the round is at its end.
pub(crate) async fn one(device: &mut Device, origin: &str, round: &mut Round) -> Result<bool, NotShared> {
    if let Some(sha256) = round.send.pop() {
        let address = format!("{origin}/api/photos/{sha256}");
        if let Some(bytes) = device.photo(&sha256).await? {
            let body = Uint8Array::from(bytes.as_slice());
            let response = ask("PUT", &address, Some(("application/octet-stream", body.into()))).await?;
            // what was erased there meanwhile is no longer wanted: the next exchange brings that
            match response.status() {
                204 | 404 => {}
                _ => return Err(NotShared::Nobody),
            }
            let mut there = there(device, origin).await?;
            there.insert(sha256);
            keep_there(device, origin, &there).await?;
        }
        return Ok(true);
    }
    let Some(sha256) = round.bring.pop() else { return Ok(false) };
    let response = ask("GET", &format!("{origin}/api/photos/{sha256}"), None).await?;
    if response.ok() {
        let buffer = JsFuture::from(response.array_buffer().map_err(nobody)?).await.map_err(nobody)?;
        match device.put_photo(&sha256, &Uint8Array::new(&buffer).to_vec()).await {
            // bytes that were changed under way are asked for again next time
            Ok(()) | Err(KeepError::OtherBytes | KeepError::NotNamed) => {}
            Err(error) => return Err(error.into()),
        }
        let mut there = there(device, origin).await?;
        there.insert(sha256);
        keep_there(device, origin, &there).await?;
    }
    Ok(true)
}
