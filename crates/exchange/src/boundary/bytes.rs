//! Numbers and pairs in bytes; no count is believed before the bytes for it are there.

use tautline_survey::boundary::Pair;

/// Bytes read from the front.
#[derive(Clone, Copy)]
pub(super) struct Bytes<'a> {
    left: &'a [u8],
    pub(super) little_first: bool,
}

impl<'a> Bytes<'a> {
    pub(super) const fn of(bytes: &'a [u8], little_first: bool) -> Self {
        Self { left: bytes, little_first }
    }

    pub(super) fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (taken, left) = self.left.split_at_checked(count)?;
        self.left = left;
        Some(taken)
    }

    fn array<const N: usize>(&mut self) -> Option<[u8; N]> {
        let mut array: [u8; N] = self.take(N)?.try_into().ok()?;
        if !self.little_first {
            array.reverse();
        }
        Some(array)
    }

    pub(super) fn whole(&mut self) -> Option<u32> {
        self.array().map(u32::from_le_bytes)
    }

    pub(super) fn number(&mut self) -> Option<f64> {
        self.array().map(f64::from_le_bytes)
    }

    /// A count of things of which each takes so many bytes at least.
    pub(super) fn count(&mut self, each: usize) -> Option<usize> {
        let count = usize::try_from(self.whole()?).ok()?;
        (count <= self.left.len() / each).then_some(count)
    }

    /// Pairs, what stands behind each of them left aside.
    pub(super) fn pairs(&mut self, count: usize, more: usize) -> Option<Vec<Pair>> {
        let pair = |bytes: &mut Self| {
            let pair = [bytes.number()?, bytes.number()?];
            bytes.take(8 * more)?;
            Some(pair)
        };
        (0..count).map(|_| pair(self)).collect()
    }
}
