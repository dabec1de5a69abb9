#!/usr/bin/python3
"""Makes the two weights of the screen's type from the Debian package fonts-inter (OFL).

Keeps Latin and the signs that Thole prints. Dear ImGui applies no layout features, so the tabular
digits (feature "tnum") take the place of the proportional ones in the character map.

usage: make_fonts.py OUTPUT_FOLDER
"""

import pathlib
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

SOURCE = pathlib.Path("/usr/share/fonts/opentype/inter")
WEIGHTS = {"sans-regular.otf": "Inter-Regular.otf", "sans-semibold.otf": "Inter-SemiBold.otf"}

SIGNS = "°²³·×÷±≤≥≈Ωµ√Δ½¼¾⅛⅜⅝⅞′″→−▸◂▾…“”‘’–—€\u2009\u202f"
LATIN_1 = {*range(0x20, 0x7F), *range(0xA0, 0x100), *map(ord, SIGNS)}
LATIN_EXTENDED_A = {*range(0x100, 0x180)} - {0x149}  # obsolete
# What the semibold lacks is set in the regular (src/ui/fonts.cpp): rare in headings, and 4 kB on the way.
CHARACTERS = {"sans-regular.otf": LATIN_1 | LATIN_EXTENDED_A, "sans-semibold.otf": LATIN_1}
# Where the type has no sign of its own, the nearest that it has.
STAND_INS = {0x25B8: 0x25B6, 0x25C2: 0x25C0, 0x25BE: 0x25BC, 0x202F: 0x2009, 0x00B5: 0x03BC,
             0x03A9: 0x2126, 0x0394: 0x2206}


def single_substitutions(font, tag):
    """Glyph for glyph, what a feature with plain replacements does."""
    table = font["GSUB"].table
    pairs = {}
    for record in table.FeatureList.FeatureRecord:
        if record.FeatureTag != tag:
            continue
        for index in record.Feature.LookupListIndex:
            for subtable in table.LookupList.Lookup[index].SubTable:
                subtable = getattr(subtable, "ExtSubTable", subtable)
                pairs.update(getattr(subtable, "mapping", {}))
    return pairs


def make(source, target):
    font = TTFont(source)
    tabular = single_substitutions(font, "tnum")
    for table in font["cmap"].tables:
        if not table.isUnicode():
            continue
        for code, other in STAND_INS.items():
            if code not in table.cmap and other in table.cmap:
                table.cmap[code] = table.cmap[other]
        for code in range(ord("0"), ord("9") + 1):
            # The tables may share one map: then the second pass finds it done.
            table.cmap[code] = tabular.get(table.cmap[code], table.cmap[code])
    characters = CHARACTERS[target.name]
    missing = sorted(characters - set(font.getBestCmap()))
    if missing:
        print(f"{target.name}: no glyph for", " ".join(f"U+{code:04X}" for code in missing))

    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.desubroutinize = True  # larger raw, smaller once compressed
    options.name_IDs = [0, 1, 2, 13]
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "DSIG"]
    options.notdef_outline = True
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=characters)
    subsetter.subset(font)
    font.save(target)


def main():
    folder = pathlib.Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    for target, source in WEIGHTS.items():
        make(SOURCE / source, folder / target)


if __name__ == "__main__":
    main()
