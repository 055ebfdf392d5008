//! Where a continuous function crosses zero, between two points that enclose the crossing.

/// The crossing of `f` between `low` and `high`, to about one unit in the last place.
///
/// Halves the bracket, or interpolates where three points look like a parabola on its side; a pure function
/// of its arguments. `None` when the ends don't enclose a crossing or `f` is not a number there.
///
/// # Source
/// Chandrupatla, T.R. 1997. A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear
/// function without using derivatives. Advances in Engineering Software 28:145–149.
///
/// # Example
/// ```
/// use tautline_engine::num::root::crossing;
/// let root = crossing(|x| x * x - 2.0, 0.0, 2.0).expect("the ends enclose it");
/// assert!((root - std::f64::consts::SQRT_2).abs() < 1e-15);
/// ```
#[expect(clippy::many_single_char_names, reason = "the paper's letters")]
pub fn crossing(f: impl Fn(f64) -> f64, low: f64, high: f64) -> Option<f64> {
    // The letters are the paper's: b the newest point, a the other end of the bracket, c the one before.
    let (mut b, mut a) = (low, high);
    let (mut fb, mut fa) = (f(b), f(a));
    if fb == 0.0 {
        return Some(b);
    }
    if fa == 0.0 {
        return Some(a);
    }
    if fa.is_nan() || fb.is_nan() || (fa < 0.0) == (fb < 0.0) {
        return None;
    }
    let mut step = 0.5;
    for _ in 0..MOST_STEPS {
        let x = a + step * (b - a);
        let fx = f(x);
        let (c, fc);
        if (fx < 0.0) == (fa < 0.0) {
            (c, fc) = (a, fa);
        } else {
            (c, fc) = (b, fb);
            (b, fb) = (a, fa);
        }
        (a, fa) = (x, fx);
        let (best, f_best) = if fa.abs() < fb.abs() { (a, fa) } else { (b, fb) };
        let limit = 2.0 * f64::EPSILON * best.abs() + f64::MIN_POSITIVE;
        let near = limit / (b - a).abs();
        if near > 0.5 || f_best == 0.0 {
            return Some(best);
        }
        let xi = (a - b) / (c - b);
        let phi = (fa - fb) / (fc - fb);
        let inverse_quadratic_holds = phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi;
        step = if inverse_quadratic_holds {
            fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
        } else {
            0.5
        };
        step = step.clamp(near, 1.0 - near);
    }
    None
}

// Halving alone takes a bracket from the largest to the smallest positive number in about 2100 steps.
const MOST_STEPS: u32 = 2200;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn refuses_ends_that_enclose_nothing() {
        assert_eq!(crossing(|x| x * x + 1.0, -1.0, 1.0), None);
    }

    #[test]
    fn finds_a_tiny_root_to_the_last_digits() {
        let root = crossing(|x| x - 1.25e-9, 0.0, 1e6).unwrap();
        assert!((root / 1.25e-9 - 1.0).abs() < 1e-15, "{root}");
    }

    #[test]
    fn a_root_at_an_end_is_found() {
        assert_eq!(crossing(|x| x, 0.0, 1.0), Some(0.0));
    }
}
