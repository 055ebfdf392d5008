//! Randomness as an argument: a seed made from a purpose and data, and the one generator that it starts.

mod normals;

pub use normals::Normals;

use crate::num::math::{cos, exp, ln, sqrt};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// A seed that depends on what it is for and on the data, and on nothing else.
///
/// The purpose, a byte that no text holds, and the data are folded into 64 bits (FNV-1a), which SplitMix64 spreads
/// into the 256-bit key.
///
/// # Source
/// FNV-1a: Fowler, Noll and Vo, RFC 9923; SplitMix64: Steele, Lea and Flood 2014, OOPSLA, fig. 16
/// # Example
/// ```
/// use tautline_engine::seed::Seed;
/// let draw = |purpose| Seed::from_purpose(purpose, &[7]).stream().below(1_000_000);
/// assert_eq!(draw("bootstrap"), draw("bootstrap"));
/// assert_ne!(draw("bootstrap"), draw("stand"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seed([u8; 32]);

impl Seed {
    /// The seed for a purpose and its data.
    pub fn from_purpose(purpose: &str, data: &[u64]) -> Self {
        let numbers = data.iter().flat_map(|number| number.to_le_bytes());
        let folded =
            purpose.bytes().chain([0xff]).chain(numbers).fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
                (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
            });
        let mut key = [0; 32];
        let mut state = folded;
        for chunk in key.chunks_exact_mut(8) {
            state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
            let mut z = state;
            z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
            chunk.copy_from_slice(&(z ^ (z >> 31)).to_le_bytes());
        }
        Self(key)
    }

    /// The stream of random numbers that the seed starts.
    pub fn stream(self) -> Random {
        Random(ChaCha8Rng::from_seed(self.0))
    }

    /// The stream of normal numbers that the seed starts.
    pub fn normals(self) -> Normals {
        Normals::new(ChaCha8Rng::from_seed(self.0))
    }
}

/// A stream of random numbers: ChaCha with 8 rounds, the same on every target.
#[derive(Clone, Debug)]
pub struct Random(ChaCha8Rng);

impl Random {
    /// The next 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0.next_u64()
    }

    /// A whole number from 0 up to but not including `limit`, each as likely; 0 where `limit` is 0.
    ///
    /// # Source
    /// Lemire 2019, ACM Transactions on Modeling and Computer Simulation 29(1):3, algorithm 5
    pub fn below(&mut self, limit: u64) -> u64 {
        let mut product = u128::from(self.bits()) * u128::from(limit);
        let low = |product: u128| u64::try_from(product & u128::from(u64::MAX)).unwrap_or(0);
        if low(product) < limit {
            let reject_below = limit.wrapping_neg() % limit;
            while low(product) < reject_below {
                product = u128::from(self.bits()) * u128::from(limit);
            }
        }
        u64::try_from(product >> 64).unwrap_or(0)
    }

    /// A number in [0, 1), a multiple of 2⁻⁵³.
    pub fn uniform(&mut self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "53 bits fit")]
        let numerator = (self.bits() >> 11) as f64;
        numerator / 9_007_199_254_740_992.0
    }

    /// A number of the standard normal distribution (Box and Muller 1958).
    pub fn normal(&mut self) -> f64 {
        let radius = sqrt(-2.0 * ln(1.0 - self.uniform()));
        radius * cos(2.0 * core::f64::consts::PI * self.uniform())
    }

    /// A count of the Poisson distribution.
    ///
    /// Exponential waiting times are added up, so the cost grows with the mean.
    pub fn poisson(&mut self, mean: f64) -> u64 {
        let mut count = 0;
        let mut waited = -ln(1.0 - self.uniform());
        while waited < mean {
            count += 1;
            waited -= ln(1.0 - self.uniform());
        }
        count
    }

    /// A number whose logarithm is normal, given by its median and the standard deviation of its logarithm.
    pub fn lognormal(&mut self, median: f64, spread: f64) -> f64 {
        median * exp(spread * self.normal())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ChaCha8 with a key and nonce of zeros, first block: Strombergson, draft-strombergson-chacha-test-vectors-01,
    /// test vector TC1 (from memory: 3e 00 ef 2f 89 5f 40 d6).
    #[test]
    fn the_generator_is_chacha8() {
        let mut zeros = Random(ChaCha8Rng::from_seed([0; 32]));
        assert_eq!(zeros.bits().to_le_bytes(), [0x3e, 0x00, 0xef, 0x2f, 0x89, 0x5f, 0x40, 0xd6]);
    }

    /// The same purposes and data through FNV-1a, SplitMix64 and ChaCha8 written out anew in another language.
    #[test]
    fn a_seed_stays_what_it_is() {
        let draws = |purpose, data: &[u64]| {
            let mut random = Seed::from_purpose(purpose, data).stream();
            [random.bits(), random.bits()]
        };
        assert_eq!(draws("stand", &[]), [8_739_288_720_287_627_480, 12_879_132_846_253_461_574]);
        assert_eq!(draws("stand", &[1]), [10_456_666_444_139_976_798, 7_605_909_946_513_202_481]);
        assert_eq!(draws("bootstrap", &[1, 2026]), [5_532_290_204_560_866_442, 6_965_621_094_222_149_131]);
    }

    #[test]
    fn below_is_even() {
        let mut random = Seed::from_purpose("test below", &[]).stream();
        let mut counts = [0_i32; 5];
        for _ in 0..50_000 {
            counts[usize::try_from(random.below(5)).unwrap()] += 1;
        }
        // 10 000 expected; standard deviation √(50 000 · 0.2 · 0.8) = 89; five of them
        assert!(counts.iter().all(|count| (count - 10_000).abs() < 450), "{counts:?}");
        assert_eq!(random.below(1), 0);
        assert_eq!(random.below(0), 0);
    }

    #[test]
    fn means_and_spreads() {
        let mut random = Seed::from_purpose("test moments", &[]).stream();
        let n = 40_000;
        let normals: Vec<f64> = (0..n).map(|_| random.normal()).collect();
        let mean = normals.iter().sum::<f64>() / f64::from(n);
        let square = normals.iter().map(|x| x * x).sum::<f64>() / f64::from(n);
        // five standard errors: 5/√n and 5·√2/√n
        assert!(mean.abs() < 0.025 && (square - 1.0).abs() < 0.036, "{mean} {square}");
        let poisson = (0..n).map(|_| f64::from(u32::try_from(random.poisson(3.0)).unwrap())).sum::<f64>()
            / f64::from(n);
        assert!((poisson - 3.0).abs() < 5.0 * sqrt(3.0 / f64::from(n)));
    }
}
