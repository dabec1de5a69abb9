// Gathers the page: scripts bundled, shell and program under names that hold a digest of their bytes,
// so that they can be kept for ever and never be mixed with those of another build; each also in
// brotli and gzip. The service worker learns which files make up this build.
//
// usage: make_site.mjs WEB_FOLDER BUILD_FOLDER SITE_FOLDER

import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, extname, join, relative } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { buildId, digest, marked, Stage } from "./bundle.mjs";
import { splitProgram } from "./split_program.mjs";

const [web, build, site] = process.argv.slice(2);
const IN_FRAMES = "host.js";  // loaded inside a shop's page alone
const PACKED = new Set([".html", ".css", ".js", ".mjs", ".svg", ".wasm", ".json", ".webmanifest", ".ts"]);

const rows = [];       // what lies in the site, and whether a first visit loads it
const kept = [];       // what the service worker keeps: [name, integrity]
const renamed = new Map();

// How brotli tells distances back, as [postfix bits, direct codes]: which packs a program best hangs on the program.
const WAYS_TO_TELL_DISTANCES = [[0, 0], [1, 2], [2, 16], [3, 32]];
function smallestBrotli(bytes, ways) {
  const packed = ways.map(([postfix, direct]) => brotliCompressSync(bytes, { params: {
    [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    [constants.BROTLI_PARAM_NPOSTFIX]: postfix, [constants.BROTLI_PARAM_NDIRECT]: direct } }));
  return packed.reduce((best, each) => (each.length < best.length ? each : best));
}

function write(name, bytes) {
  mkdirSync(dirname(join(site, name)), { recursive: true });
  writeFileSync(join(site, name), bytes);
  if (!PACKED.has(extname(name))) return bytes.length;
  const brotli = smallestBrotli(bytes, extname(name) === ".wasm" ? WAYS_TO_TELL_DISTANCES : [[0, 0]]);
  writeFileSync(join(site, `${name}.br`), brotli);
  writeFileSync(join(site, `${name}.gz`), gzipSync(bytes, { level: 9 }));
  return brotli.length;
}
function put(name, bytes, { firstVisit = true } = {}) {
  rows.push({ name, bytes: bytes.length, brotli: write(name, bytes), firstVisit });
}

// A part of the page as the service worker keeps it.
function part(name, bytes, visit) {
  kept.push([name, `sha256-${createHash("sha256").update(bytes).digest("base64")}`]);
  put(name, bytes, visit);
}
function rename(name, bytes) {
  const hashed = `${basename(name, extname(name))}.${digest(bytes)}${extname(name)}`;
  renamed.set(name, hashed);
  return hashed;
}
const hashedPart = (name, bytes, visit) => part(rename(name, bytes), bytes, visit);
function withNewNames(text) {
  for (const [name, hashed] of renamed) {
    text = text.replaceAll(new RegExp(`(?<=["'\`/])${name.replace(".", "\\.")}(?=["'\`])`, "g"), hashed);
  }
  return text;
}

function copyFolder(from, to) {
  for (const entry of readdirSync(from, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.path, entry.name);
    put(join(to, relative(from, file)), readFileSync(file), { firstVisit: false });
  }
}

const source = (name) => readFileSync(join(web, name));

rmSync(site, { recursive: true, force: true });
mkdirSync(site, { recursive: true });
const id = buildId(web, build);
const { first, rest } = splitProgram(build);
const program = marked(first);
const define = { THOLE_BUILD: id, THOLE_PROGRAM: program.mark };
const stage = new Stage(web, build);

// In the order in which they name each other: a name changes when what it names has changed.
hashedPart("icon.svg", source("icon.svg"));
hashedPart("thole.wasm", program.bytes);
hashedPart("rest.wasm", rest, { firstVisit: false });
hashedPart("style.css", stage.style("style.css"));
for (const script of [...stage.workers(), "shell.js"]) {
  const bytes = Buffer.from(withNewNames(stage.script(script, { define }).toString()));
  if (script === IN_FRAMES) put(rename(script, bytes), bytes, { firstVisit: false });
  else hashedPart(script, bytes);
}
part("manifest.webmanifest", source("manifest.webmanifest"));
put("index.html", Buffer.from(withNewNames(source("index.html").toString())
  .replace('<meta charset="utf-8">', `$&\n<meta name="thole-build" content="${id}">`)));

// Under names of their own, and always asked for again.
put("sw.js", stage.script("sw.js", { format: "iife", define: { ...define, THOLE_FILES: kept } }));
put("version.json", Buffer.from(`${JSON.stringify({ build: id })}\n`));
put("sw_off.js", stage.script("sw_off.js", { format: "iife" }), { firstVisit: false });
if (existsSync(join(web, "embed.js"))) put("embed.js", stage.script("embed.js"), { firstVisit: false });
for (const folder of [join(web, "icons"), join(web, "demo"), join(build, "../engine")]) {
  if (existsSync(folder)) copyFolder(folder, basename(folder));
}
stage.close();

writeFileSync(join(site, "sizes.json"), `${JSON.stringify(rows, null, 1)}\n`);
const visit = rows.filter((row) => row.firstVisit).reduce((sum, row) => sum + row.brotli, 0);
console.log(`site: ${rows.length} files; a first visit takes ${(visit / 1000).toFixed(0)} kB over the wire`);
