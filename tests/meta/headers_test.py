"""Each header compiles by itself, so that none leans on what its neighbour happened to include."""

import concurrent.futures
import os
import pathlib
import shutil
import subprocess
import unittest

ROOT = pathlib.Path(__file__).resolve().parents[2]
IMGUI = ROOT / "build/deps/imgui"
EIGEN = "/usr/include/eigen3"


def compile_alone(header):
    command = [shutil.which("g++") or "c++", "-std=c++20", "-fsyntax-only", "-Wall", "-Wextra",
               f"-I{ROOT / 'src'}", f"-isystem{IMGUI}", f"-isystem{EIGEN}", "-include", str(header), "-x", "c++",
               os.devnull]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    return header, done.returncode, done.stderr


class Headers(unittest.TestCase):
    def test_each_compiles_alone(self):
        headers = sorted((ROOT / "src").rglob("*.h"))
        if not IMGUI.is_dir():
            headers = [h for h in headers if "ui" not in h.parts]
        self.assertGreater(len(headers), 10)
        with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
            for header, code, errors in pool.map(compile_alone, headers):
                with self.subTest(header=str(header.relative_to(ROOT))):
                    self.assertEqual(code, 0, errors)

    def test_each_is_guarded(self):
        for header in (ROOT / "src").rglob("*.h"):
            self.assertIn("#pragma once", header.read_text()[:200], header)


if __name__ == "__main__":
    unittest.main()
