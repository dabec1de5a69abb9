"""Every source is defined once, used, and listed in docs/sources.md."""

import pathlib
import re
import sys
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tools"))
import make_sources  # noqa: E402


class Sources(unittest.TestCase):
    def setUp(self):
        self.sources = make_sources.all_sources()

    def test_the_list_is_current(self):
        self.assertEqual(make_sources.DOCUMENT.read_text(), make_sources.document(self.sources),
                         "run tools/make_sources.py")

    def test_ids_are_unique(self):
        ids = [source.id for source in self.sources]
        self.assertEqual(len(ids), len(set(ids)))

    def test_ids_are_kebab_case(self):
        for source in self.sources:
            self.assertRegex(source.id, r"^[a-z0-9]+(-[a-z0-9]+)*$")

    def test_each_is_used(self):
        text = "\n".join(
            path.read_text() for path in (ROOT / "src").rglob("*")
            if path.suffix in (".h", ".cpp") and not make_sources.is_source_header(path))
        for source in self.sources:
            self.assertRegex(text, rf"\b{source.name}\b", f"{source.name} is used nowhere")

    def test_none_is_defined_elsewhere(self):
        for path in (ROOT / "src").rglob("*"):
            if path.suffix in (".h", ".cpp") and not make_sources.is_source_header(path):
                self.assertIsNone(re.search(r"\bSource\s*\w*\s*\{\s*\.id", path.read_text()), path)


if __name__ == "__main__":
    unittest.main()
