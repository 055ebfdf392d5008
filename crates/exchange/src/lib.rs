//! Room of tautline.
