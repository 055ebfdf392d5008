//! The table: one row for each value, written so that two equal values are equal bytes.

use std::fmt::{Display, Write};

/// Rows of labels and values, in the order in which they were added.
#[derive(Default)]
pub struct Table(String);

impl Table {
    /// A real number by its bits; every not-a-number is the word `nan`, since its bits are nobody's promise.
    pub fn real(&mut self, label: impl Display, value: f64) {
        if value.is_nan() {
            self.row(label, "nan");
        } else {
            self.row(label, format_args!("{:016x}", value.to_bits()));
        }
    }

    /// A whole number, or a word.
    pub fn row(&mut self, label: impl Display, value: impl Display) {
        writeln!(self.0, "{label} {value}").expect("a String takes whatever is written");
    }

    /// Many real numbers as one row: a digest of their bits, in order.
    pub fn digest(&mut self, label: impl Display, values: impl IntoIterator<Item = f64>) {
        let digest = values.into_iter().fold(FNV_START, |digest, value| {
            let bits = if value.is_nan() { u64::MAX } else { value.to_bits() };
            bits.to_le_bytes()
                .iter()
                .fold(digest, |digest, &byte| (digest ^ u64::from(byte)).wrapping_mul(FNV_PRIME))
        });
        self.row(format_args!("{label} digest"), format_args!("{digest:016x}"));
    }

    /// The rows so far.
    pub fn text(self) -> String {
        self.0
    }
}

// Fowler, Noll and Vo's hash in its 1a form with 64 bits: any changed byte changes it.
const FNV_START: u64 = 0xcbf2_9ce4_8422_2325;
const FNV_PRIME: u64 = 0x0000_0100_0000_01b3;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_real_number_is_its_bits() {
        let mut table = Table::default();
        table.real("one", 1.0);
        table.real("minus nought", -0.0);
        table.real("neither", f64::NAN);
        assert_eq!(table.text(), "one 3ff0000000000000\nminus nought 8000000000000000\nneither nan\n");
    }

    #[test]
    fn a_digest_sees_a_last_bit_and_an_order() {
        let digest = |values: &[f64]| {
            let mut table = Table::default();
            table.digest("all", values.iter().copied());
            table.text()
        };
        assert_eq!(digest(&[]), "all digest cbf29ce484222325\n");
        assert_ne!(digest(&[1.0, 2.0]), digest(&[1.0, 2.0 + 2.0 * f64::EPSILON]));
        assert_ne!(digest(&[1.0, 2.0]), digest(&[2.0, 1.0]));
    }
}
