#!/usr/bin/env python3
"""Names the fields of src/ that hold a quantity and do not end in its unit.

usage: check_units.py        exits 1 when there are any
"""

import pathlib
import re
import sys

UNITS = set("""m mm m2 mm2 cm2 m3 mm3 mm4 cm kg kgm N Nm J MPa GPa Pa A Ah V W Wh ohm mohm s h min C K deg
    rad mps mps2 Hz frac factor ratio exponent count g lbf kn px
    s2 rad2 W2 T nT year""".split())
FIELD = re.compile(r"^\s*(?:Given<double>|std::optional<double>|(?:inline )?(?:constexpr )?double)"
                   r"\s+(\w+)\s*(?:=|;|\{)", re.M)

# What carries its unit beside it, or is counted in a unit that its comment names.
CARRIERS = {
    "base/units.h": {"kMetrePerFoot", "kMetrePerInch", "kMetrePerNauticalMile", "kKilogramPerPound",
                     "kNewtonPerPoundForce", "kRadPerDeg"},
    "data/parts.h": {"labour_per_h"},  # money
    "calc/parts/parts.h": {"quantity"},
    "base/decimal.h": {"value"},  # a number as such
    "io/json_scan.h": {"number"},
    "base/trace.h": {"value", "limit", "actual"},
    "job/fields.h": {"min", "max", "quantum", "step"},
    "job/catalogue_fields.h": {"min", "max"},
    "job/uncertainty.h": {"low", "high"},
    "calc/sensitivity.h": {"answer", "value", "low", "high", "at_low", "at_high", "width"},
    "calc/hold/random.h": {"x", "y", "square"},  # of a point drawn in the unit square
    "draw/layout.h": {"kDrawingPad", "kHatchSpacing", "kArrowHead", "kSmallestRadius", "kTick",
                      "scale_x_", "scale_y_", "left_", "bottom_"},  # px, all of it
    "draw/": {"x", "y", "radius", "width", "height", "scale"},
    "ui/semantics.h": {"min", "max", "step"},
    "ui/widgets.h": {"value", "low", "high", "step"},  # of whichever field is dragged or slides
}
MONEY = re.compile(r"(^|_)price($|_)")


def is_unit(name):
    """True when the name ends in a unit, or in one per another ("kg_per_m")."""
    last = name.rsplit("_", 1)[-1]
    if "_per_" in name and last not in UNITS - {name.rsplit("_per_", 1)[1]}:
        top, bottom = name.rsplit("_per_", 1)
        return bottom in UNITS and (is_unit(top) or top in UNITS)
    return last in UNITS


def carried(header, name):
    return any(header.startswith(start) and name in names for start, names in CARRIERS.items())


def nameless(src):
    """Pairs of header and field, in order."""
    found = []
    for path in sorted(src.rglob("*.h")):
        header = path.relative_to(src).as_posix()
        for name in FIELD.findall(path.read_text()):
            if not (is_unit(name.rstrip("_")) or MONEY.search(name) or carried(header, name)):
                found.append((header, name))
    return found


def main():
    bad = nameless(pathlib.Path(__file__).resolve().parents[1] / "src")
    for header, name in bad:
        print(f"src/{header}: {name} does not end in a unit")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
