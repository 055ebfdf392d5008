//! Photos go after the revisions that name them, one by one, and nothing else comes in with them.
//!
//! The bytes are invented.

use crate::common::{Served, code, json};
use tautline_server::trial::Device;
use tautline_store::{Keep as _, Sqlite};
use tautline_survey::canonical::sha256_hex;
use tautline_survey::photo::LONGEST;

#[test]
fn photos_come_to_every_device_one_by_one_though_it_breaks_off() {
    let served = Served::new(None);
    let (mut one, mut other) = (Device::new(1), Device::new(2));
    let own: Vec<String> = (0..3_u8).map(|at| one.take_photo(&[at; 5_000]).unwrap()).collect();
    one.sync(served.address).unwrap();
    other.sync(served.address).unwrap();
    // the revisions are everywhere before any bytes are
    assert_eq!(other.keep.photos().unwrap().iter().filter(|named| named.is_here).count(), 0);
    assert_eq!(json(&served.get("/api/photos"))["sha256"].as_array().unwrap().len(), 3);
    assert_eq!(other.exchange_photos(served.address, 9).unwrap(), 0, "nobody has sent any yet");
    assert_eq!(one.exchange_photos(served.address, 1).unwrap(), 1, "broken off after the first");
    assert_eq!(other.exchange_photos(served.address, 9).unwrap(), 1);
    assert_eq!(one.exchange_photos(served.address, 9).unwrap(), 2, "goes on where it was");
    assert_eq!(one.exchange_photos(served.address, 9).unwrap(), 0, "nothing goes twice");
    assert_eq!(other.exchange_photos(served.address, 9).unwrap(), 2);
    for (at, sha256) in (0..3_u8).zip(&own) {
        assert_eq!(other.keep.photo(sha256).unwrap(), Some(vec![at; 5_000]));
    }
    let desk = Sqlite::open(&served.folder.join("desk.tautline")).unwrap();
    assert!(desk.photos().unwrap().iter().all(|named| named.is_here));
    // a photo sent again changes nothing
    let again = served.call(&format!("PUT /api/photos/{}", own[0]), &[], &[0; 5_000]);
    assert_eq!(again.status, 204);
}

#[test]
fn what_is_no_photo_of_this_notebook_is_refused() {
    let served = Served::new(None);
    let mut device = Device::new(1);
    let own = device.take_photo(b"invented").unwrap();
    device.sync(served.address).unwrap();
    let put = |sha256: &str, body: &[u8]| served.call(&format!("PUT /api/photos/{sha256}"), &[], body);
    let refused = |answered: tautline_server::trial::Answered| (answered.status, code(&answered));
    let said = |status, code: &str| (status, code.to_owned());
    assert_eq!(refused(put(&own, b"other bytes")), said(422, "photo-other-bytes"));
    assert_eq!(refused(put(&own, &vec![0; LONGEST + 1])), said(413, "photo-too-long"));
    let longest = vec![7; LONGEST];
    assert_eq!(refused(put(&sha256_hex(&longest), &longest)), said(404, "photo-not-named"));
    assert_eq!(refused(put("ABC", b"")), said(400, "photo-not-a-hash"));
    assert_eq!(refused(served.get(&format!("/api/photos/{own}"))), said(404, "photo-not-here"));
    assert_eq!(refused(served.get("/api/photos/..%2Fdesk")), said(400, "photo-not-a-hash"));
    assert_eq!(put(&own, b"invented").status, 204);
    let given = served.get(&format!("/api/photos/{own}"));
    assert_eq!((given.status, given.body.as_slice()), (200, b"invented".as_slice()));
    // whatever the bytes are, no browser makes a page of them
    assert!(given.headers.contains("content-type: application/octet-stream"), "{}", given.headers);
    assert!(given.headers.contains("x-content-type-options: nosniff"), "{}", given.headers);
    // another page can't send any
    let elsewhere = served.call(
        &format!("PUT /api/photos/{own}"),
        &["Origin: http://elsewhere.example", "Sec-Fetch-Site: cross-site"],
        b"invented",
    );
    assert_eq!(elsewhere.status, 403);
}

/// Erased on one device, a photo's bytes are gone from the desk and don't come back from a device that has them still.
#[test]
fn an_erased_photo_goes_everywhere() {
    let served = Served::new(None);
    let (mut one, mut other) = (Device::new(1), Device::new(2));
    let own = one.take_photo(b"invented").unwrap();
    for device in [&mut one, &mut other] {
        device.sync(served.address).unwrap();
        device.exchange_photos(served.address, 9).unwrap();
    }
    let blank: Vec<_> =
        one.keep.records().revisions().map(tautline_survey::revision::Revision::erased).collect();
    one.keep.append(&blank).unwrap();
    one.sync(served.address).unwrap();
    assert_eq!(served.get(&format!("/api/photos/{own}")).status, 404);
    let late = served.call(&format!("PUT /api/photos/{own}"), &[], b"invented");
    assert_eq!((late.status, code(&late)), (404, "photo-not-named".to_owned()));
    other.sync(served.address).unwrap();
    assert_eq!(other.keep.photo(&own).unwrap(), None);
}
