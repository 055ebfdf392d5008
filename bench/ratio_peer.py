#!/usr/bin/env python3
"""BCa limits of ratios of sums, SciPy's own loop: ratio_peer.py DATA RUNS WARM [OUT]
The lines of DATA/t3.csv taken as 30, 50 and 20 m long in turn; one JSON line with the seconds of each run."""
import json
import sys
import time
from pathlib import Path
import numpy as np
from scipy import stats

data, runs, warm = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
SITES = 2000
cover = np.loadtxt(Path(data) / "t3.csv", delimiter=",")[:SITES]
length = np.resize([30.0, 50.0, 20.0], cover.shape[1])


def ratio(intercept, length, axis=-1):
    return intercept.sum(axis=axis) / length.sum(axis=axis)


def limits():
    rng = np.random.default_rng(1)
    out = []
    for row in cover / 100 * length:
        ends = stats.bootstrap((row, length), ratio, paired=True, vectorized=True, n_resamples=10_000,
                               confidence_level=0.95, method="BCa", rng=rng).confidence_interval
        out.append((ends.low, ends.high))
    return np.array(out)


times = []
for run in range(runs + warm):
    begun = time.perf_counter()
    found = limits()
    if run >= warm:
        times.append(round(time.perf_counter() - begun, 6))
print(json.dumps(dict(task="T3", peer="scipy_ratio_loop", size=f"{SITES} sites", times=times)))
if len(sys.argv) > 4:
    Path(sys.argv[4]).mkdir(parents=True, exist_ok=True)
    with open(Path(sys.argv[4]) / "ci.csv", "w") as out:
        out.write("site,mean,lo,hi\n")
        value = (cover * length).sum(1) / length.sum()
        for site, (mean, (low, high)) in enumerate(zip(value, 100 * found), 1):
            out.write(f"{site},{mean!r},{low!r},{high!r}\n")
