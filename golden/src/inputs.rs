//! Inputs for the table: many, spread over a range, and the same for ever.

/// Numbers drawn evenly, by a rule so short that it needs no library: the engine's own generator is among the
/// things compared, and must not choose what it is compared on.
///
/// # Source
/// Steele, Lea & Flood 2014, Fast splittable pseudorandom number generators, figure 13 (SplitMix64).
pub(crate) struct Inputs(u64);

impl Inputs {
    /// A sequence of its own for each seed.
    pub(crate) fn new(seed: u64) -> Self {
        Inputs(seed)
    }

    /// Sixty-four bits.
    pub(crate) fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A real number from `low` up to `high`.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        let whole = u32::try_from(self.bits() >> 32).expect("half of the bits are left");
        low + (high - low) * (f64::from(whole) / 4_294_967_296.0)
    }

    /// A whole number from nought to below `below`.
    pub(crate) fn below(&mut self, below: u32) -> u32 {
        let whole = ((self.bits() >> 32) * u64::from(below)) >> 32;
        u32::try_from(whole).expect("below a number of 32 bits")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_sequence() {
        // First numbers of SplitMix64 from the seed 1234567, as widely published with its reference code.
        let mut inputs = Inputs::new(1_234_567);
        assert_eq!(inputs.bits(), 6_457_827_717_110_365_317);
        assert_eq!(inputs.bits(), 3_203_168_211_198_807_973);
        assert_eq!(inputs.bits(), 9_817_491_932_198_370_423);
    }

    #[test]
    fn numbers_stay_in_their_range() {
        let mut inputs = Inputs::new(7);
        for _ in 0..1000 {
            assert!((-2.0..3.0).contains(&inputs.between(-2.0, 3.0)));
            assert!(inputs.below(6) < 6);
        }
    }
}
