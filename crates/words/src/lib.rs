//! Room of tautline.
#![forbid(unsafe_code)]
