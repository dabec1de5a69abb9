// The module that Emscripten made, started. Nothing of it runs unless page, script and program are of one
// build.

import { belongTogether, startAfresh, startedWell } from "./one_build.js";
import { Rest } from "./rest.js";
import createThole from "./thole.js";
import { compileProgram } from "./wasm.js";

// Resolves to { module, rest }.
export async function loadModule() {
  const program = await compileProgram();
  if (!belongTogether(program)) {
    if (await startAfresh()) return new Promise(() => {});  // the page is on its way out
    throw new Error("The parts of this page are from two versions.");
  }
  const rest = new Rest(program);
  const module = await instantiate(program, rest);
  startedWell();
  return { module, rest };
}

// Emscripten does not hear of it when its instantiateWasm fails, on a phone short of memory for one.
const instantiate = (program, rest) => new Promise((resolve, reject) => {
  createThole({
    instantiateWasm(imports, done) {
      WebAssembly.instantiate(program, { ...imports, ...rest.imports() }).then((instance) => {
        rest.attach(instance);
        done(instance, program);
      }).catch(reject);
      return {};
    },
  }).then(resolve, reject);
});
