//! Building, checking and releasing beyond cargo.
fn main() {}
