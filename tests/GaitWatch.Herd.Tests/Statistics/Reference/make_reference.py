"""Reference values for the herd's statistics.

Run with Debian's python3-scipy (made with scipy 1.10.1, numpy 1.24.2):

    /usr/bin/python3 make_reference.py > reference.json

wilson: scipy.stats.binomtest(...).proportion_ci(method="wilson").
scan: probability of at least k events of a Poisson process in some window of unit length within a time of L windows,
by simulation; error is one standard error of the simulation.
"""
import json
import sys

import numpy as np
from scipy import stats

rng = np.random.default_rng(19820301)


def wilson(count, of, confidence):
    ci = stats.binomtest(count, of).proportion_ci(confidence, method="wilson")
    return {"count": count, "of": of, "confidence": confidence, "lower": ci.low, "upper": ci.high}


def scan(k, psi, windows, runs):
    hits = 0
    for _ in range(runs):
        t = np.sort(rng.uniform(0, windows, rng.poisson(psi * windows)))
        if len(t) >= k and np.any(t[k - 1:] - t[:len(t) - k + 1] <= 1):
            hits += 1
    p = hits / runs
    return {"count": k, "expectedInWindow": psi, "windows": windows, "p": p, "error": float(np.sqrt(max(p, 1 / runs) * (1 - p) / runs))}


json.dump({
    "wilson": [wilson(*case) for case in (
        (81, 263, 0.95), (15, 148, 0.95), (0, 20, 0.95), (1, 29, 0.95), (20, 20, 0.95), (3, 7, 0.99), (500, 1000, 0.9),
        (11, 45, 0.95), (14, 39, 0.95), (12, 42, 0.95), (23, 41, 0.95))],
    "scan": [scan(*case, 200000) for case in (
        (3, 0.2, 6), (4, 0.5, 10), (5, 1.1, 4), (5, 1.0, 26), (7, 1.3, 26), (3, 0.1, 26), (2, 0.05, 12), (6, 2.0, 3), (4, 0.8, 1.5))],
}, sys.stdout, indent=1)
print()
