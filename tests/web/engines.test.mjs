// The same scenario in three browser engines, by role and accessible name.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { after, afterEach, before, describe, test } from "node:test";
import { serve } from "../../tools/serve.mjs";
import { CLI, ROOT, SITE } from "./browser.mjs";
import { ENGINES, startEngine } from "./engines/engine.mjs";
import { LOAD_WITHIN_MS, pause, until } from "./engines/wait.mjs";
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
const scratch = mkdtempSync(join(tmpdir(), "thole-engines-"));
before(async () => { site = await serve(SITE); });
after(() => {
  site.close();
  rmSync(scratch, { recursive: true });
});

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
  let servers = [];
  before(async () => { engine = await startEngine(name); });
  after(() => engine?.close());
  afterEach(async () => {
    for (const page of opened) await page.close();
    for (const server of servers) server.close();
    opened = [];
    servers = [];
  });
  async function serving(folder) {
    servers.push(await serve(folder));
    return servers.at(-1);
  }
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

  test("the whole job with a finger: every page, its picture said, the papers at the end", async () => {
    const page = await open();
    await type(page, "Length overall", "8.2");
    await type(page, "Loaded weight", "2600");
    await type(page, "Bow height", "1.2");
    const titles = [await heading(page)];
    while (await page.evaluate(hasNext)) {
      const onward = await page.findLike("button", /^Next page/);
      titles.push(await turn(page, () => onward.click()));
      await page.settle();
      const pictures = await page.evaluate(() =>
        [...document.querySelectorAll("main [role=img]")].map((image) => image.ariaLabel));
      if (titles.at(-1) !== "Job pack") assert.ok(pictures.some((said) => /\d/.test(said)), titles.at(-1));
    }
    assert.deepEqual(titles, ["Quick check", "Boat", "Water", "Hold", "Shaft", "Bank", "Feeder", "Charging",
      "Mount", "Trim", "Control and sensors", "Job pack"]);
    await (await page.find("button", "Job sheet, to print")).click();
    const sheet = () => page.evaluate(() => document.querySelector("#paper")?.textContent ?? "");
    await until(async () => /8\.2 m long/.test(await sheet()), "the job sheet");
    await page.press("Escape");
    await becomes(sheet, "");
    await clean(page);
  });

  test("a lost graphics context takes nothing with it", async () => {
    const page = await open();
    await page.evaluate(() => window.tholeDrawn.context("lose"));
    await pause(200);
    const field = await type(page, "Length overall", "7.9");
    await becomes(() => field.value(), "7.9 m");
    const painted = await page.evaluate(() => window.tholeDrawn.painted);
    await page.evaluate(() => window.tholeDrawn.context("restore"));
    await until(() => page.evaluate((count) => window.tholeDrawn.painted > count, painted), "painted again");
    await page.settle();
    assert.ok(colours(decode(await page.screenshot())).size >= COLOURS_MIN);
    assert.equal(await field.value(), "7.9 m");
  });

  test("storage that is full is said once, and the address keeps the job", async () => {
    const page = await open();
    await page.evaluate(() => { Storage.prototype.setItem = () => { throw new Error("full"); }; });
    await type(page, "Length overall", "7.1");
    await until(() => page.evaluate(() => /keeps nothing/.test(document.getElementById("toast").textContent)),
      "a word about storage");
    await until(() => page.evaluate(() => location.hash.startsWith("#job=")), "the address holds the job");
    await page.evaluate(() => localStorage.clear());
    await page.reload();
    const length = await page.find("textbox", "Length overall");
    await becomes(() => length.value(), "7.1 m");
  });

  test("without a connection, after one visit", async () => {
    const own = await serving(SITE);
    const page = await engine.open(own.address, PHONE);
    opened.push(page);
    await type(page, "Length overall", "6.6");
    await until(() => page.evaluate(async () => {
      const kept = await navigator.serviceWorker.getRegistration();
      return kept?.active?.state === "activated";
    }), "the page is kept", LOAD_WITHIN_MS);
    own.close();
    await page.reload();
    const length = await page.find("textbox", "Length overall");
    await becomes(() => length.value(), "6.6 m");
  });

  test("two windows on one job: neither writes over the other", async () => {
    const folder = mkdtempSync(join(scratch, "two-"));
    cpSync(SITE, folder, { recursive: true });
    writeFileSync(join(folder, "two.html"), `<!doctype html><title>Two</title>
      <iframe src="./" width="400" height="800"></iframe><iframe width="400" height="800"></iframe>`);
    const own = await serving(folder);
    const page = await engine.open(`${own.address}two.html`, { ...DESK, foreign: true });
    opened.push(page);
    const usable = (index) => until(() => page.evaluate((at) =>
      Boolean(frames[at].document.documentElement?.dataset.ready), index), `window ${index}`, LOAD_WITHIN_MS);
    const lengthIn = (index) => page.evaluate((at) =>
      frames[at].document.querySelector("input[aria-label='Length overall']").value, index);
    const give = (index, text) => page.evaluate((at, value) => {
      const field = frames[at].document.querySelector("input[aria-label='Length overall']");
      field.focus();
      field.value = value;
      field.dispatchEvent(new Event("change", { bubbles: true }));
    }, index, text);
    const kept = (link) => until(() => page.evaluate((wanted) => Object.keys(localStorage)
      .some((key) => (localStorage.getItem(key) ?? "").includes(wanted)), link), "the job is kept");
    const hash = (index) => until(() => page.evaluate((at) => frames[at].location.hash.slice(1), index), "a link");

    await usable(0);
    await give(0, "6.3");
    await becomes(() => lengthIn(0), "6.3 m");
    await kept(await hash(0));
    await page.evaluate(() => { frames[1].location.href = "./"; });
    await usable(1);
    await becomes(() => lengthIn(1), "6.3 m");  // goes on from the latest
    await give(1, "9.3");
    await becomes(() => lengthIn(1), "9.3 m");
    await until(async () => await hash(1) !== await hash(0), "another link");
    await kept(await hash(1));
    await kept(await hash(0));
    assert.equal(await lengthIn(0), "6.3 m");
  });

  test("inside a shop's page: told, asked, and deaf to strangers", async () => {
    const folder = mkdtempSync(join(scratch, "shop-"));
    writeFileSync(join(folder, "index.html"), `<!doctype html><title>Shop</title>
      <script type="module" src="${site.address}embed.js"></script>
      <thole-configurator units="us"></thole-configurator>
      <script>window.told = [];
        document.addEventListener("design-change", (event) => told.push(event.detail));</script>`);
    const shop = await serving(folder);
    const page = await engine.open(shop.address, { ...DESK, foreign: true });
    opened.push(page);
    const job = (length) => JSON.stringify({ schema: 1, boat: { length_m: length } });
    await until(() => page.evaluate(async (text) => {
      const element = document.querySelector("thole-configurator");
      if (!element?.setJob) return false;
      await element.setJob(text);
      return true;
    }, job(7.25)), "the element takes a job", LOAD_WITHIN_MS);
    await until(() => page.evaluate(() => told.some(({ job }) => job.boat?.length_m === 7.25)), "the page is told");

    // A third page, at an origin of its own, knocks at the wizard's frame.
    const knocked = await page.evaluate(async (text) => {
      const frame = document.createElement("iframe");
      frame.srcdoc = `<script>
        const message = (type, payload) => ({ app: "thole", protocol: 1, id: 7, type, payload });
        for (let i = 0; i < parent.frames.length; ++i) {
          parent.frames[i].postMessage(message("init", {}), "*");
          parent.frames[i].postMessage(message("set", { job: ${JSON.stringify(text)} }), "*");
        }
        parent.postMessage("knocked", "*");
      <\/script>`;
      frame.sandbox = "allow-scripts";
      const done = new Promise((resolve) => addEventListener("message", ({ data }) => {
        if (data === "knocked") resolve(true);
      }));
      document.body.append(frame);
      return done;
    }, job(3.5));
    assert.equal(knocked, true);
    await pause(300);
    const now = await page.evaluate(() => document.querySelector("thole-configurator").getJob());
    assert.equal(now.boat.length_m, 7.25);
  });
}

// Runs in the page.
function hasNext() {
  return [...document.querySelectorAll("nav button")].some((button) => button.textContent.startsWith("Next page"));
}
