"""Circuits of every shape against ngspice, run on the decks that the product writes.

usage: THOLE_NETWORK_CASES=PROGRAM python3 network_test.py
"""

import os
import re
import subprocess
import tempfile
import time
import unittest

PROGRAM = os.environ.get("THOLE_NETWORK_CASES", "")


def ours(*words):
    return subprocess.run([PROGRAM, *words], check=True, capture_output=True, text=True).stdout


def spice(deck):
    """Values in the order of the deck's prints."""
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as file:
        file.write(deck)
        file.flush()
        run = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True, check=False)
    values = [float(value) for value in re.findall(r"^[vi]\(\w+\) = (\S+)$", run.stdout, re.M)]
    assert values, run.stdout + run.stderr
    return values


class Circuits(unittest.TestCase):
    def test_every_circuit_to_a_millionth(self):
        count = int(ours("count"))
        worst = 0.0
        for k in range(count):
            theirs = spice(ours("deck", str(k)))
            mine = [float(line) for line in ours("solve", str(k)).split()]
            self.assertEqual(len(mine), len(theirs))
            volts = sum(1 for line in ours("deck", str(k)).splitlines() if line.startswith("print v"))
            for part in (slice(0, volts), slice(volts, None)):
                scale = max(abs(value) for value in theirs[part])
                off = max(abs(a - b) for a, b in zip(mine[part], theirs[part])) / scale
                worst = max(worst, off)
                self.assertLess(off, 1e-6, f"circuit {k}")
        print(f"\n  {count} circuits, largest difference over largest value {worst:.1g}")
        self.assertGreater(count, 30)

    def test_how_long_a_solve_takes(self):
        took_us, nodes = ours("time").split()
        deck = ours("deck", "8")
        quickest_s = 1e9
        for _ in range(5):
            began = time.perf_counter()
            spice(deck)
            quickest_s = min(quickest_s, time.perf_counter() - began)
        print(f"\n  the usual feeder, {nodes} nodes: {float(took_us):.1f} microseconds of 20; ngspice, the whole "
              f"process, {1e3 * quickest_s:.0f} ms ({1e6 * quickest_s / float(took_us):.0f} times)")


if __name__ == "__main__":
    unittest.main()
