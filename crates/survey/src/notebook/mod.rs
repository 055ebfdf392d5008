//! A notebook: the records that were handed in over time, each through all its revisions.
//!
//! | what | module |
//! | --- | --- |
//! | which kinds of record there are, and what tells two of a kind apart | [`payload`] |
//! | what stands now, and what must be settled first | [`current`] |
//! | files brought into a notebook | [`gather`] |
//! | settling, restoring, undoing, erasing | [`amend`] |
//! | records that hold some words | [`find`] |
//! | forgetting a person or a site | [`forget`] |
//! | what changed between two revisions | [`changes`] |
//! | layouts kept, lines replaced | [`layouts`] |
//! | drafts made into revisions | [`hand`] |
//! | what is left of a record where its site's places are kept back | `told` |

pub mod amend;
pub mod changes;
pub mod current;
pub mod find;
pub mod forget;
pub mod gather;
pub mod hand;
pub mod layouts;
pub mod payload;
mod told;
