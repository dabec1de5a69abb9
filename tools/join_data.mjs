// Writes the data of a WebAssembly module as one piece, in place. Binaryen cuts it at every few zeros, which
// saves bytes on a disk; over the wire hundreds of pieces cost more than the zeros, which pack to nothing.
//
// usage: join_data.mjs MODULE.wasm

import { readFileSync, writeFileSync } from "node:fs";
import { DATA, DATA_COUNT, dataSection, joined, sections, segments } from "./wasm_sections.mjs";

const [file] = process.argv.slice(2);
const module = readFileSync(file);
const parts = sections(module).filter(({ id }) => id !== DATA_COUNT);  // only code that copies pieces asks for it
const data = parts.findIndex(({ id }) => id === DATA);
const pieces = segments(parts[data].bytes).sort((a, b) => a.address - b.address);
const { address } = pieces[0];
const last = pieces.at(-1);
const bytes = Buffer.alloc(last.address + last.bytes.length - address);
let end = address;
for (const piece of pieces) {
  if (piece.address < end) throw new Error("data that lies over other data");
  bytes.set(piece.bytes, piece.address - address);
  end = piece.address + piece.bytes.length;
}
parts[data] = dataSection([{ address, bytes }]);
writeFileSync(file, joined(module, parts));
