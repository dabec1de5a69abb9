#!/usr/bin/env python3
"""Writes docs/sources.md, the list of every source in src/data/sources*.h.

usage: make_sources.py
"""

import pathlib
import re
from dataclasses import dataclass

ROOT = pathlib.Path(__file__).resolve().parents[1]
DOCUMENT = ROOT / "docs/sources.md"
CONSTANT = re.compile(r"inline constexpr Source (k\w+)\s*\{(.*?)\};", re.S)
TEXT = r'((?:"(?:[^"\\]|\\.)*"\s*)+)'

TITLES = {
    "sources.h": "Of every topic",
    "sources_hold.h": "Holding: wind, current, waves, thrust",
    "sources_motion.h": "Holding in time: gusts, motion, control",
    "sources_float.h": "Shaft and trim",
    "sources_battery.h": "Bank and charging",
    "sources_power.h": "Feeder",
    "sources_mount.h": "Mount",
    "sources_control.h": "Control and sensors",
    "sources_foredeck.h": "Foredeck",
}


@dataclass
class Source:
    header: str
    name: str
    id: str
    title: str
    locator: str
    confirmed: bool


def is_source_header(path):
    return path.parent.name == "data" and path.name.startswith("sources") and path.suffix == ".h"


def member(body, key):
    found = re.search(rf"\.{key}\s*=\s*{TEXT}", body)
    if not found:
        return ""
    return "".join(re.findall(r'"((?:[^"\\]|\\.)*)"', found.group(1))).replace('\\"', '"')


def all_sources():
    sources = []
    for path in sorted((ROOT / "src/data").glob("sources*.h"), key=lambda p: (p.name != "sources.h", p.name)):
        for name, body in CONSTANT.findall(path.read_text()):
            sources.append(Source(path.name, name, member(body, "id"), member(body, "title"),
                                  member(body, "locator"),
                                  not re.search(r"\.confirmed\s*=\s*false", body)))
    return sources


def cell(text):
    return text.replace("|", "\\|")


def document(sources):
    lines = ["# Sources", "",
             "Written by `tools/make_sources.py` from `src/data/sources*.h`; a test keeps it current.",
             "*Not confirmed*: recalled or disputed, and shown so wherever it is used.", ""]
    header = None
    for source in sources:
        if source.header != header:
            header = source.header
            lines += ([""] if lines[-1] else []) + [f"## {TITLES.get(header, header)}", "",
                      "| id | title | where in it | standing |", "|---|---|---|---|"]
        standing = "" if source.confirmed else "not confirmed"
        lines.append(f"| `{source.id}` | {cell(source.title)} | {cell(source.locator)} | {standing} |")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    DOCUMENT.write_text(document(all_sources()))
