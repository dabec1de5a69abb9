// See tools/audit.

import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { DESK, PHONE, ROOT, settle, SITE, startBrowser } from "./browser.mjs";
import { lighthouseScores } from "./audit_lighthouse.mjs";
import * as measure from "./audit_page.mjs";
import { ENGINES, startEngine } from "./engines/engine.mjs";
import { eachPage } from "./walk.mjs";
import { serve } from "../../tools/serve.mjs";

const BARS = {
  performance: 90, others: 100, transfer_bytes: 350_000, second_visit_ms: 500, work_ms: 16, throttle: 4,
  idle_ms: 10_000, memory_bytes: 64e6, target_px: 44,
};
const VISITS = 5;

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;
const MB = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
const ms = (time) => `${time.toFixed(time < 100 ? 1 : 0)} ms`;

// --- the table ------------------------------------------------------------------------------------

class Table {
  constructor() { this.missed = 0; }

  row(what, bar, found, met) {
    if (!met) this.missed += 1;
    console.log(`${met ? "ok    " : "MISSED"}  ${what.padEnd(52)} ${bar.padEnd(13)} ${found}`);
  }
  most(what, limit, found, text) { this.row(what, `< ${text(limit)}`, text(found), found < limit); }
  none(what, found) {
    this.row(what, "none", found.length ? `${found.length}: ${found[0]}` : "none", found.length === 0);
  }
  note(text) { console.log(`        ${text}`); }
  title(text) { console.log(`\n${text}`); }
}

// --- the measures ---------------------------------------------------------------------------------

async function byLighthouse(table, address, folder) {
  table.title("Lighthouse, mobile, painting in software");
  const scores = await lighthouseScores(address, folder);
  table.row("performance, the middle of three", `>= ${BARS.performance}`,
    `${scores.middle} (${scores.performance.join(", ")})`, scores.middle >= BARS.performance);
  table.note(scores.figures);
  for (const category of ["accessibility", "best-practices", "seo"]) {
    const least = Math.min(...scores[category]);
    table.row(category, `${BARS.others}`, String(least), least >= BARS.others);
  }
  for (const title of scores.failed) table.note(`not passed: ${title}`);
}

async function byEngine(table, name, address) {
  const engine = await startEngine(name);
  const wire = await measure.countingProxy(address);
  try {
    const page = await engine.open(wire.address, { width: 412, height: 915, touch: true });
    table.title(`In ${name}`);
    const [first, twice] = [wire.bytes(), wire.twice()];
    await wire.quiet();
    if (wire.brotli()) {
      table.most("first visit, all that is sent", BARS.transfer_bytes, wire.bytes(), kB);
    } else {
      table.note(`first visit: ${kB(wire.bytes())}; this engine takes brotli from https alone`);
    }
    table.note(`${kB(first)} of it until the first picture`);
    table.none("files sent twice until then", twice);
    const visits = [];
    for (let visit = 0; visit < VISITS; ++visit) visits.push(await measure.usable_ms(page, wire.address));
    table.most("next visits until usable, median", BARS.second_visit_ms, measure.median(visits), ms);
    await page.ready();
    const frames = await measure.idleFrames(page, BARS.idle_ms);
    table.row(`frames in ${BARS.idle_ms / 1000} idle seconds`, "0", String(frames), frames === 0);
    table.none("accessibility rules broken (axe)", await measure.accessibilityViolations(page));
    const work = measure.median(await measure.typingWork_ms(page));
    table.note(`typed number to new picture: ${ms(work)} by the clock, at full speed`);
    await page.close();
  } finally {
    wire.close();
    await engine.close();
  }
}

async function byChromium(table) {
  table.title(`In chromium, the processor ${BARS.throttle} times slower`);
  const web = await startBrowser();
  try {
    const page = await web.page({ ...PHONE, locale: "en-GB" });
    await settle(page);
    await measure.throttle(page, BARS.throttle);
    for (const [what, changes] of [
      ["typed number", measure.typing(page)],
      ["dragged slider", measure.dragging(page, "Wind to hold in", { x: 172, y: 0 })],
      ["dragged picture", measure.dragging(page, "Bow height", { x: 0, y: -45 })],
    ]) {
      const costs = await measure.tracedWork_ms(page, changes);
      table.most(`${what} to new picture, median`, BARS.work_ms, measure.median(costs), ms);
      table.note(`from ${ms(Math.min(...costs))} to ${ms(Math.max(...costs))}`);
    }
    await page.context().close();

    table.title("In chromium, every page of the wizard");
    let most = { together: 0 };
    const small = [];
    for (const options of [PHONE, DESK]) {
      const walked = await web.page({ ...options, locale: "en-GB" });
      await settle(walked);
      await eachPage(walked, async (title) => {
        const memory = await measure.memory_bytes(walked);
        if (memory.together > most.together) most = memory;
        const missed = await measure.smallTargets(walked, BARS.target_px);
        small.push(...missed.map((target) => `${title}: ${target}`));
      });
      await walked.context().close();
    }
    table.most("script heap and program memory, at most", BARS.memory_bytes, most.together, MB);
    table.note(`script ${MB(most.script)}, program ${MB(most.program)}`);
    table.none(`targets smaller than ${BARS.target_px} px`, small);
  } finally {
    await web.close();
  }
}

export async function audit(words) {
  const at = words.indexOf("--report");
  const folder = at < 0 ? null : resolve(ROOT, words[at + 1] ?? "build/audit");
  if (!existsSync(join(SITE, "index.html"))) throw new Error(`${SITE} is not built: tools/start builds it`);
  const table = new Table();
  const site = await serve(SITE);
  try {
    await byLighthouse(table, site.address, folder);
    await byChromium(table);
    for (const name of ENGINES) await byEngine(table, name, site.address);
  } finally {
    site.close();
  }
  console.log(table.missed === 0 ? "\nEvery bar is met." : `\n${table.missed} missed.`);
  if (folder) console.log(`Lighthouse's reports are in ${folder}`);
  return table.missed;
}
