"""Arrows between the folders of src/ point one way, and the core cannot reach outside itself."""

import pathlib
import re
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
SRC = ROOT / "src"
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.M)

# What each folder may know besides itself.
KNOWS = {
    "base": set(),
    "data": {"base"},
    "job": {"base", "data"},
    "calc": {"base", "data", "job"},
    "find": {"base", "data", "job", "calc"},
    "io": {"base", "data", "job", "calc", "find"},
    "draw": {"base", "data", "job", "calc", "find", "io"},
    "papers": {"base", "data", "job", "calc", "find", "io", "draw"},
    "ui": {"base", "data", "job", "calc", "find", "io", "draw", "papers"},
    "cli": {"base", "data", "job", "calc", "find", "io", "draw", "papers"},
}
CORE = ("base", "data", "job", "calc")
# Files, clocks, threads and the screen, as seen from the core; and what some compiler lacks.
OUTSIDE = re.compile(
    r"^(imgui|nlohmann|GLFW|GLES|emscripten|iostream|fstream|sstream|filesystem|chrono"
    r"|ctime|thread|mutex|atomic|random|regex|locale|format|ranges|expected|source_location"
    r"|stdexcept)\b")


def includes(path):
    return [(mark == '"', name) for mark, name in INCLUDE.findall(path.read_text())]


def files(*folders):
    for folder in folders:
        yield from sorted(p for p in (SRC / folder).rglob("*") if p.suffix in (".h", ".cpp"))


class Layering(unittest.TestCase):
    def test_arrows_point_one_way(self):
        for path in files(*KNOWS):
            folder = path.relative_to(SRC).parts[0]
            for own, name in includes(path):
                if own and "/" in name:
                    self.assertIn(name.split("/")[0], KNOWS[folder] | {folder},
                                  f"{path.relative_to(ROOT)} includes {name}")

    def test_every_folder_has_its_place(self):
        self.assertEqual({p.name for p in SRC.iterdir() if any(p.iterdir())} - set(KNOWS), set())

    def test_own_headers_are_named_from_src(self):
        for path in files(*KNOWS):
            for own, name in includes(path):
                if own:
                    self.assertTrue((SRC / name).is_file(),
                                    f"{path.relative_to(ROOT)}: {name} is not a path from src/")

    def test_the_core_reaches_for_nothing_outside(self):
        for path in files(*CORE):
            for _, name in includes(path):
                self.assertIsNone(OUTSIDE.match(name), f"{path.relative_to(ROOT)} includes {name}")

    def test_the_core_neither_throws_nor_calls_the_system(self):
        for path in files(*CORE):
            code = re.sub(r"//.*", "", path.read_text())
            for words in (r"\bthrow\b", r"\bcatch\s*\(", r"\b(printf|fopen|getenv|time|rand)\s*\("):
                self.assertIsNone(re.search(words, code), f"{path.relative_to(ROOT)}: {words}")

    def test_a_stage_knows_no_other_stage(self):
        for path in files("calc"):
            parts = path.relative_to(SRC / "calc").parts
            if len(parts) < 2:
                continue  # design.h runs them all
            for _, name in includes(path):
                where = f"{path.relative_to(ROOT)} includes {name}"
                if name.startswith("calc/"):  # its own folder, or what several stages share
                    self.assertNotIn(name, ("calc/design.h", "calc/outputs.h"), where)
                    if name.count("/") > 1:
                        self.assertEqual(name.split("/")[1], parts[0], where)
                self.assertFalse(name.startswith("job/"), where)

    def test_json_only_in_io_sources(self):
        for path in files(*KNOWS):
            if path.suffix == ".cpp" and path.parent == SRC / "io":
                continue
            for _, name in includes(path):
                self.assertFalse(name.startswith("nlohmann"), path.relative_to(ROOT))

    def test_imgui_only_in_ui(self):
        for path in files(*(set(KNOWS) - {"ui"})):
            for _, name in includes(path):
                self.assertFalse(name.startswith("imgui"), path.relative_to(ROOT))


if __name__ == "__main__":
    unittest.main()
