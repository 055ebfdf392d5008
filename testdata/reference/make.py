"""Works out check values with SciPy, statsmodels and mpmath: python make.py OUTFILE"""

import pathlib
import sys

import mpmath
import numpy as np
import scipy.special
import scipy.stats
from statsmodels.stats.power import TTestIndPower, TTestPower
from statsmodels.stats.weightstats import DescrStatsW

mpmath.mp.dps = 40
HERE = pathlib.Path(__file__).parent
rows = []


def row(kind, given, *figures):
    rows.append(" | ".join([kind, given, " ".join(repr(float(f)) for f in figures)]))


def samples():
    for line in (HERE / "data.txt").read_text().splitlines():
        if not line.startswith("#"):
            name, part, y, x = (cell.strip() for cell in line.split("|"))
            if part == "-":
                yield name, np.array(y.split(), float), np.array(x.split(), float)


# ── quantiles: SciPy's, then polished with 40 digits, since SciPy is not right to the last digit everywhere ──

def upper_t(t, df):
    return mpmath.betainc(df / 2, mpmath.mpf(1) / 2, 0, df / (df + t * t), regularized=True) / 2


def upper_chi_square(x, df):
    return mpmath.gammainc(df / 2, x / 2, mpmath.inf, regularized=True)


def lower_beta(x, a, b):
    return mpmath.betainc(a, b, 0, x, regularized=True)


def polished(cdf, p, guess):
    guess = mpmath.mpf(float(guess))
    # compared in logarithms, so that small probabilities count as much as large ones
    return mpmath.findroot(lambda x: mpmath.log(cdf(x) / p), (guess, guess * (1 + mpmath.mpf(10) ** -8)))


def quantiles():
    for p in [1e-9, 1e-4, 0.001, 0.005, 0.025, 0.05, 0.1, 0.2, 0.4]:
        row("normal upper", f"{p!r}", polished(lambda x: mpmath.erfc(x / mpmath.sqrt(2)) / 2, mpmath.mpf(p), scipy.stats.norm.isf(p)))
        for df in [1.0, 1.5, 2.0, 3.7, 9.0, 19.3, 100.0, 1000.0, 100000.0]:
            exact = mpmath.mpf(df)
            row("t upper", f"{p!r} {df!r}", polished(lambda t: upper_t(t, exact), mpmath.mpf(p), scipy.stats.t.isf(p, df)))
    for p in [1e-4, 0.005, 0.05, 0.3, 0.5, 0.7, 0.95, 0.9999]:
        for df in [1.0, 2.5, 9.0, 60.0, 400.0]:
            exact = mpmath.mpf(df)
            row("chi-square upper", f"{p!r} {df!r}", polished(lambda x: upper_chi_square(x, exact), mpmath.mpf(p), scipy.stats.chi2.isf(p, df)))
        for a, b in [(0.5, 0.5), (1.0, 10.0), (3.0, 7.0), (12.5, 40.0)]:
            exact = mpmath.mpf(a), mpmath.mpf(b)
            row("beta lower", f"{p!r} {a!r} {b!r}", polished(lambda x: lower_beta(x, *exact), mpmath.mpf(p), scipy.stats.beta.ppf(p, a, b)))


def noncentral():
    """The definition, integrated with 40 digits: P(Z ≤ t s − δ) over s = √(χ²/ν)."""
    for df in [1.0, 4.0, 9.0, 29.0]:
        for t in [-1.5, 0.7, 1.833, 4.0]:
            for delta in [-0.5, 1.0, 3.0]:
                row("noncentral t", f"{t!r} {df!r} {delta!r}", noncentral_t(t, df, delta))


def noncentral_t(t, df, delta):
    t, df, delta = mpmath.mpf(t), mpmath.mpf(df), mpmath.mpf(delta)
    scale = 2 * (df / 2) ** (df / 2) / mpmath.gamma(df / 2)
    density = lambda s: scale * s ** (df - 1) * mpmath.exp(-df * s * s / 2)
    normal = lambda x: mpmath.erfc(-x / mpmath.sqrt(2)) / 2
    width = 20 / mpmath.sqrt(2 * df)
    ends = [max(0, 1 - width), 1 + width]
    with mpmath.workdps(20):
        return mpmath.quad(lambda s: normal(t * s - delta) * density(s), mpmath.linspace(*ends, 17))


# ── estimates, intervals, power ──

def intervals():
    for name, y, x in samples():
        if np.ptp(x) == 0:
            figures = DescrStatsW(y / x)
            row("mean", name, figures.mean, figures.std_mean)
            for confidence in [0.8, 0.9, 0.95]:
                row("mean t interval", f"{name} {confidence}", *figures.tconfint_mean(alpha=1 - confidence))


def power():
    for difference, n, alpha in [(0.3, 12, 0.1), (0.8, 10, 0.05), (1.2, 6, 0.2)]:
        for sides, word in [("larger", "one"), ("two-sided", "two")]:
            row("power", f"one {word} {alpha} {difference} {n}", TTestPower().power(difference, n, alpha, alternative=sides))
            row("power", f"two {word} {alpha} {difference} {n}", TTestIndPower().power(difference, n, alpha, alternative=sides))


# ── BCa: the same resamples for both, so the limits must agree to the last digits ──

def resamples():
    for name, y, x in samples():
        done = scipy.stats.bootstrap(
            (y, x), lambda y, x: y.sum() / x.sum(), n_resamples=599, paired=True, vectorized=False,
            confidence_level=0.9, method="BCa", rng=np.random.default_rng(20260101))
        row("bca draws", name, *done.bootstrap_distribution)
        row("bca interval", f"{name} 0.9", *done.confidence_interval)


# ── t intervals with effective degrees of freedom, by the formulas as the engine states them ──

def effective():
    for name, y, x in samples():
        n, p = len(y), y.sum() / x.sum()
        error = np.sqrt(n * np.mean((y - p * x) ** 2) * n / (n - 1)) / x.sum()
        df = max(x.sum() ** 2 / (x ** 2).sum() - 1, 1)
        scales = {
            "log-t": (np.log, np.exp, error / p, error / p),
            "logit-t": (scipy.special.logit, scipy.special.expit, error / p / (1 - p), error * (1 - 2 * p) / p / (1 - p)),
        }
        for scale, (there, back, step, waver) in scales.items():
            for confidence in [0.8, 0.9, 0.95]:
                reach = scipy.stats.t.ppf((1 + confidence) / 2, 2 / (2 / df + waver ** 2)) * step
                row(f"{scale} effective", f"{name} {confidence}", back(there(p) - reach), back(there(p) + reach))


# ── change between two visits, trend ──

def visits():
    for line in (HERE / "visits.txt").read_text().splitlines():
        if not line.startswith("#"):
            name, earlier, later, lengths = (cell.strip() for cell in line.split("|"))
            lengths = None if lengths == "-" else np.array(lengths.split(), float)
            yield name, np.array(earlier.split(), float), np.array(later.split(), float), lengths


def signs(differences):
    """Share of all ways to give the signs that are as far from zero, counted with whole numbers."""
    whole = np.rint(differences * 1000).astype(np.int64)
    sums = np.zeros(1, np.int64)
    for one in whole:
        sums = np.concatenate([sums + one, sums - one])
    return np.mean(np.abs(sums) >= abs(whole.sum()))


def changes():
    for name, earlier, later, lengths in visits():
        if lengths is None:
            test = scipy.stats.ttest_ind(later, earlier, equal_var=False)
            row("unpaired", name, later.mean() - earlier.mean(), test.statistic, test.df, test.pvalue)
            continue
        if np.ptp(lengths) > 0:
            # the delta method on the two ratios, written out
            r1, r2 = earlier.sum() / lengths.sum(), later.sum() / lengths.sum()
            z = (later - r2 * lengths - earlier + r1 * lengths) / lengths.mean()
            row("paired", name, r2 - r1, (r2 - r1) / (z.std(ddof=1) / len(z) ** 0.5), len(z) - 1)
            continue
        differences = (later - earlier) / lengths
        test = scipy.stats.ttest_rel(later / lengths, earlier / lengths)
        row("paired", name, differences.mean(), test.statistic, test.df)
        row("paired p", name, test.pvalue)
        row("signs", name, signs(later - earlier))
        margin = 0.05
        lower = scipy.stats.ttest_1samp(differences, -margin, alternative="greater").pvalue
        upper = scipy.stats.ttest_1samp(differences, margin, alternative="less").pvalue
        row("equivalence", f"{name} {margin}", max(lower, upper))


def trends():
    rng = np.random.default_rng(20260102)
    for n in [4, 6, 9, 12]:
        years = 2000.0 + np.cumsum(rng.integers(1, 4, n))
        cover = np.round(0.2 + 0.01 * (years - 2000) + rng.normal(0, 0.05, n), 4)
        told = " ".join(repr(float(x)) for pair in zip(years, cover) for x in pair)
        tau = scipy.stats.kendalltau(years, cover, method="exact")
        row("kendall", told, tau.statistic * n * (n - 1) / 2, tau.pvalue)
        row("slope", told, scipy.stats.theilslopes(cover, years).slope)


def trends_that_hang_together():
    import pymannkendall

    rng = np.random.default_rng(20260105)
    for n, memory in [(10, 0.0), (16, 0.7), (24, 0.8), (30, 0.5)]:
        swing = [0.0]
        for step in rng.normal(0, 0.03, n - 1):
            swing.append(memory * swing[-1] + step)
        cover = np.round(0.2 + 0.004 * np.arange(n) + np.array(swing), 4)
        test = pymannkendall.hamed_rao_modification_test(cover, alpha=0.05)
        row("hanging together", " ".join(repr(float(x)) for x in cover), test.z, test.p, test.var_s)


# ── readers of the same lines: a two-way table taken apart by least squares, intervals from SciPy's F ──

def readers():
    from statsmodels.formula.api import ols
    from statsmodels.stats.anova import anova_lm
    import pandas

    rng = np.random.default_rng(20260103)
    for n, k in [(4, 2), (6, 3), (10, 4)]:
        table = np.round(rng.uniform(0.05, 0.4, n)[:, None] * rng.uniform(0.85, 1.2, (n, k)), 3)
        long = pandas.DataFrame([(i, j, table[i, j]) for i in range(n) for j in range(k)], columns=["line", "reader", "y"])
        two = anova_lm(ols("y ~ C(line) + C(reader)", long).fit())
        b, j, e = two["mean_sq"]
        w = anova_lm(ols("y ~ C(line)", long).fit())["mean_sq"].iloc[1]
        f = lambda df1, df2: scipy.stats.f.ppf(0.95, df1, df2)
        told = f"{n} {k} " + " ".join(repr(float(x)) for x in table.flatten())
        for form, ratio, df in [("one-way", b / w, n * (k - 1)), ("consistency", b / e, (n - 1) * (k - 1))]:
            low, high = ratio / f(n - 1, df), ratio * f(df, n - 1)
            row("reliability", f"{form} {told}", *[(x - 1) / (x + k - 1) for x in (ratio, low, high)])
        icc = (b - e) / (b + (k - 1) * e + k * (j - e) / n)
        # McGraw and Wong 1996, table 7, with their a and b
        p, q = k * icc / (n * (1 - icc)), 1 + k * icc * (n - 1) / (n * (1 - icc))
        df = (p * j + q * e) ** 2 / ((p * j) ** 2 / (k - 1) + (q * e) ** 2 / ((n - 1) * (k - 1)))
        lower, upper = f(n - 1, df), f(df, n - 1)
        rest = k * j + (k * n - k - n) * e
        row("reliability", f"agreement {told}", icc, n * (b - lower * e) / (lower * rest + n * b), n * (upper * b - e) / (rest + n * upper * b))


for part in [quantiles, noncentral, intervals, power, resamples, effective, changes, trends, trends_that_hang_together, readers]:
    part()
pathlib.Path(sys.argv[1]).write_text("".join(line + "\n" for line in rows))
