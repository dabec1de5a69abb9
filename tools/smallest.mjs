// A WebAssembly file made as small as it gets, in place: what travels first, or whole in one file.

import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

export const FEATURES = ["--enable-bulk-memory", "--enable-nontrapping-float-to-int", "--enable-sign-ext",
  "--enable-mutable-globals"];
const PASSES = ["--flatten", "--rereloop", "-Oz", "-Oz", "--converge", "--low-memory-unused",
  "--one-caller-inline-max-function-size=25", "--local-cse", "-Oz"];

export function makeSmallest(file) {
  execFileSync("wasm-opt", [...PASSES, ...FEATURES, file, "-o", file]);
}

// Its data as one piece, which packs better than hundreds.
export function joinData(file) {
  execFileSync(process.execPath, [fileURLToPath(new URL("join_data.mjs", import.meta.url)), file]);
}
