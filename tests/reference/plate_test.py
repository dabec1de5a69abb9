"""Twelve bolted, overhanging plates, and three with stiffeners, against CalculiX: solids of quadratic wedges on the same triangles,
on the same springs. Which springs act is the answer that is unique when each that acts is loaded in its
own sense and each that does not stands open: asked of CalculiX's deflections. One plate it searches by
itself. Sag within 2 %, bolts within 3 %, stress away from points within 5 %, natural
frequencies within 2 %; and how long each takes. Stiffeners are bricks, fast to the plate along their
flanks, while the plate strains in its own plane as shear lag lets it: what the effective width costs is
in their bounds.

THOLE_PLATE_CASES names the program that writes the meshes (tests/reference/plate_cases.cpp).
"""
import json
import os
import re
import subprocess
import tempfile
import time
import unittest
from pathlib import Path

CASES = os.environ["THOLE_PLATE_CASES"]


def calculix(folder, name):
    start = time.perf_counter()
    subprocess.run(["ccx", "-i", name], cwd=folder, check=True, capture_output=True, timeout=120,
                   env={**os.environ, "OMP_NUM_THREADS": "1"})
    return time.perf_counter() - start


def deflections(path):
    found = {}
    for line in path.read_text().splitlines():
        cells = line.split()
        if len(cells) == 4 and cells[0].isdigit():
            found[int(cells[0])] = float(cells[3])
    return found


def moves(path):
    """Along x and y, by node."""
    rows = (line.split() for line in path.read_text().splitlines())
    return {int(cells[0]): (float(cells[1]), float(cells[2])) for cells in rows if len(cells) == 4 and cells[0].isdigit()}


def stresses(path):
    """Von Mises by node, as CalculiX averages it."""
    found, reading = {}, False
    for line in path.read_text().splitlines():
        if line.startswith(" -4"):
            reading = "STRESS" in line
        elif line.startswith(" -3"):
            reading = False
        elif reading and line.startswith(" -1"):
            xx, yy, zz, xy, yz, zx = (float(line[13 + 12 * k:25 + 12 * k]) for k in range(6))
            found[int(line[3:13])] = (0.5 * ((xx - yy) ** 2 + (yy - zz) ** 2 + (zz - xx) ** 2)
                                      + 3.0 * (xy * xy + yz * yz + zx * zx)) ** 0.5
    return found


def frequencies(path):
    return [float(row.split()[3]) for row in path.read_text().splitlines()
            if re.match(r"^\s+\d+\s+\S+E[+-]\d+\s+\S+E[+-]\d+\s+\S+E[+-]\d+\s+\S+E[+-]\d+\s*$", row)][:3]


class Plates(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        subprocess.run([CASES, cls.folder.name], check=True)
        cls.at = Path(cls.folder.name)
        cls.plates = json.loads((cls.at / "plates.json").read_text())
        cls.searched_s = calculix(cls.at, "searched")
        for plate in cls.plates:
            plate["ccx_s"] = calculix(cls.at, plate["name"])
            calculix(cls.at, plate["name"] + "_modes")
            calculix(cls.at, plate["name"] + "_level")
            plate["level"] = moves(cls.at / f"{plate['name']}_level.dat")
            plate["u"] = deflections(cls.at / f"{plate['name']}.dat")
            plate["s"] = stresses(cls.at / f"{plate['name']}.frd")
            plate["f"] = frequencies(cls.at / f"{plate['name']}_modes.dat")
        print("\nplate          nodes  sag mm (CalculiX)      bolts: worst off   stress MPa (CalculiX)   Hz (CalculiX)")
        for plate in cls.plates:
            node = plate["load_nodes"][0]
            print(f"{plate['name']:13} {plate['nodes']:6} {1e3 * plate['sag_m'][node]:8.3f} ({1e3 * cls.sag(plate, node):8.3f})"
                  f" {100 * cls.bolts_off(plate):12.2f} % {1e-6 * plate['worst_stress_Pa']:14.1f} ({1e-6 * cls.peak(plate):6.1f})"
                  f" {plate['frequencies_Hz'][0]:10.2f} ({plate['f'][0]:.2f})")

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    @staticmethod
    def sag(plate, node):
        return plate["u"][1 + 3 * node + 1] / plate["load_scale"]

    @classmethod
    def bolts(cls, plate):
        return [max(0.0, plate["bolt_N_per_m"] * cls.sag(plate, node)) for node in plate["bolt_nodes"]]

    @classmethod
    def bolts_off(cls, plate):
        """The largest difference, of the most loaded bolt."""
        theirs = cls.bolts(plate)
        return max(abs(a - b) for a, b in zip(theirs, plate["bolt_N"])) / max(theirs)

    @staticmethod
    def peak(plate):
        return max(max(plate["s"][1 + 3 * i], plate["s"][3 + 3 * i])
                   for i, clear in enumerate(plate["clear"]) if clear) / plate["load_scale"]

    @classmethod
    def bar_peak(cls, plate):
        return max(plate["s"][node] for node in plate["bar_edge"]) / plate["load_scale"]

    @classmethod
    def sag_off(cls, plate):
        return max(abs(plate["sag_m"][n] / cls.sag(plate, n) - 1.0) for n in plate["load_nodes"])

    def within(self, limit, off, bars=False):
        """Every plate's difference, all plates named that exceed the limit."""
        plates = [p for p in self.plates if bool(p["bars"]) == bars]
        self.assertEqual(len(plates), 3 if bars else 12)
        self.assertEqual({p["name"]: round(off(p), 4) for p in plates if not off(p) < limit}, {})

    def test_sag(self):
        self.within(0.02, self.sag_off)

    def test_bolts(self):
        self.within(0.03, self.bolts_off)

    def test_stiffened_sag(self):
        self.within(0.04, self.sag_off, bars=True)

    def test_stiffened_bolts(self):
        self.within(0.07, self.bolts_off, bars=True)

    def test_stiffened_stress(self):
        """At the bars' free edges, and the most of plate and bars: the plate's own strain as a flange, up to a
        quarter of its stress beside a bar, is not in the plate's, and less than the bar's."""
        self.within(0.07, lambda p: abs(p["bar_stress_Pa"] / self.bar_peak(p) - 1.0), bars=True)
        self.within(0.07, lambda p: abs(max(p["worst_stress_Pa"], p["bar_stress_Pa"])
                                        / max(self.peak(p), self.bar_peak(p)) - 1.0), bars=True)

    def test_stiffened_frequency(self):
        """The first: above it CalculiX's plate, free in its own plane, swings in that."""
        self.within(0.03, lambda p: abs(p["frequencies_Hz"][0] / p["f"][0] - 1.0), bars=True)

    def test_stress_away_from_points(self):
        self.within(0.05, lambda p: abs(p["worst_stress_Pa"] / self.peak(p) - 1.0))

    def test_contact(self):
        """Bolts pull, the deck pushes, and what lets go stands clear, in CalculiX's deflections too."""
        def wrong(p):
            w = {n: self.sag(p, n) for n in p["touching"] + p["lifted"] + p["bolt_nodes"]}
            depth = max(abs(w[n]) for n in p["touching"])
            wrong_m = [w[n] for n in p["touching"]] + [-w[n] for n in p["lifted"]]
            wrong_m += [-w[n] if pull > 0 else w[n] for n, pull in zip(p["bolt_nodes"], p["bolt_N"])]
            return max(wrong_m) / depth
        self.within(0.03, wrong)
        self.within(0.03, wrong, bars=True)

    def test_contact_that_calculix_finds(self):
        plate = next(p for p in self.plates if p["name"] == "thin")
        theirs = dict(plate, u=deflections(self.at / "searched.dat"))
        node = plate["load_nodes"][0]
        self.assertLess(abs(plate["sag_m"][node] / self.sag(theirs, node) - 1.0), 0.02)
        self.assertLess(self.bolts_off(theirs), 0.03)

    def test_shear_by_the_elastic_group(self):
        """The worst bolt's shear, of bolts that give 20 MN/m in their holes: the plate's own give brings those nearest to the push
        some more, which the study allows for with 15 per cent."""
        def over(p):
            theirs = [p["level_N_per_m"] * (x * x + y * y) ** 0.5 for x, y in (p["level"][1 + 3 * n + 1] for n in p["bolt_nodes"])]
            return max(theirs) / max(p["shears_N"]) - 1.0
        print("\nworst shear over the elastic group's:", ", ".join(f"{p['name']} {100 * over(p):+.1f} %" for p in self.plates))
        self.within(0.15, over)
        self.within(0.05, lambda p: -over(p))

    def test_natural_frequencies(self):
        self.within(0.02, lambda p: max(abs(a / b - 1.0) for a, b in zip(p["frequencies_Hz"], p["f"], strict=True)))

    def test_ratio(self):
        thin = next(p for p in self.plates if p["name"] == "thin")
        ratio = self.searched_s * 1e3 / thin["ms"]
        told = [p["ccx_s"] * 1e3 / p["ms"] for p in self.plates]
        print(f"\nplate: {min(p['ms'] for p in self.plates):.1f} to {max(p['ms'] for p in self.plates):.1f} ms; CalculiX's whole"
              f" process on the same contact {1e3 * self.searched_s:.0f} ms, {ratio:.0f} times (told which springs act:"
              f" {min(told):.0f} to {max(told):.0f} times)")
        self.assertGreater(ratio, 30.0)


if __name__ == "__main__":
    unittest.main()
