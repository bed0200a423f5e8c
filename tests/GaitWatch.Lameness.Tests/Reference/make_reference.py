"""Reference values for GaitWatch.Lameness.Tests, computed with scipy (Debian's python3-scipy).

Run: /usr/bin/python3 make_reference.py > reference.csv
Rows: what, then numbers. Nothing here shares code with the project.
"""
import numpy as np
from scipy import stats
from scipy.spatial.distance import mahalanobis

rng = np.random.default_rng(20260301)


def row(what, *numbers):
    flat = []
    for n in numbers:
        flat += [repr(float(x)) for x in np.asarray(n, float).ravel()]
    print(",".join([what] + flat))


def covariance(scale=1.0):
    a = rng.normal(size=(3, 3))
    return scale * (a @ a.T + 0.5 * np.eye(3))


print("# scipy", __import__("scipy").__version__, "numpy", np.__version__)
# distance: vector 3, covariance 9 -> Mahalanobis distance squared
for _ in range(5):
    v, s = rng.normal(size=3), covariance()
    row("distance", v, s, mahalanobis(v, np.zeros(3), np.linalg.inv(s)) ** 2)
# ratio: surprise 3, change 3, scale 9, dof -> log density ratio of a 3-dimensional t, changed over unchanged
for dof in (3, 5, 8, 30):
    v, d, s = 2 * rng.normal(size=3), rng.normal(size=3), covariance()
    r = stats.multivariate_t.logpdf(v, d, s, dof) - stats.multivariate_t.logpdf(v, np.zeros(3), s, dof)
    row("ratio", v, d, s, dof, r)
# tail: size, dof, value -> P(log ratio <= value), four million draws
for size, dof in ((1.0, 5), (3.0, 5), (6.0, 4), (2.0, 16)):
    z = rng.normal(size=(4_000_000, 3)) / np.sqrt(rng.chisquare(dof, size=4_000_000) / dof)[:, None]
    q = (z ** 2).sum(1)
    moved = q - 2 * size * z[:, 0] + size ** 2
    ratio = (dof + 3) / 2 * np.log((dof + q) / (dof + moved))
    for value in (-2.0, -0.5, 0.0, 1.0, 3.0):
        row("tail", size, dof, value, (ratio <= value).mean())
# filter: herd mean 3, herd covariance 9, wander covariance 9, day covariance 9, noise 9, drift a day 9, kept, wander kept a day; then 7 passages (day, balances)
# -> conditional mean and covariance of the cow's mean at the last passage, by conditioning the joint normal at once
prior_mean, prior, day, noise, drift, kept = rng.normal(size=3), covariance(0.01), covariance(4e-4), covariance(1e-3), covariance(1e-5), 0.3
wander, roam = 3e-4 * np.eye(3) + 1e-4, 0.8
days = np.array([0, 0, 1, 1, 1, 3, 4])
y = rng.normal(size=(7, 3)) * 0.05 + prior_mean
n = len(days)
joint = np.zeros((3 * n, 3 * n))
cross = np.zeros((3, 3 * n))
for i in range(n):
    for j in range(n):
        block = prior + min(days[i], days[j]) * drift + roam ** abs(days[i] - days[j]) * wander + kept ** abs(days[i] - days[j]) * day + (noise if i == j else 0)
        joint[3 * i:3 * i + 3, 3 * j:3 * j + 3] = block
    cross[:, 3 * i:3 * i + 3] = prior + days[i] * drift
gain = cross @ np.linalg.inv(joint)
mean = prior_mean + gain @ (y - prior_mean).ravel()
cov = prior + days[-1] * drift - gain @ cross.T
row("filter", prior_mean, prior, wander, day, noise, drift, kept, roam, np.column_stack([days, y]), mean, cov)
# balances: shares 4 -> fore-hind, fore, hind by projection of the centred log-ratio on an orthonormal basis (Egozcue 2003)
basis = np.array([[1, 1, -1, -1], [np.sqrt(2), -np.sqrt(2), 0, 0], [0, 0, np.sqrt(2), -np.sqrt(2)]]) / 2
for _ in range(4):
    s = rng.dirichlet([30, 30, 25, 25])
    row("balances", s, basis @ (np.log(s) - np.log(s).mean()))
# drop: balances before 3, now 3, covariance 9, leg -> percent by the shares themselves
for leg in range(4):
    before, now = np.array([0.2, 0.02, -0.03]), np.array([0.2, 0.02, -0.03]) + 0.1 * rng.normal(size=3)
    share = lambda b: np.exp(basis.T @ b) / np.exp(basis.T @ b).sum()
    row("drop", before, now, leg, 100 * (1 - share(now)[leg] / share(before)[leg]))
# huber: edge 1, weight of no movement, then ten values and their variances, all at least their mean's floor -> location (score equation by brentq), mean of the variances last
from scipy.optimize import brentq
rng = np.random.default_rng(20260302)
for held in (0.0, 4000.0, 40000.0):
    values, variances = 0.03 * rng.standard_t(3, size=10) + 0.01, np.full(10, 0.0012)
    variances[:5] *= 1.5
    floor = np.maximum(variances, variances.mean())
    score = lambda m: (np.clip((values - m) / np.sqrt(floor), -1, 1) / np.sqrt(floor)).sum() - held * m
    row("huber", held, values, variances, brentq(score, -1, 1, xtol=1e-14))
