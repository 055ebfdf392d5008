//! The server called as a device, a program or somebody who means ill would call it.

#![expect(clippy::unwrap_used, reason = "a test that can't call the server has failed")]

mod common;
mod described;
mod door;
mod full;
mod photos;
mod share;
mod sync;
