//! Trend over many visits.
//!
//! | question | item |
//! | --- | --- |
//! | does it rise or fall from visit to visit | [`robust::mann_kendall`] |
//! | by how much a year | [`robust::theil_sen`], [`robust::slope_interval`] |
//! | both at once, from lines and years together | [`mixed`] |
//! | the same where visits hang together from one to the next | [`serial`] |
//! | when the line would reach a goal | [`forecast`] |
//! | many sites: rolled up, and drawn towards each other | [`pool`] |

pub mod forecast;
pub mod mixed;
pub mod pool;
pub mod robust;
pub mod serial;
