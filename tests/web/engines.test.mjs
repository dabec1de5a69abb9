// The same scenario in three browser engines, by role and accessible name.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { after, afterEach, before, describe, test } from "node:test";
import { serve } from "../../tools/serve.mjs";
import { CLI, ROOT, SITE } from "./browser.mjs";
import { ENGINES, startEngine } from "./engines/engine.mjs";
import { pause, until } from "./engines/wait.mjs";
import { colours, decode } from "./png.mjs";

const AXE = readFileSync(join(ROOT, "tests/web/node_modules/axe-core/axe.min.js"), "utf8");
const JOB = join(ROOT, "presets/jobs/bay-boat-in-the-estuary.json");
const PHONE = { width: 412, height: 915, touch: true };
const DESK = { width: 1280, height: 800 };
const COLOURS_MIN = 24;         // text and lines are blended into far more
const ONE_COLOUR_MAX_FRAC = 0.9;
const IDLE_MS = 3000;
const TABS_MAX = 80;            // a page has no more stops than that

let site;
before(async () => { site = await serve(SITE); });
after(() => site.close());

for (const name of ENGINES) describe(name, () => scenario(name));

const heading = (page) => page.evaluate(() => document.querySelector("h1[data-id]").textContent);
const verdict = (page) => page.evaluate(() => document.querySelector("[data-id=verdict]").textContent);

// Asks until the answer is the expected one: how long a machine takes is not what is tested here.
async function becomes(ask, expected) {
  let answer;
  await until(async () => {
    answer = await ask();
    return answer === expected;
  }, `${expected}`).catch(() => assert.equal(answer, expected));
}

async function type(page, name, text) {
  const field = await page.find("textbox", name);
  await field.fill(text);
  await page.press("Enter");
  await page.settle();
  return field;
}

// Presses a button that leads to another page, and gives that page's title.
async function turn(page, press) {
  const before = await heading(page);
  await press();
  return until(async () => {
    const now = await heading(page);
    return now !== before && now;
  }, "another page");
}

function scenario(name) {
  let engine;
  let opened = [];
  before(async () => { engine = await startEngine(name); });
  after(() => engine?.close());
  afterEach(async () => {
    for (const page of opened) await page.close();
    opened = [];
  });
  async function open(options = PHONE, fragment = "") {
    const page = await engine.open(site.address + fragment, options);
    opened.push(page);
    return page;
  }
  async function clean(page) { assert.deepEqual(await page.problems(), []); }

  test("usable, and the verdict is spoken", async () => {
    const page = await open();
    assert.match(await verdict(page), /^(Fits|Fits with changes|Does not fit)\b/);
    const spoken = await page.evaluate(() => {
      const region = document.querySelector("[data-id=verdict]").closest("[role=status],[aria-live=polite]");
      return region !== null && region.closest("[aria-hidden=true],[inert],[hidden]") === null;
    });
    assert.ok(spoken, "the verdict stands in a polite live region");
    await clean(page);
  });

  test("the canvas is painted: what is read is seen, though its element is transparent", async () => {
    const page = await open(DESK);
    const picture = decode(await page.screenshot());
    const all = colours(picture);
    assert.ok(all.size >= COLOURS_MIN, `${all.size} colours`);
    const most = Math.max(...all.values()) / (picture.width * picture.height);
    assert.ok(most < ONE_COLOUR_MAX_FRAC, `${most} of it is one colour`);
    const title = await page.find("heading", await heading(page));
    assert.equal(await title.on((element) => getComputedStyle(element).opacity), "0");
    const inTitle = colours(picture, await title.box());
    assert.ok(inTitle.size >= 8, `${inTitle.size} colours in the title`);
  });

  test("numbers as people write them, echoed in one's own unit", async () => {
    const page = await open();
    const height = await page.find("textbox", "Bow height");
    await height.fill("4 ft 5 1/2 in");
    const opacity = await height.on((element) => getComputedStyle(element).opacity);
    assert.equal(opacity, "1", "it is seen while it is typed");
    await page.press("Enter");
    await becomes(() => height.value(), "1.36 m");
    await type(page, "Bow height", "1,35 m");
    await becomes(() => height.value(), "1.35 m");
    const weight = await type(page, "Loaded weight", "2000 kg");
    await becomes(() => weight.value(), "2000 kg");
    await type(page, "Bow height", "tall");
    await becomes(() => height.attribute("aria-invalid"), "true");
    assert.equal(await height.value(), "tall");
    await clean(page);
  });

  test("the slider by arrow keys", async () => {
    const page = await open();
    const slider = await page.find("slider", "Wind to hold in");
    const start = await slider.attribute("aria-valuetext");
    await slider.press("ArrowRight");
    const more = await until(async () => {
      const now = await slider.attribute("aria-valuetext");
      return now !== start && now;
    }, "ArrowRight moves the slider");
    assert.ok(parseFloat(more) > parseFloat(start), `${start} to ${more}`);
    await slider.press("ArrowLeft");
    await becomes(() => slider.attribute("aria-valuetext"), start);
    await clean(page);
  });

  test("the next page is a step of the browser's history", async () => {
    const page = await open();
    const first = await heading(page);
    const onward = await page.findLike("button", /^Next page/);
    const second = await turn(page, () => onward.click());
    await page.back();
    await becomes(() => heading(page), first);
    await page.forward();
    await becomes(() => heading(page), second);
    await clean(page);
  });

  test("how a figure was found, by keyboard alone", async () => {
    const page = await open(DESK);
    const way = await page.findLike("button", /^Shaft\b/);
    assert.equal(await turn(page, () => way.press("Enter")), "Shaft");
    const focused = () => page.evaluate(() => {
      const { dataset, ariaExpanded } = document.activeElement;
      const { x, y, width, height } = document.activeElement.getBoundingClientRect();
      const box = { x: x - 5, y: y - 5, width: width + 10, height: height + 10 };
      return { id: dataset.id ?? "", expanded: ariaExpanded, box };
    });
    for (let tabs = 0; !(await focused()).id.startsWith("why."); ++tabs) {
      assert.ok(tabs < TABS_MAX, "Tab reaches a figure");
      await page.press("Tab");
    }
    await page.settle();
    const at = await focused();
    const around = async () => colours(decode(await page.screenshot()), at.box);
    const ringed = await around();
    await page.evaluate(() => document.activeElement.blur());
    await page.settle();
    assert.ok(!isDeepStrictEqual(await around(), ringed), "the focus was to be seen");
    await page.evaluate((id) => document.querySelector(`[data-id="${id}"]`).focus(), at.id);

    assert.equal(at.expanded, "false");
    const words = () => page.evaluate(() => document.querySelector("main[data-id]").textContent);
    const before = await words();
    await page.press("Enter");
    await becomes(async () => (await focused()).expanded, "true");
    const told = (await words()).length - before.length;
    assert.ok(told > 40, `${told} letters more`);
    await page.press("Escape");
    await becomes(words, before);
    await clean(page);
  });

  test("a reload keeps the job", async () => {
    const page = await open();
    await type(page, "Length overall", "7.6");
    await until(() => page.evaluate(() => location.hash.startsWith("#job=")), "the address holds the job");
    await page.reload();
    const length = await page.find("textbox", "Length overall");
    await becomes(() => length.value(), "7.6 m");
    await clean(page);
  });

  test("a link made by the program opens to the same design", async () => {
    const fragment = execFileSync(CLI, ["link", JOB]).toString().trim().replace(/^.*#/, "");
    const design = JSON.parse(execFileSync(CLI, ["evaluate", JOB], { maxBuffer: 1 << 28 }));
    const page = await open(PHONE, `#${fragment}`);
    const said = await verdict(page);
    assert.ok(said.toLowerCase().startsWith(design.verdict), `${said} / ${design.verdict}`);
    await becomes(() => page.evaluate(() => location.hash), `#${fragment}`);
    await clean(page);
  });

  test("a wrong link is said plainly, and the job is kept", async () => {
    const page = await open();
    const field = await type(page, "Length overall", "9.1");
    await becomes(() => field.value(), "9.1 m");
    await page.evaluate(() => { location.hash = "#job=AQGiAQ"; });
    await until(() => page.evaluate(() => {
      const toast = document.getElementById("toast");
      return !toast.hidden && /link/i.test(toast.textContent);
    }), "a word about the link");
    await page.settle();
    assert.equal(await field.value(), "9.1 m");
    await clean(page);
  });

  test("nothing is drawn while nothing changes", async () => {
    const page = await open();
    const before = await page.frames();
    await pause(IDLE_MS);
    assert.equal(await page.frames(), before);
  });

  test("the accessibility rules, on a phone by day and on a desk by night", async () => {
    for (const options of [PHONE, { ...DESK, dark: true }]) {
      const page = await open(options);
      await page.evaluate(`() => { ${AXE} }`);
      const violations = await page.evaluate(async () => {
        const found = await window.axe.run();
        return found.violations.map((rule) => `${rule.id}: ${rule.nodes[0].html}`);
      });
      assert.deepEqual(violations, []);
    }
  });
}
