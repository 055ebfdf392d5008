//! The pictures read back: where things stand, and what holds for every picture.

mod geometry;
mod laws;
mod practice;
mod reader;
