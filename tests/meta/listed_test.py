"""What is not listed in a CMakeLists.txt is neither built nor tested: every source must be."""

import pathlib
import re
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]


class Listed(unittest.TestCase):
    def check(self, folder, lists):
        listed = set(re.findall(r"[\w/]+\.cpp", lists.read_text()))
        there = {path.relative_to(lists.parent).as_posix() for path in (ROOT / folder).rglob("*.cpp")}
        self.assertEqual(there - listed, set())

    def test_sources(self):
        self.check("src", ROOT / "CMakeLists.txt")
        self.check("web", ROOT / "CMakeLists.txt")

    def test_tests(self):
        self.check("tests", ROOT / "tests/CMakeLists.txt")


if __name__ == "__main__":
    unittest.main()
