#!/usr/bin/python3
"""Reference values for the low-pass, computed with scipy.signal (Debian: python3-scipy).

Run in this folder: /usr/bin/python3 filter_reference.py
Writes filter_reference.json. The seed is fixed; the numbers are printed with all their digits.
"""

import json

import numpy as np
import scipy
from scipy import signal

ORDER = 2
CUT_OFF_HZ = 10.0

# Cut-off of one pass so that both together are at half power at CUT_OFF_HZ:
# |H|^4 = 1/2 for a Butterworth of this order, solved here by bisection rather than by the closed form.
def pass_cut_off(cut_off_hz):
    low, high = cut_off_hz, 10 * cut_off_hz
    for _ in range(200):
        middle = 0.5 * (low + high)
        power_of_both = (1 / (1 + (cut_off_hz / middle) ** (2 * ORDER))) ** 2
        low, high = (middle, high) if power_of_both < 0.5 else (low, middle)
    return 0.5 * (low + high)


def main():
    rng = np.random.default_rng(20260302)
    single = pass_cut_off(CUT_OFF_HZ)
    cases = []
    for hz in (50.0, 100.0, 200.0, 250.0):
        b, a = signal.butter(ORDER, single, fs=hz)
        t = np.arange(int(4 * hz)) / hz
        x = 350 * np.clip(np.sin(np.pi * (t - 1) / 0.9), 0, None) * (t < 1.9) + rng.normal(0, 0.7, t.size)
        y = signal.sosfiltfilt(signal.butter(ORDER, single, fs=hz, output="sos"), x, padtype="odd", padlen=3 * (ORDER + 1))
        cases.append({"hz": hz, "b": b.tolist(), "a": a.tolist(), "x": x.tolist(), "y": y.tolist()})
    with open("filter_reference.json", "w", encoding="ascii") as out:
        json.dump({"scipy": scipy.__version__, "cutOffHz": CUT_OFF_HZ, "passHz": single, "cases": cases}, out)
        out.write("\n")


main()
