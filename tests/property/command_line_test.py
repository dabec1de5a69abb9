"""Every command that says --json writes JSON, and --netlist a deck.

usage: THOLE=PROGRAM python3 command_line_test.py
"""

import json
import os
import re
import pathlib
import subprocess
import unittest

PROGRAM = os.environ.get("THOLE", "")
ROOT = pathlib.Path(__file__).resolve().parents[2]
JOB = str(ROOT / "presets" / "jobs" / "skiff-on-a-lake.json")


def said(*words):
    return subprocess.run([PROGRAM, *words], check=True, capture_output=True, text=True, timeout=120).stdout


class CommandLine(unittest.TestCase):
    def test_json_of_every_command(self):
        for command in ("rose", "hold", "day", "feeder", "loads", "plate", "protection", "sensitivity"):
            for words in ((command, JOB, "--json"), (command, "--json", JOB)):
                with self.subTest(words=words):
                    self.assertIsInstance(json.loads(said(*words)), (dict, list))

    def test_json_says_what_the_table_says(self):
        circuit = json.loads(said("feeder", JOB, "--json"))
        table = said("feeder", JOB)
        self.assertTrue(circuit["solved"])
        for branch in circuit["branches"]:
            self.assertIn(branch["label"], table)
        losses = [branch["loss_W"] for branch in circuit["branches"]]
        self.assertEqual(losses, sorted(losses, reverse=True))

    def test_netlist(self):
        self.assertIn("\n.end", said("feeder", JOB, "--netlist"))

    def test_plate_stands_still(self):
        """What bolts and deck do to the plate is the load, in every case; the table says the same figures."""
        plate = json.loads(said("plate", JOB, "--json"))
        self.assertTrue(plate["solved"])
        self.assertGreaterEqual(3 * len(plate["nodes_m"]), 1500)
        rest = plate["cases"][0]
        carried = rest["deck_N"] - sum(rest["bolt_N"])
        self.assertGreater(carried, 0.0)
        rebound = plate["cases"][1]  # its whole weight: a chock has a share of what presses it down, and holds nothing down
        thrown_up = sum(rebound["bolt_N"]) - rebound["deck_N"]
        self.assertGreater(thrown_up, carried)
        self.assertAlmostEqual(thrown_up / 9.80665, round(thrown_up / 9.80665, 1), delta=1e-5)  # a motor's kilograms
        thrusts = [case for case in plate["cases"] if case["label"].startswith("Full thrust")]
        self.assertEqual(len(thrusts), 7)
        for case in thrusts:  # a pure moment
            self.assertAlmostEqual(sum(case["bolt_N"]), case["deck_N"], delta=1e-6 * case["deck_N"])
        table = said("plate", JOB)
        for finding in plate["findings"]:
            self.assertIn(finding["label"], table)

    def test_protection(self):
        """The far short circuit is never stronger than the near one, and each finding has its line."""
        study = json.loads(said("protection", JOB, "--json"))
        faults = study["faults"]
        for end in ("least_A", "most_A"):
            self.assertGreater(faults["posts"][end], faults["plug"][end])
        self.assertLess(faults["plug"]["least_A"], faults["plug"]["most_A"])
        table = said("protection", JOB)
        for finding in study["findings"]:
            self.assertIn(finding["label"], table)

    def test_cut_file(self):
        """As many circles to drill as there are bolts, one outer contour, the end marked."""
        lines = subprocess.run([PROGRAM, "plate", JOB, "--dxf"], check=True, capture_output=True, timeout=120).stdout.decode().split("\r\n")
        pairs = list(zip(lines[0::2], lines[1::2]))
        self.assertEqual([p[1] for p in pairs].count("POLYLINE"), 1)
        bolts = json.loads(said("plate", JOB, "--json"))["bolts"]
        drilled = [i for i, p in enumerate(pairs) if p[1] == "CIRCLE" and ("8", "DRILL") in [(c.strip(), v) for c, v in pairs[i:i + 4]]]
        self.assertEqual(len(drilled), len(bolts))
        self.assertEqual(pairs[-1][1], "EOF")

    def test_drawing_and_template_are_true_to_size(self):
        """Paper in millimetres, and a viewBox of as many units."""
        for words, sizes in ((("--svg",), ((420, 297),)), (("--template", "a4"), ((210, 297), (297, 210))),
                             (("--elevation",), ((297, 210),)), (("--elevation", "--units", "us"), ((279.4, 215.9),))):
            svg = said("plate", JOB, *words)
            width, height = (float(re.search(rf'{key}="([0-9.]+)mm"', svg)[1]) for key in ("width", "height"))
            box = [float(number) for number in re.search(r'viewBox="([^"]+)"', svg)[1].split()]
            self.assertIn((width, height), sizes)
            self.assertAlmostEqual(width / height, box[2] / box[3], places=6)
        refused = subprocess.run([PROGRAM, "plate", JOB, "--template", "a4", "--tile", "99"], capture_output=True, text=True, timeout=120)
        self.assertEqual(refused.returncode, 2)
        self.assertIn("--tile", refused.stderr)


if __name__ == "__main__":
    unittest.main()
