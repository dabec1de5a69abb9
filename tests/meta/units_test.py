"""A quantity's name ends in its unit; the rule itself is tools/check_units.py."""

import pathlib
import sys
import tempfile
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tools"))
import check_units  # noqa: E402


class Units(unittest.TestCase):
    def test_every_field_ends_in_its_unit(self):
        self.assertEqual(check_units.nameless(ROOT / "src"), [])

    def test_the_rule_bites(self):
        with tempfile.TemporaryDirectory() as folder:
            header = pathlib.Path(folder) / "a.h"
            header.write_text("struct A {\n  double length = 0.0;\n  double run_m = 0.0;\n"
                              "  Given<double> depth{};\n  double load_N_per_m{};\n};\n")
            names = [name for _, name in check_units.nameless(pathlib.Path(folder))]
            self.assertEqual(names, ["length", "depth"])


if __name__ == "__main__":
    unittest.main()
