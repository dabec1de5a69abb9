// The same job gives the same design natively and as WebAssembly.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { CLI, ROOT } from "./browser.mjs";

const WEB_CLI = join(ROOT, "build/web/thole.js");
const JOBS = join(ROOT, "presets/jobs");
const RELATIVE = 1e-9;
const SMALL = 1e-12;  // below this a number is the difference of equal ones

function evaluate(command, args, job) {
  return JSON.parse(execFileSync(command, [...args, "evaluate", job], { maxBuffer: 1 << 28 }));
}

// The first place where two documents differ; empty when they agree.
function difference(a, b, path = "") {
  if (typeof a === "number" && typeof b === "number") {
    const apart = Math.abs(a - b);
    return apart <= RELATIVE * Math.max(Math.abs(a), Math.abs(b)) || apart <= SMALL ? "" : `${path}: ${a} / ${b}`;
  }
  if (a && b && typeof a === "object" && typeof b === "object") {
    const keys = Object.keys(a);
    if (keys.join() !== Object.keys(b).join()) return `${path}: other keys`;
    for (const key of keys) {
      const found = difference(a[key], b[key], `${path}/${key}`);
      if (found) return found;
    }
    return "";
  }
  return a === b ? "" : `${path}: ${a} / ${b}`;
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
