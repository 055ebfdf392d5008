//! Normal numbers by the million.

use crate::num::math::{erfc, exp, ln, sqrt};
use core::f64::consts::{FRAC_PI_2, SQRT_2};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::Rng;
use std::sync::LazyLock;

/// A stream of standard normal numbers for simulations that take millions of them: a ziggurat of 512 layers.
///
/// Each number takes 32 bits, 9 for the layer and 23 for the place in it, so that neighbouring values lie up to
/// 10⁻⁶ apart: far finer than any Monte-Carlo error. Fewer than 1 % take more, and are decided by the density itself.
///
/// # Source
/// Marsaglia and Tsang 2000, Journal of Statistical Software 5(8); layer and place from bits of their own: Doornik 2005,
/// An improved ziggurat method to generate normal random samples
/// # Example
/// ```
/// use tautline_engine::seed::Seed;
/// let mut normals = Seed::from_purpose("example", &[]).normals();
/// let mean = (0..10_000).map(|_| normals.draw()).sum::<f64>() / 10_000.0;
/// assert!(mean.abs() < 0.05); // five standard errors
/// ```
#[derive(Clone, Debug)]
pub struct Normals {
    random: ChaCha8Rng,
    /// Drawn already, from `at` on not handed out yet.
    drawn: [f64; AT_ONCE],
    at: usize,
    layers: &'static Layers,
}

/// Numbers drawn at once.
const AT_ONCE: usize = 256;
const COUNT: usize = 512;

#[derive(Debug)]
struct Layers {
    /// Where the tail begins.
    tail: f64,
    /// The density exp(−x²/2) at each edge, from the lowest layer's foot up.
    height: [f64; COUNT + 1],
    /// Half the width of each layer in 2²² steps, and the next edge, within which the layer lies wholly under the density.
    inside: [(f64, f64); COUNT],
}

impl Layers {
    /// Layers of one area each, where the tail begins at `tail`, and the height that the topmost reaches.
    fn beginning(tail: f64) -> (Self, f64) {
        let foot = density(tail);
        // the tail's own area is √(π/2) erfc(x / √2)
        let area = tail * foot + sqrt(FRAC_PI_2) * erfc(tail / SQRT_2);
        let (mut edge, mut height) = ([0.0; COUNT + 1], [0.0; COUNT + 1]);
        // the lowest layer is as wide as its area asks, tail and all
        (edge[0], edge[1], height[1]) = (area / foot, tail, foot);
        for layer in 2..=COUNT {
            height[layer] = height[layer - 1] + area / edge[layer - 1];
            if layer < COUNT {
                edge[layer] = sqrt((-2.0 * ln(height[layer])).max(0.0));
            }
        }
        let mut inside = [(0.0, 0.0); COUNT];
        for (inside, edges) in inside.iter_mut().zip(edge.windows(2)) {
            *inside = (edges[0] / f64::from(1_u32 << 22), edges[1]);
        }
        (Self { tail, height, inside }, height[COUNT])
    }

    /// Those whose topmost reaches the density's peak: the later the tail begins the thinner they are.
    fn closed() -> Self {
        let (mut low, mut high) = (3.0, 5.0);
        for _ in 0..HALVINGS {
            let tail = f64::midpoint(low, high);
            let (_, top) = Self::beginning(tail);
            if top > 1.0 { low = tail } else { high = tail }
        }
        Self::beginning(high).0
    }
}

/// As many as a number between 3 and 5 has binary places.
const HALVINGS: usize = 52;

static LAYERS: LazyLock<Layers> = LazyLock::new(Layers::closed);

fn density(x: f64) -> f64 {
    exp(-0.5 * x * x)
}

impl Normals {
    pub(super) fn new(random: ChaCha8Rng) -> Self {
        Self { random, drawn: [0.0; AT_ONCE], at: AT_ONCE, layers: &LAYERS }
    }

    /// The next number.
    #[inline]
    pub fn draw(&mut self) -> f64 {
        if self.at == AT_ONCE {
            self.refill();
        }
        let drawn = self.drawn[self.at];
        self.at += 1;
        drawn
    }

    #[inline(never)]
    fn refill(&mut self) {
        let mut bytes = [0; 4 * AT_ONCE];
        self.random.fill_bytes(&mut bytes);
        let (words, _) = bytes.as_chunks();
        for (at, &word) in words.iter().enumerate() {
            self.drawn[at] = self.decided(u32::from_le_bytes(word));
        }
        self.at = 0;
    }

    #[inline]
    fn decided(&mut self, word: u32) -> f64 {
        let layer = (word & 0x1ff) as usize;
        // the upper 23 bits with their sign; half a step more, so that both signs are alike
        let (step, under) = self.layers.inside[layer];
        let x = (f64::from(word.cast_signed() >> 9) + 0.5) * step;
        if x.abs() < under { x } else { self.at_the_edge(layer, x) }
    }

    /// Outside what lies wholly under the density: the tail, the curve's own edge, or another try.
    #[cold]
    #[inline(never)]
    fn at_the_edge(&mut self, layer: usize, x: f64) -> f64 {
        let layers = self.layers;
        if layer == 0 {
            // Marsaglia 1964, Technometrics 6:101
            loop {
                let (beyond, height) = (-ln(self.share()) / layers.tail, -ln(self.share()));
                if 2.0 * height > beyond * beyond {
                    return (layers.tail + beyond).copysign(x);
                }
            }
        }
        let (low, high) = (layers.height[layer], layers.height[layer + 1]);
        if low + self.share() * (high - low) < density(x) {
            x
        } else {
            let another = self.random.next_u32();
            self.decided(another)
        }
    }

    /// A number in (0, 1).
    fn share(&mut self) -> f64 {
        (f64::from(self.random.next_u32()) + 0.5) / 4_294_967_296.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::num::quantile::normal_cdf;
    use crate::seed::Seed;

    /// The layers close: the topmost reaches the density's peak, f(0) = 1 (Marsaglia and Tsang 2000, §2).
    #[test]
    fn the_layers_close() {
        assert!((Layers::beginning(LAYERS.tail).1 - 1.0).abs() < 1e-12);
        let rising = LAYERS.height.windows(2).all(|pair| pair[0] < pair[1]);
        let narrowing = LAYERS.inside.windows(2).all(|pair| pair[0].1 > pair[1].1);
        assert!(rising && narrowing);
    }

    /// Shares in 40 classes of equal chance, and beyond 3, 3.7 and 4, by chi-square and by their standard errors.
    #[test]
    fn as_many_as_the_normal_distribution_has() {
        let mut normals = Seed::from_purpose("test normals", &[]).normals();
        let n = 2_000_000;
        let (mut classes, mut beyond) = ([0_u32; 40], [0_u32; 3]);
        let limits = [3.0, 3.7, 4.0];
        for _ in 0..n {
            let x = normals.draw();
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of 40")]
            let class = (normal_cdf(x) * 40.0) as usize;
            classes[class.min(39)] += 1;
            for (count, limit) in beyond.iter_mut().zip(limits) {
                *count += u32::from(x.abs() > limit);
            }
        }
        let expected = f64::from(n) / 40.0;
        let away = classes.map(|seen| f64::from(seen) - expected);
        let chi = away.iter().map(|away| away * away / expected).sum::<f64>();
        // 39 degrees of freedom: the 0.9999 quantile is 80.1 (chi-square tables)
        assert!(chi < 80.1, "{chi}");
        // P(|Z| > 3, 3.7, 4) = 2.6998e-3, 2.1561e-4, 6.3342e-5 (normal tables)
        for (seen, share) in beyond.into_iter().zip([2.699_8e-3, 2.156_1e-4, 6.334_2e-5]) {
            let expected = f64::from(n) * share;
            assert!((f64::from(seen) - expected).abs() < 5.0 * sqrt(expected), "{seen} {expected}");
        }
    }

    /// Mean, spread, skewness, kurtosis and the correlation of neighbours, within five standard errors.
    #[test]
    fn moments() {
        let mut normals = Seed::from_purpose("test normal moments", &[]).normals();
        let n = 1_000_000;
        let (mut sums, mut before) = ([0.0; 5], 0.0);
        for _ in 0..n {
            let x = normals.draw();
            for (sum, part) in sums.iter_mut().zip([x, x * x, x * x * x, x * x * x * x, x * before]) {
                *sum += part / f64::from(n);
            }
            before = x;
        }
        // variances of the five means: 1, 2, 15, 96, 1
        for ((found, expected), variance) in
            sums.into_iter().zip([0.0, 1.0, 0.0, 3.0, 0.0]).zip([1.0, 2.0, 15.0, 96.0, 1.0])
        {
            assert!((found - expected).abs() < 5.0 * sqrt(variance / f64::from(n)), "{found} {expected}");
        }
    }
}
