#!/usr/bin/python3
"""A plain reference for the load per leg, with numpy and scipy (Debian: python3-scipy).

The straightforward way: zero from the empty plate before and after, a zero-phase Butterworth low-pass, feet found from the centre of
pressure, two feet on a plate told apart by force and moment, one straight heel-to-toe travel for all, stride time and its even change
by least squares over all contacts and lifts. It shares nothing with the product but the physics.

Usage: gait_reference.py INDEX.json SAMPLES.f32 ANSWER.json
INDEX: hz, length (m), cells [{left, x}], counts (samples of each recording). SAMPLES: for each recording cell after cell, float32, kg.
ANSWER: a list; null where a crossing is refused, else share, peak (kg), stance (s) by leg lf rf lh rh, weight (kg), stride (s).
"""

import json
import sys

import numpy as np
from scipy import signal

TRAVEL = 0.045  # metres from heel to toe over a stance
SPOT = 0.3      # feet nearer than this stand on one spot
LEGS = ("lf", "rf", "lh", "rh")


def plates(cells, hz, geometry):
    """Force and moment of the left and the right plate, smoothed."""
    n = cells.shape[1]
    edge = int(0.4 * hz)
    before, after = cells[:, :edge].mean(axis=1), cells[:, -edge:].mean(axis=1)
    loads = cells - (before[:, None] + np.linspace(0, 1, n) * (after - before)[:, None])
    sos = signal.butter(2, min(12.0, 0.4 * hz), fs=hz, output="sos")
    for left in (True, False):
        rows = [k for k, cell in enumerate(geometry) if cell["left"] == left]
        force = loads[rows].sum(axis=0)
        moment = (loads[rows] * np.array([geometry[k]["x"] for k in rows])[:, None]).sum(axis=0)
        yield signal.sosfiltfilt(sos, force), signal.sosfiltfilt(sos, moment)


def segments(force, hz, on):
    """Loaded stretches, cut where the load falls to less than half of the peaks beside (one foot follows another on the spot)."""
    loaded = np.flatnonzero(np.diff(np.concatenate(([0], (force > on).astype(int), [0]))))
    for start, end in zip(loaded[::2], loaded[1::2]):
        if end - start < 0.08 * hz or force[start:end].max() < 3 * on:
            continue
        cuts = [start]
        dips, about = signal.find_peaks(-force[start:end], prominence=0.1 * force.max())
        for dip in dips:
            beside = min(force[start:start + dip].max(), force[start + dip:end].max())
            if force[start + dip] < 0.5 * beside:
                cuts.append(start + dip)
        cuts.append(end)
        yield from ((a, b, a != start, b != end) for a, b in zip(cuts[:-1], cuts[1:]))


def find_feet(force, moment, hz, on):
    """Feet of a plate in order: dictionaries with rough contact, lift and place."""
    feet = []
    for start, end, swapped_in, swapped_out in segments(force, hz, on):
        inside = np.arange(start, end)
        inside = inside[force[inside] > 0.15 * force[start:end].max()]
        x = moment[inside] / force[inside]
        part = max(2, int(0.12 * hz))
        first, last = np.median(x[:part]), np.median(x[-part:])
        if last - first > 0.5:
            # A hind foot hands over to the fore foot a stride ahead, while the centre of pressure runs between the two.
            leave = inside[np.flatnonzero(x < first + 0.15 * (last - first))[-1]]
            come = inside[np.flatnonzero(x > last - 0.15 * (last - first))[0]]
            feet.append(dict(contact=start, lift=come, x=first, fore=False, next_shares=True, swapped=swapped_in))
            feet.append(dict(contact=leave, lift=end, x=last, fore=True, next_shares=False, swapped=swapped_out))
        elif abs(last - first) > 0.2:
            return None
        else:
            feet.append(dict(contact=start, lift=end, x=np.median(x), fore=None, next_shares=False, swapped=swapped_in or swapped_out))
    for k, foot in enumerate(feet):
        if foot["fore"] is None:
            follows = k + 1 < len(feet) and abs(feet[k + 1]["x"] - foot["x"]) < SPOT
            goes_before = k > 0 and abs(feet[k - 1]["x"] - foot["x"]) < SPOT
            if follows == goes_before:
                return None
            foot["fore"] = follows
    return feet


def crossing_time(values, inside, step, low, high):
    """Where a force going from inside by step reaches zero, by the straight line through two marks; None if it never falls so far."""
    marks = {}
    i = inside
    while 0 < i < len(values) - 1:
        i += step
        for name, mark in (("high", high), ("low", low)):
            if name not in marks and values[i] < mark:
                a, b = values[i], values[i - step]
                marks[name] = i - step * (mark - a) / (b - a) if b > a else i
        if "low" in marks:
            return marks["low"] + step * 0.5 * min(abs(marks["low"] - marks["high"]), 10)
    return None


def split(force, moment, feet, hz):
    """Contact, lift and force over time of every foot of a plate."""
    top = force.max()
    low, high = max(2.0, 0.015 * top), max(6.0, 0.06 * top)
    t = np.arange(len(force))

    def at(foot):
        phase = np.clip((t - foot["contact"]) / max(1, foot["lift"] - foot["contact"]), 0, 1)
        return foot["x"] + TRAVEL * (phase - 0.5)

    for _ in range(3):
        for k, foot in enumerate(feet):
            alone_from = max(foot["contact"], feet[k - 1]["lift"]) if k > 0 else foot["contact"]
            alone_to = min(foot["lift"], feet[k + 1]["contact"]) if k + 1 < len(feet) else foot["lift"]
            alone = t[int(alone_from + 0.04 * hz):int(alone_to - 0.04 * hz)]
            alone = alone[force[alone] > 0.15 * top]
            if len(alone) > 2:
                foot["x"] = np.average(moment[alone] / force[alone] - (at(foot) - foot["x"])[alone], weights=force[alone] ** 2)
        for k, foot in enumerate(feet):
            foot["force"] = np.where((t >= foot["contact"] - 0.04 * hz) & (t <= foot["lift"] + 0.04 * hz), force, 0.0)
        for k in range(len(feet) - 1):
            one, two = feet[k], feet[k + 1]
            if one["next_shares"]:
                ahead = (moment - force * at(one)) / np.maximum(0.3, at(two) - at(one))
                both = (t >= two["contact"]) & (t <= one["lift"])
                middle = int(0.5 * (two["contact"] + one["lift"]))
                contact = crossing_time(ahead, middle, -1, low, high)
                lift = crossing_time(force - ahead, middle, 1, low, high)
                two["contact"] = contact if contact is not None else two["contact"]
                one["lift"] = lift if lift is not None else one["lift"]
                both = (t >= two["contact"]) & (t <= one["lift"])
                one["force"] = np.where(both, force - ahead, np.where(t > one["lift"], 0, one["force"]))
                two["force"] = np.where(both, ahead, np.where(t < two["contact"], 0, two["force"]))
            elif abs(two["contact"] - one["lift"]) < 2:
                # One after the other on the spot: cut at the lowest load.
                cut = one["lift"]
                one["force"] = np.where(t < cut, one["force"], 0)
                two["force"] = np.where(t >= cut, two["force"], 0)
        for k, foot in enumerate(feet):
            middle = int(0.5 * (foot["contact"] + foot["lift"]))
            if not (k > 0 and feet[k - 1]["next_shares"]) and not (k > 0 and abs(feet[k - 1]["lift"] - foot["contact"]) < 2):
                foot["contact"] = crossing_time(force, int(foot["contact"] + 0.15 * hz), -1, low, high) or foot["contact"]
            if not foot["next_shares"] and not (k + 1 < len(feet) and abs(feet[k + 1]["contact"] - foot["lift"]) < 2):
                foot["lift"] = crossing_time(force, int(foot["lift"] - 0.15 * hz), 1, low, high) or foot["lift"]
            if foot["lift"] - foot["contact"] < 0.2 * hz or middle <= 0:
                return False
    return True


def stride_times(feet, hz):
    """Stride time at every foot: t = a + T n + c n^2 over contacts and lifts of fore and hind, left and right half a stride apart."""
    guess = np.median([f["lift"] - f["contact"] for f in feet]) / hz / 0.66
    groups = {}
    for foot in feet:
        for event in ("contact", "lift"):
            groups.setdefault((foot["fore"], event), []).append((foot[event] / hz, foot))
    origin = np.mean([f["contact"] for f in feet]) / hz
    rows, times = [], []
    for g, (key, events) in enumerate(sorted(groups.items())):
        events.sort(key=lambda e: e[0])
        base, ref = events[0][0], events[0][1]["left"]
        for time, foot in events:
            half = 0.0 if foot["left"] == ref else 0.5
            number = round((time - base) / guess - half) + half
            row = np.zeros(len(groups) + 2)
            row[g], row[-2], row[-1] = 1, number, ((time - origin) / guess) ** 2
            rows.append(row)
            times.append(time - origin)
    # A mild prior against change: two steps a stride cannot tell much of it.
    rows.append(np.concatenate((np.zeros(len(groups) + 1), [0.005 / (0.04 * guess)])))
    times.append(0)
    solution = np.linalg.lstsq(np.array(rows), np.array(times), rcond=None)[0]
    residual = np.array(rows) @ solution - np.array(times)
    stride, change = solution[-2:]
    return [stride + 2 * change * ((f["contact"] + f["lift"]) / 2 / hz - origin) / guess for f in feet], np.sqrt(np.mean(residual ** 2))


def measure(cells, hz, length, geometry):
    feet = []
    for left, (force, moment) in zip((True, False), plates(cells, hz, geometry)):
        on = max(4.0, 0.015 * force.max())
        found = find_feet(force, moment, hz, on)
        if not found or not split(force, moment, found, hz):
            return None
        for foot in found:
            foot["left"] = left
        feet += found
    feet = [f for f in feet if 0.07 < f["x"] < length - 0.07]
    if not feet:
        return None
    strides, scatter = stride_times(feet, hz)
    if scatter > 0.06 or min(strides) < 0.5 or max(strides) > 4:
        return None
    by_leg = {leg: [] for leg in LEGS}
    for foot, stride in zip(feet, strides):
        leg = ("l" if foot["left"] else "r") + ("f" if foot["fore"] else "h")
        by_leg[leg].append((foot["force"].sum() / hz / stride, foot["force"].max(), (foot["lift"] - foot["contact"]) / hz))
    if any(not of or max(f[2] for f in of) > 3 for of in by_leg.values()):
        return None
    loads = np.array([np.mean([f[0] for f in by_leg[leg]]) for leg in LEGS])
    if not 250 < loads.sum() < 1100 or np.any(loads <= 0):
        return None
    return dict(
        share=list(loads / loads.sum()), weight=loads.sum(), stride=float(np.mean(strides)),
        peak=[float(np.mean([f[1] for f in by_leg[leg]])) for leg in LEGS], stance=[float(np.mean([f[2] for f in by_leg[leg]])) for leg in LEGS])


def main():
    index = json.load(open(sys.argv[1], encoding="utf-8"))
    samples = np.fromfile(sys.argv[2], dtype="<f4").astype(float)
    at, answers = 0, []
    for count in index["counts"]:
        size = count * len(index["cells"])
        answers.append(measure(samples[at:at + size].reshape(len(index["cells"]), count), index["hz"], index["length"], index["cells"]))
        at += size
    with open(sys.argv[3], "w", encoding="ascii") as out:
        json.dump(answers, out)


main()
