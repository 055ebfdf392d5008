//! Practice: invented lines whose right reading is known, sheets set beside it, and the mistakes that explain them.
//!
//! | what | module |
//! | --- | --- |
//! | a practice line: shrubs, dead wood, what doesn't count | [`mod@line`] |
//! | drawing one by level of difficulty | [`level`] |
//! | the sheet that a reader with one mistake writes | [`mistake`] |
//! | a sheet beside the key, intercept by intercept | [`grade`] |
//! | the same where only lengths were written | [`lengths`] |
//! | which mistake explains a sheet | [`recognise`] |
//! | arithmetic by hand | [`drill`] |
//! | where a line goes, and what is in or out | [`place`] |

pub mod drill;
pub mod grade;
pub mod lengths;
pub mod level;
pub mod line;
pub mod mistake;
pub mod place;
pub mod recognise;

#[cfg(test)]
mod tests;
