//! Trend over many visits.
//!
//! | question | item |
//! | --- | --- |
//! | does it rise or fall from visit to visit | [`robust::mann_kendall`] |
//! | by how much a year | [`robust::theil_sen`], [`robust::slope_interval`] |
//! | both at once, from lines and years together | [`mixed`] |

pub mod mixed;
pub mod robust;
