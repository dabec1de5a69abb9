// The page that is one file holds the program in itself: gzip, as base64. Takes the place of ../wasm.js.

export async function compileProgram() {
  if (typeof DecompressionStream === "undefined") {
    throw new Error("This browser cannot unpack the file; a newer one can.");
  }
  const text = document.getElementById("program").textContent;
  const packed = Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
  const unpacked = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return WebAssembly.compile(await new Response(unpacked).arrayBuffer());
}

// It is whole: there is no rest.
export const compileRest = () => Promise.reject(new Error("nothing is left to fetch"));
export const compileRestNow = () => { throw new Error("nothing is left to fetch"); };
