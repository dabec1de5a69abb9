// The engine as a module: in Node, in a page without the wizard, and by its types.

import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import {
  cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { makeTypes, TYPES } from "../../tools/make_types.mjs";
import { serve } from "../../tools/serve.mjs";
import { CHROMIUM, CLI, ROOT, SITE } from "./browser.mjs";
import { difference } from "./difference.mjs";
import { until } from "./shop.mjs";

const ENGINE = process.env.THOLE_ENGINE ?? join(SITE, "engine");
const JOBS = join(ROOT, "presets/jobs");
const OVER_THE_WIRE_BYTES = 220_000;

const jobs = readdirSync(JOBS).filter((name) => name.endsWith(".json"));
const textOf = (name) => readFileSync(join(JOBS, name), "utf8");
const native = (...args) => execFileSync(CLI, args, { maxBuffer: 1 << 28, encoding: "utf8" });

let engine;
let TholeError;
before(async () => {
  assert.ok(existsSync(join(ENGINE, "index.mjs")), `${ENGINE} is not built: tools/test builds it`);
  const module = await import(pathToFileURL(join(ENGINE, "index.mjs")));
  ({ TholeError } = module);
  engine = await module.loadEngine();
});

// --- in Node -----------------------------------------------------------------------------------------------

test("there are jobs to compare", () => assert.ok(jobs.length >= 8));
for (const name of jobs) {
  test(`${name}: the design of the command line, as text and as object`, () => {
    const expected = JSON.parse(native("--quick", "evaluate", join(JOBS, name)));
    assert.equal(difference(expected, engine.evaluate(textOf(name))), "");
    assert.equal(difference(expected, engine.evaluate(JSON.parse(textOf(name)))), "");
    assert.equal(engine.link(textOf(name)), native("link", join(JOBS, name)).trim());
  });
}

test("a shop's own catalogue changes the price, as on the command line", () => {
  const file = join(ROOT, "web/demo/catalogue.json");
  const job = join(JOBS, jobs[0]);
  const expected = JSON.parse(native("--quick", "--catalogue", file, "evaluate", job));
  const own = engine.evaluate(textOf(jobs[0]), JSON.parse(readFileSync(file, "utf8")));
  assert.equal(difference(expected, own), "");
  assert.notEqual(own.parts.total_price, engine.evaluate(textOf(jobs[0])).parts.total_price);
});

test("a link leads back to its job", () => {
  const job = { schema: 1, title: "Tholepin", boat: { length_m: 7.6, bow_height_m: 1.1 } };
  assert.deepEqual(engine.unlink(`https://example.org/#${engine.link(job)}`), job);
});

test("the schemas are the published ones", async () => {
  for (const kind of ["job", "catalogue", "preset", "design"]) {
    const published = readFileSync(join(ROOT, `docs/formats/${kind}.schema.json`), "utf8");
    assert.deepEqual(await engine.schema(kind), JSON.parse(published));
  }
});

async function refusal(act) {
  try {
    await act();
  } catch (error) {
    return error;
  }
  return null;
}
const errors = (error) => error.issues.filter((issue) => issue.severity === "error");

test("bad input is named, with the path of the value", async () => {
  const cases = [
    [() => engine.evaluate("{"), "", /JSON/],
    [() => engine.evaluate(""), "", /./],
    [() => engine.evaluate({ schema: 1, boat: { length_m: 99 } }), "boat.length_m", /between 4 and 15/],
    [() => engine.evaluate({ schema: 1, boat: { length_m: "x\0y" } }), "boat.length_m", /./],
    [() => engine.evaluate({ schema: 2 }), "schema", /newer/],
    [() => engine.evaluate({ schema: 1 }, "{"), "", /JSON/],
    [() => engine.evaluate({ schema: 1 }, { schema: 1, motors: [{ id: "a" }] }), "motors[0]", /./],
    [() => engine.link("[]"), "", /./],
    [() => engine.unlink("job=nothing"), "", /./],
    [() => engine.schema("boat"), "", /no schema/],
  ];
  for (const [act, field, message] of cases) {
    const error = await refusal(act);
    assert.ok(error instanceof TholeError, String(act));
    assert.ok(errors(error).some((issue) => issue.field.startsWith(field) && message.test(issue.message)),
      `${act}: ${JSON.stringify(error.issues)}`);
    assert.ok(error.message.length > 0);
  }
});

test("after bad input, and after much of it, the engine goes on", async () => {
  const bomb = `${"[".repeat(50_000)}`;
  for (let i = 0; i < 50; i += 1) assert.ok(await refusal(() => engine.evaluate(bomb)) instanceof TholeError);
  const large = "x".repeat(3_000_000);
  assert.ok(await refusal(() => engine.evaluate(large)) instanceof TholeError);
  assert.ok(await refusal(() => engine.evaluate({ schema: 1 }, large)) instanceof TholeError);
  assert.equal(engine.evaluate(textOf(jobs[0])).title, JSON.parse(textOf(jobs[0])).title);
});

test("a notice from reading stands before the design's own", () => {
  const design = engine.evaluate({ schema: 1, boat: { length_m: 7.6, colour: "blue" } });
  assert.equal(design.issues[0].field, "boat.colour");
});

test("two engines do not share anything", async () => {
  const { loadEngine } = await import(pathToFileURL(join(ENGINE, "index.mjs")));
  const other = await loadEngine(readFileSync(join(ENGINE, "thole-engine.wasm")));
  assert.equal(difference(engine.evaluate(textOf(jobs[1])), other.evaluate(textOf(jobs[1]))), "");
  assert.deepEqual(other.version, engine.version);
});

test("the engine is small enough to be taken along", (t) => {
  const rows = JSON.parse(readFileSync(join(SITE, "sizes.json"), "utf8"));
  const row = rows.find(({ name }) => /engine\.wasm$/.test(name));
  t.diagnostic(`${row.bytes} bytes, ${row.brotli} in brotli`);
  assert.ok(row.brotli < OVER_THE_WIRE_BYTES);
  assert.equal(row.firstVisit, false);
});

// --- in a page without the wizard --------------------------------------------------------------------------

test("in a page of another origin, under a strict policy", async () => {
  const folder = mkdtempSync(join(tmpdir(), "thole-page-"));
  const tool = await serve(SITE);
  const site = await serve(folder);
  const browser = await chromium.launch(CHROMIUM);
  try {
    writeFileSync(join(folder, "favicon.ico"), "");
    writeFileSync(join(folder, "page.js"), `import { loadEngine } from "${tool.address}engine/index.mjs";
      const engine = await loadEngine();
      document.body.textContent = JSON.stringify(engine.evaluate(await (await fetch("job.json")).json()));`);
    writeFileSync(join(folder, "job.json"), textOf(jobs[0]));
    const origin = tool.address.slice(0, -1);
    writeFileSync(join(folder, "index.html"), `<!doctype html><html lang="en"><head><meta charset="utf-8">
      <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src 'self';
        script-src 'self' ${origin} 'wasm-unsafe-eval'; connect-src 'self' ${origin}">
      <title>Page</title><script type="module" src="page.js"></script></head><body></body></html>`);
    const page = await browser.newPage();
    const problems = [];
    page.on("pageerror", (error) => problems.push(String(error)));
    page.on("console", (message) => { if (message.type() === "error") problems.push(message.text()); });
    await page.goto(site.address);
    const text = await until(
      () => (problems.length > 0 ? "{}" : page.evaluate(() => document.body.textContent)));
    assert.deepEqual(problems, []);
    assert.equal(difference(engine.evaluate(textOf(jobs[0])), JSON.parse(text)), "");
  } finally {
    await browser.close();
    tool.close();
    site.close();
    rmSync(folder, { recursive: true });
  }
});

// --- types -------------------------------------------------------------------------------------------------

test("the types are those that the schemas give (tools/schemas rewrites them)", () => {
  assert.equal(readFileSync(TYPES, "utf8"), makeTypes());
});

let project;
before(() => {
  project = mkdtempSync(join(tmpdir(), "thole-types-"));
  mkdirSync(join(project, "node_modules"));
  cpSync(ENGINE, join(project, "node_modules/thole-engine"), { recursive: true });
  writeFileSync(join(project, "tsconfig.json"), JSON.stringify({ compilerOptions: {
    strict: true, noEmit: true, module: "nodenext", moduleResolution: "nodenext", target: "es2022",
    lib: ["es2022", "dom"], types: [], skipLibCheck: false } }));
});
after(() => rmSync(project, { recursive: true }));

function compile(name, text) {
  const file = join(project, name);
  writeFileSync(file, text);
  const { status, stdout } = spawnSync(process.execPath,
    [join(ROOT, "tests/web/node_modules/typescript/bin/tsc"), "-p", project], { encoding: "utf8" });
  rmSync(file);
  return { status, stdout };
}

test("a program of somebody else's compiles against them, strictly", () => {
  const sample = readFileSync(join(ROOT, "tests/web/fixtures/engine_sample.ts"), "utf8");
  const { status, stdout } = compile("sample.mts", sample);
  assert.equal(stdout, "");
  assert.equal(status, 0);
});

test("every design is what its type says, to the last property", () => {
  const designs = jobs.map((name) => engine.evaluate(textOf(name)));
  const named = (list) => list.map((design, i) =>
    `export const design${i}: Design = ${JSON.stringify(design)};`).join("\n");
  const head = 'import type { Design } from "thole-engine";\n';
  assert.equal(compile("designs.mts", head + named(designs)).stdout, "");
  // The comparison bites.
  assert.match(compile("designs.mts", head + named([{ ...designs[0], extra: 1 }])).stdout, /extra/);
  assert.match(compile("designs.mts", head + named([{ ...designs[0], hold: {} }])).stdout, /hold|missing/);
});
