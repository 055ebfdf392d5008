//! The bytes of a picture as an address that an image shows; it is let go with what shows it.

use crate::session::Session;
use js_sys::{Array, Uint8Array};
use leptos::prelude::*;
use tautline_survey::photo::{Media, Photo};
use web_sys::{Blob, BlobPropertyBag, Url};

/// An address for as long as this is kept.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Address(String);

impl Address {
    /// An address of bytes; none where the browser gives none.
    pub(crate) fn of(bytes: &[u8], media: Media) -> Option<Self> {
        let options = BlobPropertyBag::new();
        options.set_type(media.name());
        let parts = Array::of1(&Uint8Array::from(bytes));
        let blob = Blob::new_with_u8_array_sequence_and_options(&parts, &options).ok()?;
        Url::create_object_url_with_blob(&blob).ok().map(Self)
    }

    pub(crate) fn text(&self) -> &str {
        &self.0
    }
}

impl Drop for Address {
    fn drop(&mut self) {
        // an address that is gone already needs no letting go
        let _ = Url::revoke_object_url(&self.0);
    }
}

/// What is known of a kept photo's bytes.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Read {
    /// They are being read from the disk.
    UnderWay,
    /// They aren't on this device.
    Lacking,
    /// They are shown at this address.
    Shown(Address),
}

/// A photo of the notebook, read from the disk in its turn.
pub(crate) fn kept(session: Session, photo: &Photo) -> ReadSignal<Read> {
    let (read, set) = signal(Read::UnderWay);
    let (sha256, media) = (photo.sha256.clone(), photo.media);
    session.with_device(
        async move |device| device.photo(&sha256).await.ok().flatten(),
        move |bytes| {
            let shown = bytes.and_then(|bytes| Address::of(&bytes, media));
            // whoever has left the screen meanwhile lets the address go here
            set.try_set(shown.map_or(Read::Lacking, Read::Shown));
        },
    );
    read
}
