//! Words that come back on row after row, looked up once.

use std::collections::HashMap;

/// How many short words are remembered by place.
const PLACES: usize = 256;
/// No text packs into this number: its bytes aren't UTF-8.
const NOTHING: u64 = u64::MAX;

/// What words stand for, remembered from the first time each is met.
pub(super) struct Known<T> {
    short: Box<[(u64, T); PLACES]>,
    all: HashMap<Vec<u8>, T>,
}

impl<T: Copy + Default> Default for Known<T> {
    fn default() -> Self {
        Self { short: Box::new([(NOTHING, T::default()); PLACES]), all: HashMap::new() }
    }
}

impl<T: Copy> Known<T> {
    /// What a word stands for; asked of `meaning` the first time. `packed` is the word in one number, if it fits.
    #[inline]
    pub(super) fn get(&mut self, packed: Option<u64>, word: &[u8], meaning: impl FnOnce() -> T) -> T {
        let Some(packed) = packed else { return self.long(word, meaning) };
        // the top bits of a product by an odd number spread short words well
        let place = (packed.wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 56) as usize;
        let (known, value) = self.short[place];
        if known == packed {
            return value;
        }
        let value = self.long(word, meaning);
        self.short[place] = (packed, value);
        value
    }

    #[cold]
    fn long(&mut self, word: &[u8], meaning: impl FnOnce() -> T) -> T {
        if let Some(&value) = self.all.get(word) {
            return value;
        }
        let value = meaning();
        self.all.insert(word.to_vec(), value);
        value
    }
}
