// The page as one file that opens from a disk: scripts, style, icon and program in the HTML itself, and
// a content policy that allows those and no request at all.
//
// usage: make_single.mjs WEB_FOLDER BUILD_FOLDER OUTPUT.html

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { buildId, marked, Stage } from "./bundle.mjs";
import { joinData, makeSmallest } from "./smallest.mjs";
import { lettersOf } from "../web/single/letters.js";

const [web, build, output] = process.argv.slice(2);

// Browsers unpack gzip by themselves and xz by a library; its 20 kB are made up for eight times.
const xz = (bytes) => execFileSync("xz", ["--check=crc32", "--lzma2=preset=9e,lc=4,pb=0", "--stdout"],
  { input: bytes, maxBuffer: 1 << 26 });
// It asks Node for the streams that a browser has anyway.
const place = createRequire(resolve(web, "../tests/web/package.json"));
const unpacker = readFileSync(place.resolve("xz-decompress/dist/package/xz-decompress.min.js"), "utf8")
  .replaceAll('require("stream/web")', "globalThis");
// Whose work it is; bundling drops comments.
const notice = unpacker.match(/^\/\*!([\s\S]*?)\*\//)[1].replaceAll(/\n \* ?/g, "\n").replaceAll("--", "-");

function smallProgram() {
  const folder = mkdtempSync(join(tmpdir(), "thole-single-"));
  try {
    const file = join(folder, "thole.wasm");
    copyFileSync(join(build, "thole.wasm"), file);
    makeSmallest(file);
    joinData(file);
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const id = buildId(web, build);
const program = marked(smallProgram());
const stage = new Stage(web, build, { instead: ["wasm.js", "letters.js"] });
stage.put("xz.js", unpacker);
// No worker: it would need a file of its own. Without OffscreenCanvas the page paints by itself.
const define = { THOLE_BUILD: id, THOLE_PROGRAM: program.mark, OffscreenCanvas: undefined };
const script = stage.script("shell.js", { define }).toString().trim();
const style = stage.style("style.css").toString().trim();
stage.close();
if (/<!--|<\/script/i.test(script) || /<\//.test(style)) throw new Error("this cannot stand inside HTML");

const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
const policy = ["default-src 'none'", `script-src ${hash(script)} 'wasm-unsafe-eval'`,
  `style-src ${hash(style)}`, "img-src data: blob:", "base-uri 'none'", "form-action 'none'"].join("; ");
const icon = `data:image/svg+xml;base64,${readFileSync(join(web, "icon.svg")).toString("base64")}`;
const packed = xz(program.bytes);

let html = readFileSync(join(web, "index.html"), "utf8");
// Every replacement has to find its place, once: the page may have changed since.
function replace(pattern, text) {
  const found = html.match(new RegExp(pattern, "g"))?.length ?? 0;
  if (found !== 1) throw new Error(`${found} places for ${pattern} in index.html`);
  html = html.replace(pattern, () => text);
}
replace(/(?<=http-equiv="Content-Security-Policy" content=")[^"]*/, policy);
replace(/<meta charset="utf-8">/, `<meta charset="utf-8">\n<meta name="thole-build" content="${id}">`);
replace(/(?<=<link rel="icon" href=")[^"]*/, icon);
replace(/<link rel="stylesheet" href="style\.css">/, `<style>${style}</style>`);
replace(/<script type="module" src="shell\.js"[^>]*><\/script>\n/, "");
html = html.replaceAll(/<link rel="(manifest|apple-touch-icon|preload|modulepreload)"[^>]*>\n/g, "");
replace(/<\/body>/, `<!--${notice}-->\n<script type="text/plain" id="program" data-bytes="${packed.length}">${lettersOf(packed)}</script>\n` +
  `<script type="module">${script}</script>\n</body>`);
const left = html.match(/\s(src|href)="(?!data:|#)[^"]*"/);
if (left) throw new Error(`the page still asks for${left[0]}`);

writeFileSync(output, html);
console.log(`single: ${(html.length / 1000).toFixed(0)} kB`);
