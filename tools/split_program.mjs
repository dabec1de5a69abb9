// Divides the program in two: what the first picture of a first visit runs, and the rest, which the page
// fetches at the first touch (web/rest.js). Which is which is not written down anywhere: an instrumented
// copy is run here as a first visit runs it, and binaryen's wasm-split cuts along what was called.
// A function on the wrong side costs a moment, never an answer: calling one that is not here yet
// fetches the rest on the spot. Text that only the rest names goes with it (split_data.mjs).

import { execFileSync } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { FEATURES, makeSmallest } from "./smallest.mjs";
import { moveText } from "./split_data.mjs";

const MOST_PROFILE_BYTES = 1 << 20;
// `build`: the folder that holds thole.js and thole.wasm. Gives { first, rest }: the bytes of both.
export function splitProgram(build) {
  const folder = mkdtempSync(join(tmpdir(), "thole-split-"));
  const file = (name) => join(folder, name);
  try {
    const program = join(build, "thole.wasm");
    execFileSync("wasm-split", ["--instrument", ...FEATURES, program, "-o", file("instrumented.wasm")]);
    copyFileSync(join(build, "thole.js"), file("thole.mjs"));
    execFileSync(process.execPath, ["--no-experimental-fetch", fileURLToPath(import.meta.url), folder]);
    execFileSync("wasm-split", ["--split", ...FEATURES, `--profile=${file("profile")}`, program,
      "-o1", file("first.wasm"), "-o2", file("rest.wasm")]);
    // What travels first is made as small as it gets; the rest, where sums are done over and over, stays as the
    // compiler made it.
    makeSmallest(file("first.wasm"));
    return moveText(file("first.wasm"), file("rest.wasm"), FEATURES);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

// --- the first visit ----------------------------------------------------------------------------------

async function firstVisit(folder) {
  globalThis.document = {};  // thole.js looks for its own address there
  const { default: createThole } = await import(join(folder, "thole.mjs"));
  let instance = null;
  const module = await createThole({
    instantiateWasm(imports, done) {
      WebAssembly.instantiate(readFileSync(join(folder, "instrumented.wasm")), imports)
        .then((made) => { instance = made.instance; done(made.instance, made.module); });
      return {};
    },
  });
  const call = (name, ...values) =>
    module.cwrap(name, "string", values.map((value) => (typeof value === "string" ? "string" : "number")))(...values);
  const frames = (count, scroll) => { for (let i = 0; i < count; ++i) call("thole_frame", 1 / 60, scroll); };

  for (const part of [0, 1, 2]) call("thole_boot", part);
  call("thole_font", 0);
  call("thole_font_size", 0);
  for (const units of ["us", "metric"]) {
    call("thole_theme", units === "us" ? 1 : 0, 0, 1);
    call("thole_job_version");
    call("thole_act", "app", "can-share", "1");
    call("thole_act", "app", "units", units);
    call("thole_act", "app", "kept", "A job, today");
    call("thole_act", "app", "address", "https://somewhere/");
    call("thole_text", "page");
    call("thole_search");
    for (const [width, height, scale] of [[412, 915, 2.6], [1280, 800, 1], [320, 640, 2]]) {
      call("thole_resize", width, height, width * scale, height * scale, 0, 0, 0, 0);
      while (module._thole_search()) { /* what would make the job fit */ }
      frames(40, 0);
      frames(4, 300);
      call("thole_repaint_all");
      frames(1, 0);
      for (const name of ["packet", "packet_size", "content_height", "page_turned", "tree_version",
        "job_version", "tree"]) call(`thole_${name}`);
      for (const kind of ["link", "label", "page", "units"]) call("thole_text", kind);
    }
    call("thole_theme", 0, 1, 1.5);
    frames(4, 0);
  }

  const at = module._malloc(MOST_PROFILE_BYTES);
  const size = instance.exports.__write_profile(at, MOST_PROFILE_BYTES);
  if (size > MOST_PROFILE_BYTES) throw new Error(`a profile of ${size} bytes`);
  writeFileSync(join(folder, "profile"), module.HEAPU8.slice(at, at + size));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await firstVisit(process.argv[2]);
