// Fetches and compiles the program. In the page that is one file, single/wasm.js stands for this one.

const fetchProgram = () => fetch(new URL("./thole.wasm", import.meta.url));

export async function compileProgram() {
  try {
    return await WebAssembly.compileStreaming(fetchProgram());
  } catch {
    // Most likely a server that does not know the type of a .wasm file.
    const answer = await fetchProgram();
    if (!answer.ok) throw new Error(`the program was answered with status ${answer.status}`);
    return WebAssembly.compile(await answer.arrayBuffer());
  }
}
