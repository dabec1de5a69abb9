// The same job gives the same design natively and as WebAssembly.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { CLI, ROOT } from "./browser.mjs";
import { difference } from "./difference.mjs";

const WEB_CLI = join(ROOT, "build/web/thole.js");
const JOBS = join(ROOT, "presets/jobs");
function evaluate(command, args, job) {
  return JSON.parse(execFileSync(command, [...args, "evaluate", job], { maxBuffer: 1 << 28 }));
}

test("the comparison bites", () => {
  assert.equal(difference({ a: [1, "x"] }, { a: [1 + 1e-10, "x"] }), "");
  assert.notEqual(difference({ a: [1, "x"] }, { a: [1 + 1e-8, "x"] }), "");
  assert.notEqual(difference({ a: 1 }, { a: 1, b: 1 }), "");
});

const jobs = readdirSync(JOBS).filter((name) => name.endsWith(".json"));
test("there are jobs to compare", () => assert.ok(jobs.length >= 8));
for (const name of jobs) {
  test(name, () => {
    const job = join(JOBS, name);
    const native = evaluate(CLI, [], job);
    const web = evaluate(process.execPath, ["--no-experimental-fetch", WEB_CLI], job);
    assert.equal(difference(native, web), "");
    assert.ok(native.steps.length > 50);
  });
}
