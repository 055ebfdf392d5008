//! The notebook's server: devices share in a notebook over HTTP, and the built app is given out as files.
//!
//! It is a room of its own because a network is heavy and because what may come in from one deserves a door of its own.
//! It has no rules of meaning: what a message says and what an answer is stand in `tautline_survey::sync` and
//! `tautline_store::desk`.
//!
//! | what | module |
//! | --- | --- |
//! | what is asked and answered | [`api`](mod@crate) in `api/` |
//! | who may come in: this server's own pages alone | `door` |
//! | the crew's phones: a secure address, and a code that lets one in | `share/` |
//! | one writer, many requests in one commit | `writer` |
//! | those who read | `readers` |
//! | the built app | `files` |
//! | the description of the interface | [`description`] |
//! | devices for trials | [`trial`] |
#![forbid(unsafe_code)]

mod api;
mod describe;
mod door;
mod fault;
mod files;
mod port;
mod readers;
mod serve;
mod share;
pub mod trial;
mod writer;

pub use describe::description;
pub use serve::{NotServed, Server, Setup, Shared, Stop};
pub use share::{Invitation, ShareSetup, Tell, picture};
