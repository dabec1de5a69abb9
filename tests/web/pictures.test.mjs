// Every page looks as it was approved: tools/shots --approve says so, after someone has looked.

import assert from "node:assert/strict";
import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { encode } from "./png.mjs";
import {
  APPROVED, approvedNames, approvedPicture, difference, keepShot, signature, takeShots,
} from "./shots.mjs";

const APPROVED_MAX_BYTES = 400_000;
const PICTURES_MIN = 66;  // eleven pages on three screens in two themes

// A sheet of one colour with a square of another.
function sheet(side, colour) {
  const [width, height] = [400, 600];
  const rgb = Buffer.alloc(width * height * 3, 240);
  for (let y = 100; y < 100 + side; ++y) {
    for (let x = 50; x < 50 + side; ++x) rgb.fill(colour, 3 * (y * width + x), 3 * (y * width + x) + 3);
  }
  return signature(encode(width, height, rgb), { viewport: { width, height } });
}

test("the comparison bites: a missing button is seen, a softer edge is not", () => {
  assert.equal(difference(sheet(44, 20), sheet(44, 20)), "");
  assert.match(difference(sheet(44, 20), sheet(0, 20)),
    /^\d+ cells differ, 50 to 100 px across, 100 to 150 px down$/);
  assert.equal(difference(sheet(44, 20), sheet(44, 30)), "");
  assert.notEqual(difference(sheet(44, 20), sheet(44, 60)), "");
});

test("what is approved is small", () => {
  const count = approvedNames().length;
  assert.ok(count >= PICTURES_MIN, `${count} approved: tools/shots --approve`);
  const bytes = readdirSync(APPROVED).reduce((sum, file) => sum + statSync(join(APPROVED, file)).size, 0);
  assert.ok(bytes < APPROVED_MAX_BYTES, `${bytes} bytes`);
});

test("every page as approved", async () => {
  const now = new Map();
  await takeShots((name, picture, screen) => {
    keepShot(name, picture);
    now.set(name, signature(picture, screen));
  });
  assert.deepEqual([...now.keys()].sort(), approvedNames().sort());
  const changed = [...now].map(([name, bytes]) => [name, difference(bytes, approvedPicture(name))])
    .filter(([, apart]) => apart !== "").map((words) => words.join(": "));
  assert.deepEqual(changed, [], "look at build/shots; tools/shots --approve accepts them");
});
