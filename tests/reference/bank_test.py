"""The bank over a day against SciPy: the kinetic battery model (Manwell and McGowan, Solar Energy 50
(5), 1993) as a pair of differential equations, solved by SciPy's matrix exponential, and the circuit
by its root finder; volts and resistance from the printed rows of the open data of a sealed 12 V 91 Ah
module (NREL ADVISOR).

usage: THOLE_BANK_CASES=PROGRAM python3 bank_test.py

Also prints how long a day at 1 s steps takes here and there.
"""

import os
import subprocess
import time
import unittest

import numpy as np
from scipy.integrate import solve_ivp
from scipy.linalg import expm
from scipy.optimize import brentq

PROGRAM = os.environ.get("THOLE_BANK_CASES", "")

# Fit to open AGM capacities, 100, 93.2 and 58.12 Ah over 20, 10 and 1 h, to printed digits.
K, C = 0.784, 0.4474
SOC = np.linspace(0.0, 1.0, 11)
OCV = np.array([11.406, 11.730, 11.904, 12.096, 12.216, 12.384, 12.492, 12.636, 12.750, 12.918, 12.990])
R = np.array([4.570, 2.686, 2.226, 1.970, 1.843, 1.747, 1.711, 1.685, 1.697, 1.756, 1.769])

# d(y1, y2)/dt = A (y1, y2) - (I, 0); a column for the current makes a step one exponential.
A = np.array([[-K * (1 - C), K * C, -1.0], [K * (1 - C), -K * C, 0.0], [0.0, 0.0, 0.0]])


def whole_Ah(label_Ah, hours):
    """Both wells of a block that gives its label over its hours: the first well ends at zero."""
    step = expm(A * hours)
    start = np.array([C, 1 - C, 0.0])
    return label_Ah / hours * -(step @ np.array([0.0, 0.0, 1.0]))[0] / (step @ start)[0]


class Block:
    def __init__(self, capacity=1.0, charge=1.0, resistance=1.0):
        self.label = 100.0 * capacity
        self.whole = whole_Ah(self.label, 20.0)
        left = self.whole - (1 - charge) * self.label
        self.y = np.array([C * left, (1 - C) * left])
        self.ohm = 0.004 * resistance

    def soc(self):
        return 1 - (self.whole - self.y.sum()) / self.label

    def rest(self):
        return np.interp(self.soc(), SOC, OCV), self.ohm * np.interp(self.soc(), SOC, R / R[-1])


def run(steps, floor_V=10.5, feeder=0.006, every=600):
    blocks = [Block(), Block(0.8, 0.9, 1.5)]
    second = expm(A / 3600.0)
    lines = []
    for i, power in enumerate(steps):
        rests = [block.rest() for block in blocks]
        volts, ohm = sum(v for v, _ in rests), sum(r for _, r in rests)
        top = volts / (2 * (ohm + feeder))
        current = brentq(lambda a: (volts - a * (ohm + feeder)) * a - power, 0.0, top, xtol=1e-14)
        after = [second[:2, :2] @ block.y + second[:2, 2] * current for block in blocks]
        empty = [j for j, y in enumerate(after) if y[0] < 0]
        low = [j for j, (v, r) in enumerate(rests) if v - current * r < floor_V]
        if empty or low or i % every == 0:
            lines.append((i / 3600.0, current, volts - current * ohm, *(b.soc() for b in blocks)))
        if empty or low:
            return lines, i / 3600.0, (empty + low)[0]
        for block, y in zip(blocks, after):
            block.y = y
    return lines, len(steps) / 3600.0, 0


def day(hours, burst, rest):
    return [burst if i % 60 < 12 else rest for i in range(hours * 3600)]


def program(what):
    return subprocess.run([PROGRAM, what], check=True, capture_output=True, text=True).stdout


class BankTest(unittest.TestCase):
    def test_day_of_unlike_blocks(self):
        out = program("run").splitlines()
        ours = np.array([[float(x) for x in line.split()] for line in out[:-1]])
        lines, end_h, block = run(day(12, 900.0, 60.0))
        theirs = np.array(lines)
        _, ours_end_h, ours_block = out[-1].split()
        self.assertEqual(ours.shape, theirs.shape)
        worst = float(np.max(np.abs(ours[:, 1:] / theirs[:, 1:] - 1)))
        print(f"bank over a day: {len(ours)} moments, worst relative difference {worst:.1e}")
        self.assertLess(worst, 1e-6)
        self.assertLess(end_h, 12.0)  # it does cut off, by the block that is weak
        self.assertEqual((float(ours_end_h), int(ours_block)), (end_h, block))
        self.assertEqual(block, 1)

    def test_exponential_is_the_equations(self):
        """The exponential that both stand on, against SciPy's adaptive solver."""
        there = solve_ivp(lambda _, y: A[:2, :2] @ y - [25.0, 0.0], (0, 1), [48.26, 59.62],
                          rtol=1e-10, atol=1e-10).y[:, -1]
        here = (expm(A) @ [48.26, 59.62, 25.0])[:2]
        self.assertLess(float(np.max(np.abs(here / there - 1))), 1e-7)

    def test_time(self):
        ours_ms, ours_Ah = (float(x) for x in program("time").split())
        start = time.process_time()
        lines, _, _ = run(day(2, 60.0, 20.0))  # a twelfth of the day
        theirs_ms = 12e3 * (time.process_time() - start)
        print(f"a day at 1 s: {ours_ms:.2f} ms, SciPy {theirs_ms:.0f} ms, {theirs_ms / ours_ms:.0f} times")
        self.assertGreater(ours_Ah, 0.0)
        self.assertEqual(len(lines), 12)


if __name__ == "__main__":
    unittest.main()
