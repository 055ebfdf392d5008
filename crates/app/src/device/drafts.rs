//! Drafts on the device's disk, beside the notebook: each key is on the disk before the screen says so.
//!
//! They have a way to the disk of their own, so that a slow exchange with a shared notebook never keeps one waiting.

use super::disk::{Disk, Fault, TEXTS, answer};
use super::{NAME, list};
use tautline_store::KeepError;
use tautline_survey::draft::LineDraft;
use web_sys::IdbKeyRange;

/// How the names of drafts begin; what comes right behind their last one.
const FIRST: &str = "draft/";
const BEHIND: &str = "draft0";

/// Where drafts are kept.
pub(crate) struct Drafts {
    disk: Disk,
}

impl Drafts {
    /// Opens the way to the disk.
    pub(crate) async fn open() -> Result<Self, Fault> {
        Ok(Self { disk: Disk::open(NAME).await? })
    }

    /// The name of a new draft.
    pub(crate) fn name(milliseconds: u64) -> String {
        format!("{FIRST}{milliseconds}")
    }

    /// Keeps a draft's text under its name; it is on the disk when this returns. None takes the draft away.
    pub(crate) async fn keep(&self, name: &str, text: Option<&str>) -> Result<(), Fault> {
        let writing = self.disk.transaction(&[TEXTS], true)?;
        let store = writing.store(TEXTS)?;
        match text {
            Some(text) => store.put_with_key(&text.into(), &name.into())?,
            None => store.delete(&name.into())?,
        };
        writing.complete().await
    }

    /// The draft of a name.
    pub(crate) async fn draft(&self, name: &str) -> Option<LineDraft> {
        let reading = self.disk.transaction(&[TEXTS], false).ok()?;
        let request = reading.store(TEXTS).ok()?.get(&name.into()).ok()?;
        LineDraft::from_text(&answer(&request).await.ok()?.as_string()?).ok()
    }

    /// Every draft with its name, the oldest first; what a newer version wrote is kept and passed over.
    pub(crate) async fn all(&self) -> Result<Vec<(String, LineDraft)>, Fault> {
        let read = |(name, text): (String, String)| Some((name, LineDraft::from_text(&text).ok()?));
        Ok(self.kept().await?.into_iter().filter_map(read).collect())
    }

    /// Every draft's name and text, as they are kept.
    async fn kept(&self) -> Result<Vec<(String, String)>, Fault> {
        let reading = self.disk.transaction(&[TEXTS], false)?;
        let store = reading.store(TEXTS)?;
        let range = IdbKeyRange::bound(&FIRST.into(), &BEHIND.into())?;
        let names = store.get_all_keys_with_key(&range)?;
        let texts = store.get_all_with_key(&range)?;
        let (names, texts) = (list(&answer(&names).await?), list(&answer(&texts).await?));
        let pairs = names.iter().zip(texts.iter());
        Ok(pairs.filter_map(|(name, text)| Some((name.as_string()?, text.as_string()?))).collect())
    }
}

/// Every draft on this device as a line of a copy.
pub(crate) async fn unfinished() -> Result<Vec<String>, KeepError> {
    let drafts = Drafts::open().await?.all().await?;
    Ok(drafts.iter().map(|(name, draft)| draft.copy_line(name)).collect())
}

/// The texts of all drafts on this device.
pub(crate) async fn texts() -> Result<Vec<String>, KeepError> {
    Ok(Drafts::open().await?.kept().await?.into_iter().map(|(_, text)| text).collect())
}

/// Takes drafts of a copy in. One of a name that is here stays as it is here.
pub(crate) async fn take_in(copied: &[(String, LineDraft)]) -> Result<(), KeepError> {
    let drafts = Drafts::open().await?;
    for (name, draft) in copied.iter().filter(|(name, _)| name.starts_with(FIRST)) {
        if drafts.draft(name).await.is_none() {
            drafts.keep(name, Some(&draft.to_text())).await?;
        }
    }
    Ok(())
}
