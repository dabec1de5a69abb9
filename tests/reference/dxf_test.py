"""Cut files read back by two programs that are not ours: ezdxf and GDAL.

usage: THOLE_PLATE_FILES=PROGRAM python3 dxf_test.py
"""

import io
import json
import math
import os
import pathlib
import subprocess
import tempfile
import unittest

import ezdxf

PROGRAM = os.environ.get("THOLE_PLATE_FILES", "")
NEAR_M = 1e-6
VERSIONS = {"r12": "AC1009", "r2000": "AC1015"}


def bulged(entity):
    """(x, y, bulge) of each vertex, by either kind of polyline."""
    if entity.dxftype() == "LWPOLYLINE":
        return list(entity.get_points("xyb"))
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0.0)) for v in entity.vertices]


def area_m2(points):
    """Shoelace and circular segments, in metres."""
    twice = 0.0
    for (x, y, bulge), (u, v, _) in zip(points, points[1:] + points[:1]):
        twice += x * v - u * y
        if bulge:
            turn = 4.0 * math.atan(bulge)
            radius = math.hypot(u - x, v - y) / (2.0 * math.sin(abs(turn) / 2.0))
            twice += radius * radius * (turn - math.sin(turn))
    return 0.5e-6 * twice


def ring_m2(ring):
    return 0.5e-6 * sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1]))


class CutFiles(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        subprocess.run([PROGRAM, cls.folder.name], check=True)
        cls.plates = json.loads((pathlib.Path(cls.folder.name) / "plates.json").read_text())

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def files(self):
        self.assertGreater(len(self.plates), 3)
        for plate in self.plates:
            for version in VERSIONS:
                with self.subTest(plate=plate["name"], version=version):
                    yield plate, version, pathlib.Path(self.folder.name) / f"{plate['name']}_{version}.dxf"

    def test_ezdxf_finds_nothing_to_mend(self):
        for _, version, path in self.files():
            document = ezdxf.readfile(path)
            self.assertEqual(document.dxfversion, VERSIONS[version])
            audit = document.audit()
            self.assertEqual([e.message for e in audit.errors], [])
            self.assertEqual([e.message for e in audit.fixes], [])
            if version == "r2000":
                self.assertEqual(document.units, ezdxf.units.MM)
            for layer in ("CUT_OUTER", "CUT_INNER", "DRILL", "ETCH", "ETCH_BARS", "TEXT"):
                self.assertIn(layer, document.layers)
            again = io.StringIO()
            document.write(again)
            self.assertIn("CUT_OUTER", again.getvalue())

    def test_ezdxf_reads_the_same_contours(self):
        for plate, version, path in self.files():
            space = ezdxf.readfile(path).modelspace()
            kind = "LWPOLYLINE" if version == "r2000" else "POLYLINE"
            outer = space.query(f'{kind}[layer=="CUT_OUTER"]')
            inner = space.query(f'{kind}[layer=="CUT_INNER"]')
            self.assertEqual(len(outer), 1)
            self.assertEqual(len(space.query("LWPOLYLINE POLYLINE")), 1 + len(inner))
            self.assertTrue(all(e.is_closed for e in [*outer, *inner]))
            self.assertAlmostEqual(area_m2(bulged(outer[0])), plate["area_m2"], delta=NEAR_M * plate["perimeter_m"])
            found = sorted(abs(area_m2(bulged(e))) for e in inner)
            self.assertEqual(len(found), len(plate["cut_outs_m2"]))
            for mine, theirs in zip(sorted(plate["cut_outs_m2"]), found):
                self.assertAlmostEqual(mine, theirs, delta=NEAR_M * math.sqrt(mine))
            # Nothing cut twice, nothing of no length.
            for entity in [*outer, *inner]:
                points = bulged(entity)
                for a, b in zip(points, points[1:] + points[:1]):
                    self.assertGreater(math.hypot(a[0] - b[0], a[1] - b[1]), 1e-3)

    def test_ezdxf_reads_the_same_holes(self):
        for plate, _, path in self.files():
            holes = ezdxf.readfile(path).modelspace().query('CIRCLE[layer=="DRILL"]')
            self.assertEqual(len(holes), len(plate["holes"]))
            for entity, (x_m, y_m, diameter_m) in zip(holes, plate["holes"]):
                self.assertAlmostEqual(entity.dxf.center.x * 1e-3, x_m, delta=NEAR_M)
                self.assertAlmostEqual(entity.dxf.center.y * 1e-3, y_m, delta=NEAR_M)
                self.assertAlmostEqual(2e-3 * entity.dxf.radius, diameter_m, delta=NEAR_M)

    def test_engraving_lies_on_the_metal(self):
        for plate, _, path in self.files():
            space = ezdxf.readfile(path).modelspace()
            lines = space.query('LINE[layer=="ETCH"]')
            self.assertGreater(len(lines), 2)
            words = [e.dxf.text for e in space.query('TEXT[layer=="ETCH"]')]
            self.assertIn("MOTOR SIDE UP", words)
            for line in lines:
                for end in (line.dxf.start, line.dxf.end):
                    for at in (end.x * 1e-3, end.y * 1e-3):
                        self.assertGreater(at, 0.0)
                    self.assertLess(end.x * 1e-3, plate["size_m"][0])
                    self.assertLess(end.y * 1e-3, plate["size_m"][1])
                    for x_m, y_m, diameter_m in plate["holes"]:
                        self.assertGreater(math.hypot(end.x * 1e-3 - x_m, end.y * 1e-3 - y_m), 0.5 * diameter_m)

    def test_bars_are_engraved_in_their_place_and_nowhere_else(self):
        for plate, _, path in self.files():
            space = ezdxf.readfile(path).modelspace()
            lines = space.query('LINE[layer=="ETCH_BARS"]')
            self.assertEqual(len(space.query('*[layer=="ETCH_BARS"]')), len(lines))
            from_m, to_m, y_m, thick_m = plate["bar"]
            sides = {y_m - thick_m / 2: 0.0, y_m + thick_m / 2: 0.0}
            for line in lines:
                (x, y), (u, v) = [(p.x * 1e-3, p.y * 1e-3) for p in (line.dxf.start, line.dxf.end)]
                for at in (x, u):
                    self.assertGreater(at, from_m - NEAR_M)
                    self.assertLess(at, to_m + NEAR_M)
                for (hole_x, hole_y, diameter_m) in plate["holes"]:
                    self.assertGreater(math.hypot(x - hole_x, y - hole_y), diameter_m / 2)
                for side in sides:
                    if abs(y - side) < NEAR_M and abs(v - side) < NEAR_M:
                        sides[side] += abs(u - x)
            # Whole but for what holes and cut-outs take, and there is no other length.
            for length in sides.values():
                self.assertLess(length, to_m - from_m + NEAR_M)
                self.assertGreater(length, 0.3 * (to_m - from_m))

    def test_gdal_reads_the_same_areas(self):
        worst = 0.0
        for plate, _, path in self.files():
            # Chords of a twentieth of a degree leave 1.3e-7 of a circle's area.
            done = subprocess.run(
                ["ogr2ogr", "-f", "GeoJSON", "/vsistdout/", str(path), "-lco", "COORDINATE_PRECISION=9",
                 "--config", "OGR_ARC_STEPSIZE", "0.05"], capture_output=True, text=True, check=True)
            rings = {}
            for feature in json.loads(done.stdout)["features"]:
                shape = feature["geometry"]
                if shape["type"] not in ("LineString", "Polygon"):
                    continue
                ring = [p[:2] for p in (shape["coordinates"] if shape["type"] == "LineString"
                                        else shape["coordinates"][0])]
                rings.setdefault(feature["properties"]["Layer"], []).append(ring)
            self.assertEqual(len(rings["CUT_OUTER"]), 1)
            for ring in rings["CUT_OUTER"] + rings.get("CUT_INNER", []) + rings["DRILL"]:
                self.assertLess(math.dist(ring[0], ring[-1]), 1e-3)  # closed
            theirs = abs(ring_m2(rings["CUT_OUTER"][0]))
            worst = max(worst, abs(theirs / plate["area_m2"] - 1.0))
            self.assertAlmostEqual(theirs, plate["area_m2"], delta=1e-6 * plate["area_m2"])
            found = sorted(abs(ring_m2(r)) for r in rings.get("CUT_INNER", []))
            self.assertEqual(len(found), len(plate["cut_outs_m2"]))
            for a, b in zip(sorted(plate["cut_outs_m2"]), found):
                self.assertAlmostEqual(a, b, delta=1e-6 * a)
            self.assertEqual(len(rings["DRILL"]), len(plate["holes"]))
            for ring, (_, _, diameter_m) in zip(rings["DRILL"], plate["holes"]):
                self.assertAlmostEqual(abs(ring_m2(ring)), math.pi / 4 * diameter_m ** 2, delta=1e-6 * diameter_m ** 2)
            xs, ys = zip(*rings["CUT_OUTER"][0])
            self.assertAlmostEqual(min(xs), 0.0, delta=1e-3)
            self.assertAlmostEqual(min(ys), 0.0, delta=1e-3)
            self.assertAlmostEqual(max(xs) * 1e-3, plate["size_m"][0], delta=NEAR_M)
            self.assertAlmostEqual(max(ys) * 1e-3, plate["size_m"][1], delta=NEAR_M)
        print(f"\n  {2 * len(self.plates)} files, areas by GDAL within {worst:.1g}")


if __name__ == "__main__":
    unittest.main()
