// The page that is one file holds the program in itself: packed by xz, written in letters (letters.js). Takes
// the place of ../wasm.js.

import { XzReadableStream } from "./xz.js";
import { bytesOf } from "./letters.js";

export async function compileProgram() {
  const element = document.getElementById("program");
  const packed = bytesOf(element.textContent, Number(element.dataset.bytes));
  const unpacked = new XzReadableStream(new Blob([packed]).stream());
  return WebAssembly.compile(await new Response(unpacked).arrayBuffer());
}

// It is whole: there is no rest.
export const compileRest = () => Promise.reject(new Error("nothing is left to fetch"));
export const compileRestNow = () => { throw new Error("nothing is left to fetch"); };
