// Fetches and compiles the program and, later, its rest (tools/split_program.mjs). In the page that is
// one file, single/wasm.js stands for this one.

const addressOf = { program: new URL("./thole.wasm", import.meta.url), rest: new URL("./rest.wasm", import.meta.url) };

async function compile(address) {
  try {
    return await WebAssembly.compileStreaming(fetch(address));
  } catch {
    // Most likely a server that does not know the type of a .wasm file.
    const answer = await fetch(address);
    if (!answer.ok) throw new Error(`the program was answered with status ${answer.status}`);
    return WebAssembly.compile(await answer.arrayBuffer());
  }
}

export const compileProgram = () => compile(addressOf.program);
export const compileRest = () => compile(addressOf.rest);

// Without letting go of the thread; binary data comes as text there.
export function compileRestNow() {
  const request = new XMLHttpRequest();
  request.open("GET", addressOf.rest, false);
  request.overrideMimeType("text/plain; charset=x-user-defined");
  request.send();
  if (request.status !== 200) throw new Error(`the program was answered with status ${request.status}`);
  return new WebAssembly.Module(Uint8Array.from(request.responseText, (letter) => letter.charCodeAt(0) & 0xff));
}
