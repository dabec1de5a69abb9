#!/usr/bin/env python3
"""Writes the bytes of files into a C++ source, for io/embedded.h.

usage: embed.py OUTPUT.cpp NAME FILE...

Defines thole::NAME(), which returns the files in the order given. Each is known by its last two
path parts ("jobs/skiff.json"). Strings in pieces, because compilers may limit the length of one.
JSON goes without the blanks between its words: they are bytes to load.
"""

import pathlib
import re
import sys

PIECE = 96  # bytes on one line


def literal(data):
    """C++ string literals for these bytes; octal escapes end after three digits, hex ones do not."""
    lines = []
    for start in range(0, len(data), PIECE):
        text = "".join(
            chr(byte) if 32 <= byte < 127 and byte not in b'"\\?' else f"\\{byte:03o}"
            for byte in data[start:start + PIECE])
        lines.append(f'    "{text}"')
    return "\n".join(lines) or '    ""'


def without_blanks(json):
    """What stands in quotes stays as it is."""
    return re.sub(rb'("(?:[^"\\\\]|\\\\.)*")|\s+', lambda found: found.group(1) or b"", json)


def main():
    output, name, *files = sys.argv[1:]
    parts = ['#include "io/embedded.h"\n', "namespace thole {", "namespace {\n"]
    rows = []
    for index, file in enumerate(map(pathlib.Path, files)):
        data = file.read_bytes()
        if file.suffix == ".json":
            data = without_blanks(data)
        parts.append(f"constexpr char kBytes{index}[] =\n{literal(data)};\n")
        rows.append(f'    {{"{"/".join(file.parts[-2:])}", {{kBytes{index}, {len(data)}}}}},')
    parts.append("constexpr EmbeddedFile kFiles[] = {\n" + "\n".join(rows) + "\n};\n")
    parts.append("}  // namespace\n")
    parts.append(f"std::span<const EmbeddedFile> {name}() {{ return kFiles; }}\n")
    parts.append("}  // namespace thole\n")
    pathlib.Path(output).write_text("\n".join(parts))


if __name__ == "__main__":
    main()
