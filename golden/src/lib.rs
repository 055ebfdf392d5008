//! The engine's figures as one table of bits, so that a computer and a browser can be compared byte for byte.
//!
//! | rows | module |
//! | --- | --- |
//! | the one door to mathematics | `mathematics` |
//! | distributions and their quantiles | `distributions` |
//! | cover of a line, its gaps, the work on paper | `lines` |
//! | estimates, intervals, verdicts, lines to come | `sites` |
//! | power, and the handbooks' numbers of lines | `plans` |
//! | change, turnover, trend | `follow` |
//! | lines and plots drawn on a site | `places` |
//! | randomness and invented stands | `stands` |
//! | digits that heap, values far from the others | `checks` |
//! | figures and lengths as people read them | `printed` |
//!
//! Each row is a label, a blank and a value: the sixteen hexadecimal digits of a real number's bits, or a whole
//! number, or what is printed for people. A row that ends in `digest` stands for thousands of values.

mod checks;
mod distributions;
mod export;
mod follow;
mod inputs;
mod lines;
mod mathematics;
mod places;
mod plans;
mod printed;
mod sites;
mod stands;
mod table;

pub use table::Table;

/// Every row, natively and in the browser alike.
pub fn table() -> String {
    let mut table = Table::default();
    mathematics::rows(&mut table);
    distributions::rows(&mut table);
    lines::rows(&mut table);
    sites::rows(&mut table);
    plans::rows(&mut table);
    follow::rows(&mut table);
    places::rows(&mut table);
    stands::rows(&mut table);
    checks::rows(&mut table);
    printed::rows(&mut table);
    table.text()
}
