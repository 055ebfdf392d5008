//! A notebook that devices share in: what it answers to what they ask.

use crate::keep::{Cursor, Keep, KeepError};
use tautline_survey::sync::{Answer, Ask, Place, Sent};

/// Takes in what an ask brings and answers it, with at most so many revisions.
///
/// # Errors
/// [`KeepError`]; nothing of the ask was acknowledged then
pub fn exchange(keep: &mut dyn Keep, ask: &Ask, most: usize) -> Result<Answer, KeepError> {
    let sent = ask.sent();
    keep.append(&sent.revisions)?;
    answer(keep, ask, sent, most)
}

/// Answers an ask whose revisions are kept already, with at most so many revisions.
///
/// # Errors
/// [`KeepError`]
pub fn answer(keep: &dyn Keep, ask: &Ask, sent: Sent, most: usize) -> Result<Answer, KeepError> {
    let known = has(keep, ask.read.as_ref())? && has(keep, ask.held.as_ref())?;
    // the end first: what comes in while the log is read belongs to the next answer
    let end = keep.end()?;
    let read = ask.read.as_ref().filter(|_| known);
    let log = if known {
        let from = read.map_or(Cursor::START, |place| Cursor(place.at));
        Some(keep.log(from, most)?)
    } else {
        None
    };
    Answer::new(sent, log.as_deref(), read, end, |at| keep.place(Cursor(at)))
}

/// Whether the log has a place that a device remembers.
fn has(keep: &dyn Keep, place: Option<&Place>) -> Result<bool, KeepError> {
    match place {
        Some(place) => Ok(keep.place(Cursor(place.at))?.as_ref() == Some(place)),
        None => Ok(true),
    }
}
