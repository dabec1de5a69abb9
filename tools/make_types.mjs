// Writes web/engine/index.d.ts, the TypeScript types of the engine's module, from the schemas in
// docs/formats, which come from the engine's own tables. A test holds that the file is what this gives.
//
// usage: make_types.mjs

import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..");
export const TYPES = join(ROOT, "web/engine/index.d.ts");
const schema = (name) => JSON.parse(readFileSync(join(ROOT, `docs/formats/${name}.schema.json`), "utf8"));

const HEAD = `// Made by tools/make_types.mjs from docs/formats: not written by hand.
// Units are the endings of the names: length_m is in metres, thrust_N in newtons, drop_frac a share of one.
`;
const MODULE = `
/** What could not be read, with the path of each value and what would be right. */
export class TholeError extends Error {
  readonly issues: Issue[];
}

export interface Engine {
  readonly version: { edition: number; schema: number };
  /** The design for a job, with the built-in catalogue or a shop's own. Throws a TholeError. */
  evaluate(job: Job | string, catalogue?: Catalogue | string): Design;
  /** The job as what follows the '#' of the wizard's address: "job=...". Throws a TholeError. */
  link(job: Job | string): string;
  /** The job in a link, whole address or the part after '#'. Throws a TholeError. */
  unlink(link: string): Job;
  /** JSON Schema (2020-12). */
  schema(kind: "job" | "catalogue" | "preset" | "design"): Promise<object>;
}

/** source: address or bytes of the WebAssembly file, where it does not lie beside the module. */
export function loadEngine(source?: string | URL | BufferSource | WebAssembly.Module): Promise<Engine>;
`;

function comment(schema, indent) {
  const range = schema.minimum === undefined ? "" : `${schema.minimum} to ${schema.maximum}.`;
  const words = [schema.title, schema.description].filter(Boolean).map((text) => text.replace(/\.?$/, "."));
  const text = [...words, range].filter(Boolean).join(" ");
  return text ? `${indent}/** ${text} */\n` : "";
}

function objectType(schema, indent) {
  const inner = `${indent}  `;
  const required = new Set(schema.required ?? []);
  const lines = Object.entries(schema.properties).map(([key, value]) => {
    const name = /^[A-Za-z_]\w*$/.test(key) ? key : JSON.stringify(key);
    return `${comment(value, inner)}${inner}${name}${required.has(key) ? "" : "?"}: ${type(value, inner)};\n`;
  });
  return `{\n${lines.join("")}${indent}}`;
}

function type(schema, indent) {
  if (schema.$ref) return schema.$ref.replace("#/$defs/", "");
  if ("const" in schema) return JSON.stringify(schema.const);
  if (schema.enum) return schema.enum.map((value) => JSON.stringify(value)).join(" | ");
  if (Array.isArray(schema.type)) {
    return schema.type.map((one) => type({ ...schema, type: one }, indent)).join(" | ");
  }
  if (schema.type === "object") return objectType(schema, indent);
  if (schema.type === "integer") return "number";
  if (schema.type === "array") {
    const item = type(schema.items, indent);
    return item.includes(" | ") ? `Array<${item}>` : `${item}[]`;
  }
  return schema.type;
}

const declare = (name, schema) =>
  `\n${comment(schema, "")}export interface ${name} ${objectType(schema, "")}\n`;

export function makeTypes() {
  const design = schema("design");
  // Editors want "$schema" in a file; a design in memory has none.
  delete design.properties.$schema;
  return HEAD + declare("Job", schema("job")) + declare("Catalogue", schema("catalogue"))
    + declare("Design", design)
    + Object.entries(design.$defs).map(([name, part]) => declare(name, part)).join("") + MODULE;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeFileSync(TYPES, makeTypes());
