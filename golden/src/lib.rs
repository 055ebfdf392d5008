//! The engine's figures as one table of bits, so that a computer and a browser can be compared byte for byte.
//!
//! | rows | module |
//! | --- | --- |
//! | the one door to mathematics | [`mathematics`] |
//!
//! Each row is a label, a blank and a value: the sixteen hexadecimal digits of a real number's bits, or a whole
//! number, or a word. A row that ends in `digest` stands for thousands of values.

mod export;
mod inputs;
mod mathematics;
mod table;

pub use table::Table;

/// Every row, natively and in the browser alike.
pub fn table() -> String {
    let mut table = Table::default();
    mathematics::rows(&mut table);
    table.text()
}
