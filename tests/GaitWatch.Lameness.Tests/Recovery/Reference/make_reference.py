"""Reference values for the recovery of a treated foot, computed with scipy.

Run with Debian's python3-scipy (made with scipy 1.10.1, numpy 1.24.2):

    /usr/bin/python3 make_reference.py > reference.json

equivalence: two one-sided t tests of a mean against +/- band (scipy.stats.ttest_1samp, both alternatives).
fits: d(t) = dInf + (d0 - dInf) exp(-t / tau) by scipy.optimize.least_squares with Huber loss at 1.345 sd, within
the bounds d0 -20..100, dInf -5..100, tau 1..60; the best of several starting points.
The data are invented: a seeded curve plus noise, and in some cases outliers.
"""
import json
import sys

import numpy as np
from scipy import optimize, stats

rng = np.random.default_rng(20260303)


def equivalence(values, band):
    low = stats.ttest_1samp(values, -band, alternative="greater").pvalue
    high = stats.ttest_1samp(values, band, alternative="less").pvalue
    return {"values": [float(v) for v in values], "band": band, "pValue": float(max(low, high))}


def fit(name, d0, dinf, tau, days, sd, outliers=0):
    t = np.arange(1, days + 1) - 0.5
    d = dinf + (d0 - dinf) * np.exp(-t / tau) + rng.normal(0, sd, days)
    for i in rng.choice(days, outliers, replace=False):
        d[i] += rng.choice([-1, 1]) * rng.uniform(8, 15) * sd
    d = np.round(d, 4)

    def residual(p):
        return p[1] + (p[0] - p[1]) * np.exp(-t / p[2]) - d

    best = None
    for tau0 in (2, 5, 10, 20, 40):
        r = optimize.least_squares(
            residual, (float(d[0]), max(float(d[-1]), -4.9), tau0), bounds=((-20, -5, 1), (100, 100, 60)),
            loss="huber", f_scale=1.345 * sd, xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=100000)
        if best is None or r.cost < best.cost:
            best = r
    return {"name": name, "sd": sd, "days": t.tolist(), "drops": d.tolist(),
            "start": best.x[0], "end": best.x[1], "tau": best.x[2], "cost": best.cost}


def plain(days, sd):
    """Without outliers the robust fit is least squares, whose covariance curve_fit gives."""
    t = np.arange(1, days + 1) - 0.5
    d = np.round(1 + 14 * np.exp(-t / 8) + np.clip(rng.normal(0, sd, days), -1.2 * sd, 1.2 * sd), 4)

    def curve(x, a, b, tau):
        return b + (a - b) * np.exp(-x / tau)

    p, cov = optimize.curve_fit(curve, t, d, p0=(15, 1, 8), ftol=1e-15, xtol=1e-15, gtol=1e-15)
    scale = np.sqrt(np.sum((curve(t, *p) - d) ** 2) / (days - 3))
    x = t[-1]
    e = np.exp(-x / p[2])
    g = np.array([e, 1 - e, (p[0] - p[1]) * e * x / p[2] ** 2])
    half = stats.t.ppf(0.975, days - 3) * np.sqrt(g @ cov @ g)
    return {"sd": sd, "days": t.tolist(), "drops": d.tolist(), "start": p[0], "end": p[1], "tau": p[2],
            "residualScale": float(scale), "halfWidthAtLast": float(half)}


json.dump({
    "equivalence": [
        equivalence(np.round(rng.normal(mean, sd, n), 3), band)
        for mean, sd, n, band in ((0, 2, 7, 4), (1.5, 2, 7, 4), (-3, 1, 7, 2), (0.2, 0.7, 7, 1.4), (0, 2.5, 14, 5), (4, 2, 7, 4), (0, 1, 2, 2))
    ],
    "fits": [
        fit("plain", 15, 1, 7, 35, 1.5),
        fit("slow", 18, 4, 15, 60, 2.0),
        fit("outliers", 17, 0, 6, 40, 1.0, outliers=5),
        fit("short", 12, 2, 4, 14, 1.0, outliers=1),
        fit("quick", 20, 0, 2.5, 21, 1.5, outliers=2),
    ],
    "plain": plain(40, 1.2),
}, sys.stdout, indent=1)
print()
