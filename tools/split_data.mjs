// Moves text that only the rest of the program reads out of the first part's data into the rest, which
// puts it back into memory when it arrives. Where each text stands does not change.
//
// What is moved: bytes from an address that code of the rest names up to their zero, when they are text,
// follow a zero, and no address in them is named by code of the first part or stands in the data itself.
// An address that happens to be a mere number keeps its text where it is, which costs bytes and nothing else.

import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { DATA, DATA_COUNT, dataSection, joined, sections, segments } from "./wasm_sections.mjs";

const LEAST_BYTES = 12;  // shorter text is copied as numbers, or not worth its own entry
const MOST_GAP_BYTES = 6;  // zeros between two texts that travel as one

// Every number that code could mean as an address.
function named(file, features) {
  const text = execFileSync("wasm-dis", [file, ...features], { encoding: "latin1", maxBuffer: 1 << 30 });
  const found = new Set();
  for (const [, constant, offset] of text.matchAll(/\(i32\.const (\d+)\)|offset=(\d+)/g)) found.add(Number(constant ?? offset));
  return found;
}

// --- what is moved ----------------------------------------------------------------------------------------

const isText = (byte) => byte >= 0x20 || byte === 0x0a;

function movable(segment, inFirst, inRest, inData) {
  const { address, bytes } = segment;
  const ranges = [];
  const starts = [...inRest].filter((at) => at >= address && at < address + bytes.length).sort((a, b) => a - b);
  for (const start of starts) {
    const from = start - address;
    if (from > 0 && bytes[from - 1] !== 0) continue;
    let to = from;
    while (to < bytes.length && isText(bytes[to])) ++to;
    if (to - from < LEAST_BYTES || (to < bytes.length && bytes[to] !== 0)) continue;
    let free = true;
    for (let at = start; at <= address + to && free; ++at) free = !inFirst.has(at) && !inData.has(at);
    if (free) ranges.push({ from, to });
  }
  const merged = [];
  for (const range of ranges) {
    const last = merged.at(-1);
    const gap = last && bytes.subarray(last.to, range.from);
    if (gap && gap.length <= MOST_GAP_BYTES && gap.every((byte) => byte === 0)) last.to = range.to;
    else merged.push({ ...range });
  }
  return merged;
}

// `first`, `rest`: files of the two modules; `features`: what they use, as options of binaryen. Gives the
// bytes of both.
export function moveText(first, rest, features) {
  const firstBytes = readFileSync(first);
  const restBytes = readFileSync(rest);
  const body = sections(firstBytes).find(({ id }) => id === DATA).bytes;
  const all = segments(body);
  const inFirst = named(first, features);
  const inRest = named(rest, features);
  const inData = new Set();
  for (const { address, bytes } of all) {
    for (let at = -address & 3; at + 4 <= bytes.length; at += 4) inData.add(bytes.readUInt32LE(at));
  }
  const moved = [];
  for (const segment of all) {
    for (const { from, to } of movable(segment, inFirst, inRest, inData)) {
      moved.push({ address: segment.address + from, bytes: Buffer.from(segment.bytes.subarray(from, to)) });
      segment.bytes.fill(0, from, to);
    }
  }
  const parts = sections(restBytes).filter(({ id }) => id !== DATA_COUNT);
  if (parts.some(({ id }) => id === DATA)) throw new Error("the rest has data of its own");
  const custom = parts.findIndex(({ id }, i) => id === 0 && parts.slice(i).every((part) => part.id === 0));
  parts.splice(custom < 0 ? parts.length : custom, 0, dataSection(moved));
  return { first: firstBytes, rest: joined(restBytes, parts) };
}
