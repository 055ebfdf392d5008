//! How often intervals and verdicts are right, on invented stands whose cover is known.
//!
//! A room of its own because no product code may depend on it: it tries the engine's methods and their rivals, and
//! writes `docs/intervals.md` with its table and picture. Stands, tapes, estimates and methods are the engine's.
//!
//! | module | knows |
//! | --- | --- |
//! | [`stands`] | which stands are tried, and how a stand of a wanted cover is made |
//! | [`survey`] | lines laid over a stand at random, and what is read on them |
//! | [`rivals`] | the methods: the engine's, and those that were tried beside them |
//! | [`tally`] | how often a method was right in one case |
//! | [`block`] | all cases of one stand: the unit of work |
//! | [`run`] | all blocks, side by side, kept on disk as they are done |
//! | [`table`] | the data file |
//! | [`bar`] | what is asked of a method, and who meets it |
//! | [`sequential`] | a plan that may stop after any line, and `docs/sequential.md` |
//! | [`page`], [`picture`] | `docs/intervals.md` and its picture, from the data file alone |
#![forbid(unsafe_code)]

pub mod bar;
pub mod block;
pub mod page;
pub mod picture;
pub mod rivals;
pub mod run;
pub mod sequential;
pub mod stands;
pub mod survey;
pub mod table;
pub mod tally;
