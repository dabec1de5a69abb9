// The engine as a module, for a page without the wizard and for Node:
//
//   import { loadEngine } from "./engine/index.mjs";
//   const engine = await loadEngine();
//   const design = engine.evaluate({ schema: 1, boat: { length_m: 7.6 } });
//
// index.d.ts has the types. Documents go in and come out as plain objects; a text is taken as well.

// What could not be read, with the path of each value and what would be right.
export class TholeError extends Error {
  constructor(issues) {
    super(issues.filter((issue) => issue.severity === "error")
      .map((issue) => (issue.field ? `${issue.field}: ${issue.message}` : issue.message)).join(" "));
    this.name = "TholeError";
    this.issues = issues;
  }
}

const OWN = new URL("./thole-engine.wasm", import.meta.url);
const SCHEMAS = ["job", "catalogue", "preset", "design"];  // files beside this one, fetched when asked for

async function bytesOf(address) {
  if (address.protocol === "file:") {  // Node
    const { readFile } = await import("node:fs/promises");
    return readFile(address);
  }
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} could not be fetched (status ${response.status}).`);
  return response.arrayBuffer();
}

async function compile(source) {
  if (source instanceof WebAssembly.Module) return source;
  if (source instanceof ArrayBuffer || ArrayBuffer.isView(source)) return WebAssembly.compile(source);
  return WebAssembly.compile(await bytesOf(new URL(source, import.meta.url)));  // whatever its type
}

// What the module asks of its surroundings. It computes and never writes or reads; should something
// inside go wrong, the call ends with an error and not with a guess.
function surroundings(module) {
  const fail = (name) => () => { throw new Error(`The engine stopped (${name}).`); };
  const known = { emscripten_notify_memory_growth: () => {} };
  const out = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    (out[from] ??= {})[name] = known[name] ?? fail(name);
  }
  return out;
}

// `source`: address or bytes of the WebAssembly file, where it does not lie beside this one.
export async function loadEngine(source = OWN) {
  const module = await compile(source);
  const { exports } = await WebAssembly.instantiate(module, surroundings(module));
  exports._initialize();
  const utf8 = { in: new TextEncoder(), out: new TextDecoder() };

  // Text in the engine's memory, with a zero behind it.
  function put(text) {
    const bytes = utf8.in.encode(text.replaceAll("\0", " "));
    const at = exports.malloc(bytes.length + 1);
    if (!at) throw new Error("The engine is out of memory.");
    const memory = new Uint8Array(exports.memory.buffer, at, bytes.length + 1);
    memory.set(bytes);
    memory[bytes.length] = 0;
    return at;
  }
  function take(at) {
    const memory = new Uint8Array(exports.memory.buffer);
    return utf8.out.decode(memory.subarray(at, memory.indexOf(0, at)));
  }
  function call(name, ...texts) {
    const places = [];
    try {
      for (const text of texts) places.push(put(text));
      return JSON.parse(take(exports[name](...places)));
    } finally {
      places.forEach((place) => exports.free(place));
    }
  }
  // The value, or what was wrong.
  function ask(name, ...texts) {
    const { issues, value } = call(name, ...texts);
    if (value === null) throw new TholeError(issues);
    return { issues, value };
  }
  const asText = (document) => (typeof document === "string" ? document : JSON.stringify(document));

  return {
    version: ask("thole_version").value,
    evaluate(job, catalogue) {
      const { issues, value } = ask("thole_evaluate", asText(job), catalogue ? asText(catalogue) : "");
      value.issues.unshift(...issues);  // what was said while reading comes first
      return value;
    },
    link: (job) => ask("thole_link", asText(job)).value,
    unlink: (link) => ask("thole_unlink", String(link)).value,
    async schema(kind) {
      if (!SCHEMAS.includes(kind)) {
        const message = `There is no schema "${kind}"; there are ${SCHEMAS.join(", ")}.`;
        throw new TholeError([{ severity: "error", field: "", message }]);
      }
      return JSON.parse(utf8.out.decode(await bytesOf(new URL(`./${kind}.schema.json`, import.meta.url))));
    },
  };
}
