// Pictures of every page of the wizard, from one fixed job: see tools/shots. What of them is approved lies
// in approved/ as small signatures: the mean colour of each square of CELL_PX.

import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { CLI, DESK, PHONE, ROOT, settle, startBrowser } from "./browser.mjs";
import { decode, encode } from "./png.mjs";
import { eachPage } from "./walk.mjs";

export const APPROVED = join(ROOT, "tests/web/approved");
const SHOTS = join(ROOT, "build/shots");
const JOB = join(ROOT, "presets/jobs/bay-boat-in-the-estuary.json");

const SCREENS = [
  ["phone", { ...PHONE, viewport: { width: 412, height: 915 }, deviceScaleFactor: 2.6 }],
  ["small", { ...PHONE, viewport: { width: 320, height: 640 }, deviceScaleFactor: 2 }],
  ["desk", DESK],
];
const THEMES = ["light", "dark"];

const CELL_PX = 10;      // CSS px: a button covers some twenty cells
const ROUNDED_TO = 4;    // levels of 255: a signature packs to half its size
const TOLERANCE = 12;    // levels of 255: softer or sharper edges stay below it
const CELLS_OFF_MAX = 5;

// --- taking ---------------------------------------------------------------------------------------

// Takes every page on every screen by day and by night: visit(name, picture, screen). With `whole` also what
// lies below the first screen of a phone.
export async function takeShots(visit, { fragment = jobFragment(), whole = false } = {}) {
  const web = await startBrowser();
  try {
    for (const [name, screen] of SCREENS) {
      for (const colorScheme of THEMES) {
        // Without a service worker, whose news would come at any time.
        const options = {
          ...screen, colorScheme, reducedMotion: "reduce", locale: "en-GB", serviceWorkers: "block" };
        const page = await web.page(options, fragment);
        await settle(page);
        await eachPage(page, async (title, number) => {
          const words = title.toLowerCase().replace(/\W+/g, "-");
          const file = `${name}-${colorScheme}-${String(number).padStart(2, "0")}-${words}`;
          await visit(file, await page.screenshot(), screen);
          if (!whole || !screen.isMobile) return;
          await below(page, (picture, screenful) => visit(`${file}-${screenful}`, picture, null));
        });
        await page.context().close();
      }
    }
  } finally {
    await web.close();
  }
}

const jobFragment = () => `#${execFileSync(CLI, ["link", JOB]).toString().trim().replace(/^.*#/, "")}`;

async function below(page, visit) {
  for (let screenful = 2; screenful <= 4; ++screenful) {
    const moved = await page.evaluate(() => {
      const before = window.scrollY;
      window.scrollBy(0, window.innerHeight - 140);
      return window.scrollY - before;
    });
    if (moved < 8) break;
    await settle(page);
    await visit(await page.screenshot(), screenful);
  }
}

// --- comparing ------------------------------------------------------------------------------------

// The mean colours of a screenshot's cells, as a picture of one pixel to a cell.
export function signature(picture, { viewport }) {
  const shot = decode(picture);
  const scale = shot.width / viewport.width;
  const width = Math.ceil(viewport.width / CELL_PX);
  const height = Math.ceil(viewport.height / CELL_PX);
  const edge = (cell, end) => Math.min(Math.round(cell * CELL_PX * scale), end);
  const cells = Buffer.alloc(width * height * 3);
  for (let row = 0; row < height; ++row) {
    for (let column = 0; column < width; ++column) {
      const mean = meanColour(shot, edge(column, shot.width), edge(row, shot.height),
        edge(column + 1, shot.width), edge(row + 1, shot.height));
      cells.set(mean.map(rounded), 3 * (row * width + column));
    }
  }
  return encode(width, height, cells);
}

const rounded = (level) => Math.min(255, Math.round(level / ROUNDED_TO) * ROUNDED_TO);

function meanColour(shot, left, top, right, bottom) {
  const sum = [0, 0, 0];
  for (let y = top; y < bottom; ++y) {
    for (let x = left; x < right; ++x) {
      const colour = shot.at(x, y);
      for (const channel of [0, 1, 2]) sum[channel] += colour[channel];
    }
  }
  return sum.map((total) => total / Math.max(1, (right - left) * (bottom - top)));
}

// Where two signatures differ, in words; empty when they agree.
export function difference(now, approved) {
  const [a, b] = [decode(now), decode(approved)];
  if (a.width !== b.width || a.height !== b.height) return "another size";
  const off = [];
  for (let y = 0; y < a.height; ++y) {
    for (let x = 0; x < a.width; ++x) {
      const apart = a.at(x, y).map((level, channel) => Math.abs(level - b.at(x, y)[channel]));
      if (Math.max(...apart) > TOLERANCE) off.push([x, y]);
    }
  }
  if (off.length <= CELLS_OFF_MAX) return "";
  const span = (axis) => {
    const places = off.map((cell) => cell[axis] * CELL_PX);
    return `${Math.min(...places)} to ${Math.max(...places) + CELL_PX}`;
  };
  return `${off.length} cells differ, ${span(0)} px across, ${span(1)} px down`;
}

export const approvedNames = () => (existsSync(APPROVED) ? readdirSync(APPROVED) : [])
  .filter((file) => file.endsWith(".png")).map((file) => file.slice(0, -4));
export const approvedPicture = (name) => readFileSync(join(APPROVED, `${name}.png`));

export function keepShot(name, picture) {
  mkdirSync(SHOTS, { recursive: true });
  writeFileSync(join(SHOTS, `${name}.png`), picture);
}

// --- the command ----------------------------------------------------------------------------------

export async function shots(words) {
  const approve = words.includes("--approve");
  const [link] = words.filter((word) => !word.startsWith("--"));
  if (approve && link) throw new Error("what is approved comes from the fixed job");
  const signatures = new Map();
  await takeShots((name, picture, screen) => {
    keepShot(name, picture);
    if (approve && screen) signatures.set(name, signature(picture, screen));
  }, { whole: true, ...(link && { fragment: `#${link.trim().replace(/^.*#/, "")}` }) });
  console.log(`pictures are in ${SHOTS}`);
  if (!approve) return;
  rmSync(APPROVED, { recursive: true, force: true });
  mkdirSync(APPROVED);
  for (const [name, bytes] of signatures) writeFileSync(join(APPROVED, `${name}.png`), bytes);
  console.log(`${signatures.size} of them are approved: look at them before you commit ${APPROVED}`);
}
