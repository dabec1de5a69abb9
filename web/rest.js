// The part of the program that no first picture runs. It comes with the first touch, or at once where a
// job is to be opened; a function of it that is called before is fetched on the spot.

import { compileRest, compileRestNow } from "./wasm.js";

const STANDS_FOR_REST = "placeholder";  // what wasm-split calls the imports in place of its functions

export class Rest {
  // `program` is the compiled first part; one that is whole has no rest.
  constructor(program) {
    this.missing = WebAssembly.Module.imports(program).filter(({ module }) => module === STANDS_FOR_REST);
    this.here = this.missing.length === 0;
    this.coming = null;
    this.first = null;
  }

  imports() {
    const call = (place) => (...values) => {
      if (!this.here) {
        new WebAssembly.Instance(compileRestNow(), this.needs());
        this.here = true;
      }
      return this.table().get(place)(...values);
    };
    return { [STANDS_FOR_REST]: Object.fromEntries(this.missing.map(({ name }) => [name, call(Number(name))])) };
  }

  attach(instance) {
    this.first = instance;
  }

  // Resolves when the program is whole; after a failure the next call tries again.
  fetch() {
    if (this.here) return Promise.resolve();
    this.coming ??= compileRest()
      .then((rest) => WebAssembly.instantiate(rest, this.needs()))
      .then(() => { this.here = true; })  // its functions have taken their places in the table
      .finally(() => { this.coming = null; });
    return this.coming;
  }

  needs() {
    return { primary: this.first.exports };
  }
  table() {
    return Object.values(this.first.exports).find((thing) => thing instanceof WebAssembly.Table);
  }
}
