//! Every parser against text that nobody would write: it never panics, what it finds lies inside the file, and what it
//! read is the same once printed and read again.
//!
//! As plain tests each target runs what lies under `__fuzz__/NAME/corpus` and `__fuzz__/NAME/crashes`, then random
//! text for 15 seconds. A text that broke something goes into `crashes` and stays.

mod boundaries;
mod files;
mod records;
mod text;
mod values;
mod workbooks;

#[path = "../../../crates/exchange/tests/says/mod.rs"]
mod says;

use std::time::Duration;

/// How long each target runs where the environment doesn't say it.
const EACH: Duration = Duration::from_secs(15);
