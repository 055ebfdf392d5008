//! What several screens are made of.
//!
//! | what | module |
//! | --- | --- |
//! | whether what is here is elsewhere too | [`badge`] |
//! | a photo made smaller | [`camera`] |
//! | findings of the checks, each with its place | [`findings`] |
//! | files picked, dropped and handed out | [`files`] |
//! | a photo's bytes as an address | [`picture`] |
//! | cover and interval against the goal, as a small picture | [`small`] |
//! | a page made elsewhere in the house, shown as it is | [`sheet`] |
//! | readings that are out of sight | [`withheld`] |

pub(crate) mod badge;
pub(crate) mod camera;
pub(crate) mod files;
pub(crate) mod findings;
pub(crate) mod picture;
pub(crate) mod sheet;
pub(crate) mod small;
pub(crate) mod withheld;
