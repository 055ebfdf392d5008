//! The tautline command.
fn main() {}
