// What the hosted page and the page in one file are made of: scripts bundled by esbuild, the program
// with its mark, and the id of the build.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const TOOLS = dirname(fileURLToPath(import.meta.url));
const DIGITS = 10;

export const digest = (...parts) =>
  parts.reduce((hash, part) => hash.update(part), createHash("sha256")).digest("hex").slice(0, DIGITS);

const filesOf = (folder) => readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isFile()).map((entry) => join(folder, entry.name)).sort();

// Whatever can change the page changes this.
export function buildId(web, build) {
  const tools = ["bundle.mjs", "make_site.mjs", "split_program.mjs", "split_data.mjs",
    "wasm_sections.mjs"].map((name) => join(TOOLS, name));
  const files = [...filesOf(web), join(build, "thole.js"), join(build, "thole.wasm"), ...tools];
  return digest(...files.map((file) => readFileSync(file)));
}

// The program with a custom section "thole" at its end, which holds the digest of what is before it:
// web/one_build.js compares it with the one that the script was made for.
export function marked(program) {
  const mark = digest(program);
  const text = (letters) => [letters.length, ...Buffer.from(letters)];
  const section = [...text("thole"), ...Buffer.from(mark)];
  return { mark, bytes: Buffer.concat([program, Buffer.from([0, section.length, ...section])]) };
}

// A folder in which the scripts of the page find each other and the program's: bundle() works there.
export class Stage {
  constructor(web, build, { instead = [] } = {}) {
    this.folder = mkdtempSync(join(tmpdir(), "thole-stage-"));
    const put = (file, name) => copyFileSync(file, join(this.folder, name));
    this.scripts = readdirSync(web).filter((name) => name.endsWith(".js"));
    for (const name of [...this.scripts, "style.css"]) put(join(web, name), name);
    put(join(build, "thole.js"), "thole.js");
    for (const name of instead) put(join(web, "single", name), name);
  }

  // A script more, by its text.
  put(name, text) {
    writeFileSync(join(this.folder, name), text);
  }

  // Scripts that others start as workers: new URL("./name.js", import.meta.url).
  workers() {
    const texts = this.scripts.map((name) => readFileSync(join(this.folder, name), "utf8"));
    const address = /new URL\("\.\/([\w-]+\.js)", import\.meta\.url\)/g;
    const named = texts.flatMap((text) => [...text.matchAll(address)]);
    return [...new Set(named.map(([, name]) => name))];
  }

  bundle(name, options = []) {
    const always = ["--bundle", "--minify", "--charset=utf8", "--legal-comments=none", "--log-level=warning"];
    return execFileSync("esbuild", [name, ...always, ...options], { cwd: this.folder, maxBuffer: 1 << 26 });
  }
  // `define`: what stands for a name in the source.
  script(name, { format = "esm", define = {} } = {}) {
    return this.bundle(name, [`--format=${format}`, "--target=es2020",
      ...Object.entries(define).map(([key, value]) => `--define:${key}=${JSON.stringify(value)}`)]);
  }
  style(name) {
    return this.bundle(name);
  }

  close() {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
