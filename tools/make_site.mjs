// Gathers the page: shell and program under names that hold a digest of their bytes, so that they can
// be kept for ever and never be mixed with those of another build; each also in brotli and gzip.
//
// usage: make_site.mjs WEB_FOLDER BUILD_FOLDER SITE_FOLDER

import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { basename, extname, join } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const [web, build, site] = process.argv.slice(2);

// In the order in which they name each other: a name changes when what it names has changed.
const PARTS = [
  [web, "icon.svg"], [build, "thole.wasm"], [build, "thole.js"], [web, "style.css"],
  [web, "mirror.js"], [web, "shell.js"],
];
const TEXT = new Set([".html", ".css", ".js", ".svg"]);

rmSync(site, { recursive: true, force: true });
mkdirSync(site, { recursive: true });

const renamed = new Map();
function withNewNames(text) {
  for (const [name, hashed] of renamed) {
    text = text.replaceAll(new RegExp(`(?<=["'/])${name.replace(".", "\\.")}(?=["'])`, "g"), hashed);
  }
  return text;
}

const rows = [];
function put(name, bytes) {
  const brotli = brotliCompressSync(bytes, { params: {
    [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } });
  writeFileSync(join(site, name), bytes);
  writeFileSync(join(site, `${name}.br`), brotli);
  writeFileSync(join(site, `${name}.gz`), gzipSync(bytes, { level: 9 }));
  rows.push({ name, bytes: bytes.length, brotli: brotli.length });
}

for (const [folder, name] of PARTS) {
  let bytes = readFileSync(join(folder, name));
  if (TEXT.has(extname(name))) bytes = Buffer.from(withNewNames(bytes.toString()));
  const digest = createHash("sha256").update(bytes).digest("hex").slice(0, 10);
  const hashed = `${basename(name, extname(name))}.${digest}${extname(name)}`;
  renamed.set(name, hashed);
  put(hashed, bytes);
}
put("index.html", Buffer.from(withNewNames(readFileSync(join(web, "index.html"), "utf8"))));

writeFileSync(join(site, "sizes.json"), `${JSON.stringify(rows, null, 1)}\n`);
const total = rows.reduce((sum, row) => sum + row.brotli, 0);
console.log(`site: ${rows.length} files, ${(total / 1000).toFixed(0)} kB over the wire`);
