//! The suite that every implementer of [`Keep`] passes: call [`conformance`] in a test of it, or [`conformance_later`] where
//! its answers have to be waited for.
//!
//! The revisions in it are invented.

use crate::keep::{Cursor, Keep, KeepError, Named};
use crate::later::{Later, at_once};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use tautline_survey::canonical::sha256_hex;
use tautline_survey::notebook::hand::{Draft, Hand};
use tautline_survey::photo;
use tautline_survey::record::{heads, history};
use tautline_survey::revision::{DeviceId, Kind, RecordId, Revision, RevisionId, Stamp};

/// Makes invented revisions, the same ones each time.
#[derive(Clone, Debug)]
pub struct Invented {
    drawn: u64,
    /// The time that the next revision's device believes in, in seconds of the day.
    pub second: u32,
    /// The greatest counter that the device has seen.
    pub counter: u64,
}

impl Invented {
    /// Revisions of a device; another number, another device.
    pub const fn device(number: u64) -> Self {
        Self { drawn: number << 32, second: 0, counter: 0 }
    }

    /// A revision of a kind with a text for its record.
    ///
    /// # Panics
    /// never: a text has canonical bytes
    pub fn revision(&mut self, record: Option<RecordId>, parents: &[RevisionId], text: &str) -> Revision {
        self.of_kind("invented", record, parents, text)
    }

    /// The same, of a given kind.
    ///
    /// # Panics
    /// never: a text has canonical bytes
    pub fn of_kind(
        &mut self,
        kind: &str,
        record: Option<RecordId>,
        parents: &[RevisionId],
        text: &str,
    ) -> Revision {
        self.holding(kind, record, parents, text.into())
    }

    /// A revision of a photo of these bytes; it says nothing else.
    ///
    /// # Panics
    /// never: a hash has canonical bytes
    pub fn photo(&mut self, record: Option<RecordId>, parents: &[RevisionId], bytes: &[u8]) -> Revision {
        self.holding(photo::KIND, record, parents, json!({ "sha256": sha256_hex(bytes) }))
    }

    fn holding(
        &mut self,
        kind: &str,
        record: Option<RecordId>,
        parents: &[RevisionId],
        payload: Value,
    ) -> Revision {
        let (minutes, seconds) = (self.second / 60 % 60, self.second % 60);
        let utc = format!("2026-06-09T{:02}:{minutes:02}:{seconds:02}Z", self.second / 3600 % 24);
        let device = DeviceId::made(0, ten(self.drawn >> 32));
        let drawn = &mut self.drawn;
        let mut random = |bytes: &mut [u8]| {
            *drawn += 1;
            // scattered, so that ids don't happen to stand in the order in which they were made
            let own = drawn.wrapping_mul(0x9E37_79B9_7F4A_7C15).to_be_bytes();
            bytes.iter_mut().zip(own.iter().cycle()).for_each(|(byte, own)| *byte = *own);
        };
        let mut hand = Hand {
            author: "invented".to_owned(),
            reason: String::new(),
            device,
            device_name: "invented".to_owned(),
            time: Stamp::new(&utc, 0).expect("seconds of a day make a time"),
            milliseconds: u64::from(self.second) * 1000,
            counter: self.counter,
            random: &mut random,
        };
        let draft = Draft {
            record,
            parents: parents.iter().copied().collect(),
            kind: Kind(kind.to_owned()),
            version: 1,
            payload: Some(payload),
        };
        let made = hand.write("invent", vec![draft]).expect("a text has canonical bytes");
        self.counter = hand.counter;
        made.into_iter().next().expect("one draft makes one revision")
    }
}

fn ten(number: u64) -> [u8; 10] {
    let mut bytes = [0; 10];
    bytes[2..].copy_from_slice(&number.to_be_bytes());
    bytes
}

/// Holds an implementer to everything that [`Keep`] promises. `make` begins an empty one.
///
/// # Panics
/// where it does something else
pub fn conformance(mut make: impl FnMut() -> Box<dyn Keep>) {
    at_once(conformance_later(async || make()));
}

/// The same suite for an implementer that has to be waited for.
///
/// # Panics
/// where it does something else
pub async fn conformance_later<K: Later>(mut make: impl AsyncFnMut() -> K) {
    nothing_at_first(&make().await).await;
    a_batch_goes_in_once(&mut make().await).await;
    order_of_arrival_changes_nothing(&mut make).await;
    two_corrections_of_one_parent_both_stay(&mut make().await).await;
    one_reads_on_from_a_cursor(&mut make().await).await;
    a_place_says_what_is_before_it(&mut make).await;
    what_is_blanked_stays_blank(&mut make().await).await;
    what_nobody_knows_is_kept(&mut make().await).await;
    a_broken_batch_is_refused_whole(&mut make().await).await;
    damage_is_shown(&mut make().await).await;
    a_wrong_clock_changes_nothing(&mut make().await).await;
    an_action_is_found_again(&mut make().await).await;
    photos_are_kept_by_their_hash(&mut make().await).await;
    an_erased_photo_is_gone(&mut make().await).await;
}

const HELD: &str = "keeps its promise";

async fn nothing_at_first(keep: &impl Later) {
    assert_eq!(keep.heads().await.expect(HELD), []);
    assert_eq!(keep.since(Cursor::START, 10).await.expect(HELD), (vec![], Cursor::START));
    assert_eq!(keep.counter().await.expect(HELD), 0);
}

async fn a_batch_goes_in_once(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let batch = [device.revision(None, &[], "a"), device.revision(None, &[], "b")];
    let first = keep.append(&batch).await.expect(HELD);
    assert_eq!((first.new, first.known), (2, 0));
    let again = keep.append(&[&batch[..], &batch[..1]].concat()).await.expect(HELD);
    assert_eq!((again.new, again.known), (0, 3));
    assert_eq!(same(&keep.heads().await.expect(HELD)), same(&batch));
    assert_eq!(keep.counter().await.expect(HELD), 2);
}

async fn order_of_arrival_changes_nothing<K: Later>(make: &mut impl AsyncFnMut() -> K) {
    let mut device = Invented::device(1);
    let first = device.revision(None, &[], "first");
    let record = Some(first.record());
    let second = device.revision(record, &[first.id()], "second");
    let third = device.revision(record, &[second.id()], "third");
    for order in [[&first, &second, &third], [&third, &second, &first], [&second, &third, &first]] {
        let mut keep = make().await;
        for revision in order {
            keep.append(std::slice::from_ref(revision)).await.expect(HELD);
        }
        assert_eq!(keep.heads().await.expect(HELD), std::slice::from_ref(&third));
        let own = keep.of_record(first.record()).await.expect(HELD);
        let own: Vec<&Revision> = own.iter().collect();
        assert_eq!(history(&own), [&first, &second, &third]);
    }
    // a child that comes alone is a head, and its parents are known to be missing
    let mut keep = make().await;
    keep.append(std::slice::from_ref(&third)).await.expect(HELD);
    assert_eq!(keep.heads().await.expect(HELD), [third]);
}

async fn two_corrections_of_one_parent_both_stay(keep: &mut impl Later) {
    let (mut here, mut there) = (Invented::device(1), Invented::device(2));
    let first = here.revision(None, &[], "first");
    let record = Some(first.record());
    let one = here.revision(record, &[first.id()], "one");
    let other = there.revision(record, &[first.id()], "other");
    keep.append(&[first.clone(), one.clone(), other.clone()]).await.expect(HELD);
    assert_eq!(same(&keep.heads().await.expect(HELD)), same(&[one.clone(), other.clone()]));
    let settled = here.revision(record, &[one.id(), other.id()], "one");
    keep.append(std::slice::from_ref(&settled)).await.expect(HELD);
    assert_eq!(keep.heads().await.expect(HELD), [settled]);
    assert_eq!(keep.of_record(first.record()).await.expect(HELD).len(), 4);
}

async fn one_reads_on_from_a_cursor(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let all: Vec<Revision> = (0..5).map(|number| device.revision(None, &[], &number.to_string())).collect();
    keep.append(&all[..4]).await.expect(HELD);
    let (mut seen, mut cursor) = (Vec::new(), Cursor::START);
    loop {
        let (some, upto) = keep.since(cursor, 3).await.expect(HELD);
        assert!(some.len() <= 3);
        if some.is_empty() {
            assert_eq!(upto, cursor);
            break;
        }
        assert!(upto > cursor);
        seen.extend(some);
        cursor = upto;
    }
    assert_eq!(same(&seen), same(&all[..4]));
    keep.append(&all).await.expect(HELD);
    assert_eq!(keep.since(cursor, 3).await.expect(HELD).0, all[4..]);
}

async fn a_place_says_what_is_before_it<K: Later>(make: &mut impl AsyncFnMut() -> K) {
    let mut device = Invented::device(1);
    let all: Vec<Revision> = (0..4).map(|number| device.revision(None, &[], &number.to_string())).collect();
    let (mut keep, mut same, mut other) = (make().await, make().await, make().await);
    assert_eq!((keep.end().await.expect(HELD), keep.place(Cursor(1)).await.expect(HELD)), (None, None));
    for one in [&mut keep, &mut same] {
        one.append(&all[..2]).await.expect(HELD);
        one.append(&all[2..3]).await.expect(HELD);
    }
    other.append(&[all[0].clone(), all[3].clone()]).await.expect(HELD);
    other.append(&all[2..3]).await.expect(HELD);
    let log = keep.log(Cursor::START, 10).await.expect(HELD);
    assert_eq!(log.len(), 3);
    let end = keep.end().await.expect(HELD).expect(HELD);
    assert_eq!(end.at, log[2].at);
    assert_eq!(same.end().await.expect(HELD), Some(end.clone()));
    // the last entries are the same and the end is not, since what is before differs
    assert_eq!(other.end().await.expect(HELD).map(|place| place.at), Some(end.at));
    assert_ne!(other.end().await.expect(HELD), Some(end.clone()));
    // a place in mid-batch is marked by its batch; none lies beyond the end
    assert_eq!(mark(&keep, log[0].at).await, mark(&keep, log[1].at).await);
    assert_ne!(mark(&keep, log[1].at).await, Some(end.mark.clone()));
    assert_eq!(mark(&keep, end.at).await, Some(end.mark.clone()));
    assert_eq!(mark(&keep, end.at + 1).await, None);
    assert_eq!(mark(&keep, 0).await, None);
    // what brings nothing moves nothing; what is blanked does, and leaves the places before it as they are
    keep.append(&all[..1]).await.expect(HELD);
    assert_eq!(keep.end().await.expect(HELD), Some(end.clone()));
    let before = mark(&keep, log[0].at).await;
    keep.append(&[all[0].erased()]).await.expect(HELD);
    assert_ne!(keep.end().await.expect(HELD), Some(end.clone()));
    assert_eq!((mark(&keep, log[0].at).await, mark(&keep, end.at).await), (before, Some(end.mark)));
}

async fn mark(keep: &impl Later, at: u64) -> Option<String> {
    keep.place(Cursor(at)).await.expect(HELD).map(|place| place.mark)
}

async fn what_is_blanked_stays_blank(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let first = device.revision(None, &[], "a name");
    keep.append(std::slice::from_ref(&first)).await.expect(HELD);
    let after = device.revision(Some(first.record()), &[first.id()], "no name");
    let (_, cursor) = keep.since(Cursor::START, 10).await.expect(HELD);
    let done = keep.append(&[first.erased(), after.clone()]).await.expect(HELD);
    assert_eq!((done.new, done.erased), (1, 1));
    // whoever reads on hears of both; an old copy that turns up again brings nothing back
    assert_eq!(same(&keep.since(cursor, 10).await.expect(HELD).0), same(&[first.erased(), after.clone()]));
    let again = keep.append(&[first.clone(), first.erased()]).await.expect(HELD);
    assert_eq!((again.new, again.known, again.erased), (0, 2, 0));
    let own = keep.of_record(first.record()).await.expect(HELD);
    assert_eq!(same(&own), same(&[first.erased(), after]));
    assert_eq!(own.iter().find(|one| one.id() == first.id()).map(Revision::sha256), Some(first.sha256()));
}

async fn what_nobody_knows_is_kept(keep: &mut impl Later) {
    let unknown = Invented::device(1).of_kind("of-a-newer-version", None, &[], "unread");
    keep.append(std::slice::from_ref(&unknown)).await.expect(HELD);
    assert_eq!(keep.since(Cursor::START, 10).await.expect(HELD).0, [unknown]);
}

async fn a_broken_batch_is_refused_whole(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let (good, other) = (device.revision(None, &[], "good"), device.revision(None, &[], "other"));
    let content = other.content_text().map(str::to_owned);
    let broken =
        Revision::kept(&good.head_text(), good.sha256().to_owned(), content).expect("its head is whole");
    let refused = keep.append(&[other, broken.clone()]).await;
    assert_eq!(refused, Err(KeepError::NotWhole(Box::new(broken))));
    assert_eq!(keep.heads().await.expect(HELD), []);
}

/// Revisions in a circle can't be made honestly; a person still gets to see them.
async fn damage_is_shown(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let mut dry = device.clone();
    let first = dry.revision(None, &[], "first");
    let second = dry.revision(Some(first.record()), &[first.id()], "second");
    let circle = device.revision(Some(first.record()), &[second.id()], "first");
    let named = Invented::device(7).revision(Some(first.record()), &[circle.id()], "second");
    let back = Invented::device(7).revision(Some(first.record()), &[circle.id(), named.id()], "second");
    assert_eq!(named.id(), back.id(), "one id, two revisions");
    let all = [circle, named, back];
    keep.append(&all).await.expect(HELD);
    let found = keep.heads().await.expect(HELD);
    assert_eq!(
        same(&found),
        same(&heads(&all.iter().collect::<Vec<_>>()).into_iter().cloned().collect::<Vec<_>>())
    );
    assert!(!found.is_empty());
}

async fn a_wrong_clock_changes_nothing(keep: &mut impl Later) {
    let mut device = Invented { second: 80_000, ..Invented::device(1) };
    let first = device.revision(None, &[], "first");
    device.second = 10;
    let second = device.revision(Some(first.record()), &[first.id()], "second");
    keep.append(&[second.clone(), first.clone()]).await.expect(HELD);
    assert_eq!(keep.heads().await.expect(HELD), std::slice::from_ref(&second));
    let own = keep.of_record(first.record()).await.expect(HELD);
    assert_eq!(history(&own.iter().collect::<Vec<_>>()), [&first, &second]);
}

async fn an_action_is_found_again(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let batch = [device.revision(None, &[], "a"), device.revision(None, &[], "b")];
    keep.append(&batch).await.expect(HELD);
    assert_eq!(keep.of_action(batch[1].head().action.id).await.expect(HELD), batch[1..]);
}

async fn photos_are_kept_by_their_hash(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let (one, other) = (b"one photo".as_slice(), b"another".as_slice());
    let (own, others) = (sha256_hex(one), sha256_hex(other));
    assert_eq!(keep.put_photo(&own, one).await, Err(KeepError::NotNamed), "before a revision names it");
    let batch = [device.photo(None, &[], one), device.photo(None, &[], other)];
    keep.append(&batch).await.expect(HELD);
    let named = |sha256: &String, is_here| Named { sha256: sha256.clone(), is_here };
    let sorted = |mut all: Vec<Named>| {
        all.sort();
        all
    };
    assert_eq!(keep.photos().await.expect(HELD), sorted(vec![named(&own, false), named(&others, false)]));
    assert_eq!(keep.photo(&own).await.expect(HELD), None);
    assert_eq!(keep.put_photo(&own, other).await, Err(KeepError::OtherBytes));
    let long = vec![0; photo::LONGEST + 1];
    assert_eq!(keep.put_photo(&own, &long).await, Err(KeepError::TooLong));
    for _ in 0..2 {
        keep.put_photo(&own, one).await.expect(HELD);
        assert_eq!(keep.photo(&own).await.expect(HELD).as_deref(), Some(one));
    }
    assert_eq!(keep.photos().await.expect(HELD), sorted(vec![named(&own, true), named(&others, false)]));
    // a correction of what is said of it leaves the bytes, and so does taking it back: the history has it
    let after = device.photo(Some(batch[0].record()), &[batch[0].id()], one);
    keep.append(&[after]).await.expect(HELD);
    assert_eq!(keep.photo(&own).await.expect(HELD).as_deref(), Some(one));
}

async fn an_erased_photo_is_gone(keep: &mut impl Later) {
    let mut device = Invented::device(1);
    let (bytes, kept) = (b"a person on it".as_slice(), b"nobody on it".as_slice());
    let (own, others) = (sha256_hex(bytes), sha256_hex(kept));
    let (first, twice) = (device.photo(None, &[], bytes), device.photo(None, &[], bytes));
    let other = device.photo(None, &[], kept);
    keep.append(&[first.clone(), twice.clone(), other]).await.expect(HELD);
    keep.put_photo(&own, bytes).await.expect(HELD);
    keep.put_photo(&others, kept).await.expect(HELD);
    keep.append(&[first.erased()]).await.expect(HELD);
    // another revision names it still
    assert_eq!(keep.photo(&own).await.expect(HELD).as_deref(), Some(bytes));
    keep.append(&[twice.erased()]).await.expect(HELD);
    assert_eq!(keep.photo(&own).await.expect(HELD), None);
    assert_eq!(keep.put_photo(&own, bytes).await, Err(KeepError::NotNamed), "it doesn't come back");
    // an old copy of the revision brings nothing back either
    keep.append(&[first, twice]).await.expect(HELD);
    assert_eq!(keep.put_photo(&own, bytes).await, Err(KeepError::NotNamed));
    assert_eq!(keep.photos().await.expect(HELD), [Named { sha256: others, is_here: true }]);
}

/// Revisions as a set, for comparing.
fn same(revisions: &[Revision]) -> BTreeSet<(RevisionId, String, bool)> {
    revisions.iter().map(|one| (one.id(), one.sha256().to_owned(), one.is_erased())).collect()
}
