//! Where lines go: drawn by a stated rule from a seed, so that anyone can draw them again.
//!
//! Everything is decided on whole millimetres in a local plane, exactly; the same seed gives the same layout on every
//! platform.
//!
//! | what | module |
//! | --- | --- |
//! | points and stretches of a plane, exact comparisons | [`plane`] |
//! | the hull of points | [`hull`] |
//! | a site's strata, and what to keep out of | [`region`] |
//! | the order in which points are tried: balanced, random, systematic | [`points`] |
//! | lines and plots of lines at those points, with edge rule, distance and reserve | [`layout`] |
//! | the order in which lines are walked | [`route`] |
//! | ways round what nobody walks over | [`around`] |
//! | a baseline with lines at right angles | [`baseline`] |

pub mod around;
pub mod baseline;
pub mod hull;
pub mod layout;
pub mod plane;
pub mod points;
pub mod region;
pub mod route;

#[cfg(test)]
mod tests;
