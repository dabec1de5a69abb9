"""Every command that says --json writes JSON, and --netlist a deck.

usage: THOLE=PROGRAM python3 command_line_test.py
"""

import json
import os
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
        for command in ("rose", "hold", "day", "feeder", "sensitivity"):
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


if __name__ == "__main__":
    unittest.main()
