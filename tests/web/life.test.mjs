// What happens to a page in a hand: storage refused, two tabs, no graphics, keys alone, a lost thumb,
// a printer, a second phone. By role and name, in a real browser.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { after, afterEach, before, test } from "node:test";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DESK, PHONE, ready, ROOT, settle, startBrowser } from "./browser.mjs";

const AXE = readFileSync(join(ROOT, "tests/web/node_modules/axe-core/axe.min.js"), "utf8");

let web;
let contexts = [];
before(async () => { web = await startBrowser(); });
after(() => web?.close());
afterEach(async () => {
  for (const context of contexts) await context.close();
  contexts = [];
});

const NO_SERVICE_WORKER = { serviceWorkers: "block", locale: "en-GB" };

async function profile(options = PHONE, script = undefined) {
  const context = await web.browser.newContext({ ...NO_SERVICE_WORKER, ...options });
  contexts.push(context);
  if (script) await context.addInitScript(script);
  return context;
}
async function open(context, fragment = "") {
  const page = await context.newPage();
  await page.goto(web.address + fragment);
  await ready(page);
  await settle(page);
  return page;
}

const box = (page, name) => page.getByRole("textbox", { name, exact: true });
const button = (page, name) => page.getByRole("button", { name, exact: true });
const heading = (page) => page.getByRole("heading", { level: 1 });
const verdict = (page) => page.locator("[data-id=verdict]").textContent();
async function type(page, name, text) {
  await box(page, name).focus();
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await settle(page);
}
async function press(page, name) {
  await button(page, name).click();
  await settle(page);
}
async function violations(page) {
  if (!await page.evaluate(() => Boolean(window.axe))) await page.evaluate(AXE);
  const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  return found.violations.map((rule) => `${rule.id}: ${rule.nodes.map((node) => node.html).join(" | ")}`);
}

// --- storage and tabs -------------------------------------------------------------------------------

for (const [what, script] of [
  ["forbidden", () => {
    for (const name of ["localStorage", "sessionStorage"]) {
      Object.defineProperty(window, name, { get() { throw new DOMException("no", "SecurityError"); } });
    }
  }],
  ["full", () => {
    Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };
  }],
]) {
  test(`storage ${what}: said once, and the job lives on in the address`, async () => {
    const page = await open(await profile(PHONE, script));
    await type(page, "Length overall", "7.7");
    await page.getByText("This browser keeps nothing for you here").waitFor();
    await type(page, "Length overall", "7.8");
    const said = await page.getByText("keeps nothing here: copy the link").count();
    assert.equal(said, 1, "and it stays written where the link is copied");
    await page.waitForFunction(() => location.hash.length > 10);
    await page.waitForTimeout(700);
    await page.reload();
    await ready(page);
    await settle(page);
    assert.equal(await box(page, "Length overall").inputValue(), "7.8 m");
  });
}

test("two tabs keep two jobs, and each can be had again", async () => {
  const context = await profile();
  const first = await open(context);
  await type(first, "Length overall", "6.1");
  await first.waitForTimeout(700);
  const second = await open(context);
  assert.equal(await box(second, "Length overall").inputValue(), "6.1 m", "goes on from the latest");
  await type(second, "Length overall", "9.9");
  await second.waitForTimeout(700);
  await first.bringToFront();
  await first.reload();
  await ready(first);
  await settle(first);
  assert.equal(await box(first, "Length overall").inputValue(), "6.1 m");
  await press(first, "Earlier jobs on this device");
  await first.getByRole("list", { name: "Earlier jobs" }).getByRole("button").first().click();
  await settle(first);
  assert.equal(await box(first, "Length overall").inputValue(), "9.9 m");
  await press(first, "Undo");
  assert.equal(await box(first, "Length overall").inputValue(), "6.1 m");
});

test("a duplicated tab takes a slot of its own", async () => {
  const context = await profile();
  const first = await open(context);
  await type(first, "Length overall", "6.2");
  await first.waitForTimeout(700);
  const [copy] = await Promise.all([
    context.waitForEvent("page"), first.evaluate(() => { window.open(location.href); })]);
  await ready(copy);
  await settle(copy);
  await type(copy, "Length overall", "8.2");
  await copy.waitForTimeout(700);
  await copy.close();
  await first.bringToFront();
  await first.reload();
  await ready(first);
  await settle(first);
  assert.equal(await box(first, "Length overall").inputValue(), "6.2 m");
});

// --- without a canvas -------------------------------------------------------------------------------

test("without WebGL 2 the same engine answers in a plain form", async () => {
  const noGraphics = () => {
    delete HTMLCanvasElement.prototype.transferControlToOffscreen;
    HTMLCanvasElement.prototype.getContext = () => null;
  };
  const plain = await open(await profile(PHONE, noGraphics));
  assert.equal(await plain.locator("canvas").count(), 0);
  await type(plain, "Length overall", "4 ft");
  await plain.getByRole("alert").filter({ hasText: "Length overall must be between" }).waitFor();
  await type(plain, "Length overall", "7,4 m");
  await type(plain, "Bow height", "1.25");
  await plain.waitForTimeout(800);
  const said = await verdict(plain);

  const painted = await open(await profile());
  await type(painted, "Length overall", "7.4");
  await type(painted, "Bow height", "1.25");
  await painted.waitForTimeout(800);
  assert.equal(await verdict(painted), said);

  assert.ok(await plain.locator("[role=img] svg").count() > 0, "the picture is drawn by the document");
  assert.ok(await plain.getByText(/Deck at the mount above calm water, loaded\. From .* m to .* m\. yours\./).isVisible());
  assert.deepEqual(await violations(plain), []);
  await plain.getByRole("button", { name: /^Next page/ }).click();
  await settle(plain);
  assert.match(await heading(plain).textContent(), /Boat/);
  const [wide, room] = await plain.evaluate(() =>
    [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
  assert.ok(wide <= room);
});

// --- keys alone -------------------------------------------------------------------------------------

test("Tab goes in reading order, and what has the focus is seen", async () => {
  const page = await open(await profile(DESK));
  const order = [];
  for (let i = 0; i < 400; ++i) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === document.body) return null;
      const all = [...document.querySelectorAll("#sheet [data-id]")];
      const { top, bottom } = element.getBoundingClientRect();
      return { index: all.indexOf(element), id: element.dataset.id, top, bottom,
        opacity: getComputedStyle(element).opacity, outline: getComputedStyle(element).outlineStyle,
        strip: element.closest("header, nav") !== null };
    });
    if (!at || order.some((before) => before.id === at.id)) break;
    order.push(at);
  }
  assert.ok(order.length > 30, `${order.length} stops`);
  for (const [i, at] of order.entries()) {
    assert.equal(at.opacity, "1", at.id);
    assert.equal(at.outline, "solid", at.id);
    assert.ok(at.bottom > 0 && at.top < 800, `${at.id} is on the screen`);
    if (!at.strip) assert.ok(at.top >= 50, `${at.id} is not under the strip`);
    if (i > 0) assert.ok(at.index > order[i - 1].index, `${order[i - 1].id} before ${at.id}`);
  }
});

test("the whole of a check by keys: list of checks, a reason, Escape back", async () => {
  const page = await open(await profile(DESK));
  await button(page, "Show all checks").focus();
  await page.keyboard.press("Enter");
  await settle(page);
  assert.match(await heading(page).textContent(), /All checks/);
  assert.ok(await page.getByRole("list", { name: "Checks" }).getByRole("listitem").count() > 20);
  await page.keyboard.press("Escape");
  await settle(page);
  assert.match(await heading(page).textContent(), /Quick check/);

  await page.getByRole("navigation", { name: "Pages" }).getByRole("button", { name: /^Hold/ }).press("Enter");
  await settle(page);
  const why = page.getByRole("button", { name: /^Wind, bow-on/ });
  await why.press("Enter");
  await settle(page);
  assert.equal(await why.getAttribute("aria-expanded"), "true");
  assert.match(await page.locator("[data-id^='step.']").first().textContent(), /Source: /);
  await page.keyboard.press("Escape");
  await settle(page);
  assert.equal(await why.getAttribute("aria-expanded"), "false");

  await page.goBack();
  await settle(page);
  assert.match(await heading(page).textContent(), /Quick check/);
  await page.goForward();
  await settle(page);
  assert.match(await heading(page).textContent(), /Hold/);
});

test("the arrows choose among a few, and a handle of the picture is a slider", async () => {
  const page = await open(await profile(DESK));
  const open_water = page.getByRole("radio", { name: "Open water" });
  await page.getByRole("radio", { name: "Bay or estuary" }).focus();
  await page.keyboard.press("ArrowRight");
  await settle(page);
  assert.equal(await open_water.getAttribute("aria-checked"), "true");
  const handle = page.getByRole("slider", { name: "Bow height" });
  const before = await box(page, "Bow height").inputValue();
  await handle.press("ArrowUp");
  await settle(page);
  const now = await box(page, "Bow height").inputValue();
  assert.ok(parseFloat(now) > parseFloat(before), `${before}, then ${now}`);
  assert.equal(await handle.getAttribute("aria-valuetext"), now);
});

// --- a thumb ----------------------------------------------------------------------------------------

async function swipe(page, from, to) {
  const client = await page.context().newCDPSession(page);
  const send = (kind, points) => client.send("Input.dispatchTouchEvent", { type: kind, touchPoints: points });
  await send("touchStart", [from]);
  for (let i = 1; i <= 12; ++i) {
    const share = i / 12;
    await send("touchMove", [{ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }]);
  }
  await send("touchEnd", []);
  await settle(page);
}

test("a picture's handle follows the finger, the page beside it scrolls", async () => {
  const page = await open(await profile());
  const handle = page.getByRole("slider", { name: "Bow height" });
  const { x, y, width, height } = await handle.boundingBox();
  assert.ok(width >= 44 && height >= 44);
  const at = { x: x + width / 2, y: y + height / 2 };
  const before = parseFloat(await box(page, "Bow height").inputValue());
  await swipe(page, at, { x: at.x, y: at.y - 30 });
  assert.ok(parseFloat(await box(page, "Bow height").inputValue()) > before);
  assert.equal(await page.evaluate(() => window.scrollY), 0);
  await press(page, "Undo");
  assert.equal(parseFloat(await box(page, "Bow height").inputValue()), before, "one drag is one step");

  const fresh = await open(contexts[0]);
  await swipe(fresh, { x: 80, y: 240 }, { x: 80, y: 40 });
  assert.ok(await fresh.evaluate(() => window.scrollY) > 100);
});

test("the keyboard suits the field, Next goes on, and the way on makes room for it", async () => {
  const page = await open(await profile());
  assert.equal(await box(page, "Length overall").getAttribute("inputmode"), "decimal");
  assert.equal(await page.getByRole("navigation", { name: "Way on" }).count(), 1);
  await box(page, "Length overall").tap();
  await settle(page);
  assert.equal(await page.getByRole("navigation", { name: "Way on" }).count(), 0);
  assert.equal(await box(page, "Length overall").getAttribute("enterkeyhint"), "next");
  await page.keyboard.type("24 ft 6 1/2 in");
  await page.keyboard.press("Enter");
  await settle(page);
  assert.equal(await box(page, "Length overall").inputValue(), "7.48 m");
  assert.ok(await box(page, "Loaded weight").evaluate((element) => element === document.activeElement));
  await page.keyboard.type("4400 lb");
  await page.keyboard.press("Enter");
  await page.keyboard.type("1,35 m");
  await page.keyboard.press("Enter");
  await settle(page);
  assert.equal(await box(page, "Loaded weight").inputValue(), "1996 kg");
  assert.equal(await box(page, "Bow height").inputValue(), "1.35 m");
  await page.getByRole("radio", { name: "US", exact: true }).click();
  await settle(page);
  assert.equal(await box(page, "Bow height").inputValue(), "4′ 5 1/8″");
  await page.evaluate(() => document.activeElement.blur());
  await settle(page);
  assert.equal(await page.getByRole("navigation", { name: "Way on" }).count(), 1);
});

test("what would make it fit is a tap away, and a tap undoes it", async () => {
  const page = await open(await profile());
  await page.getByRole("heading", { name: "What would make it fit" }).waitFor({ state: "attached" });
  for (let taps = 0; taps < 5 && !/^Fits\b(?! with)/.test(await verdict(page)); ++taps) {
    await page.locator("[data-id^='fit.']").first().click();
    await settle(page);
    await page.waitForTimeout(800);  // the live region speaks once the values rest
  }
  assert.match(await verdict(page), /^Fits\b(?! with)/);
  while (await button(page, "Undo").isEnabled()) await press(page, "Undo");
  await page.waitForTimeout(800);
  assert.match(await verdict(page), /^Fits with changes/);
});

// --- handing on -------------------------------------------------------------------------------------

test("the QR code on the screen is the link", async () => {
  const page = await open(await profile());
  await type(page, "Length overall", "7.3");
  await page.waitForTimeout(700);
  await press(page, "QR code");
  const code = page.getByRole("img", { name: "QR code of the link to this job" });
  await code.scrollIntoViewIfNeeded();
  await settle(page);
  const file = join(mkdtempSync(join(tmpdir(), "thole-qr-")), "screen.png");
  writeFileSync(file, await page.screenshot());
  const read = execFileSync("zbarimg", ["-q", "--raw", file]).toString().trim();
  assert.equal(read, await page.evaluate(() => location.href));
});

test("the system's share sheet gets the link where there is one", async () => {
  const page = await open(await profile(PHONE, () => {
    navigator.share = (what) => { window.shared = what; return Promise.resolve(); };
  }));
  await press(page, "Share");
  const shared = await page.evaluate(() => window.shared);
  assert.ok(shared.url.startsWith(`${web.address}#job=`));
});

test("the job sheet is shown, saved, printed, and left again", async () => {
  const page = await open(await profile(DESK));
  await press(page, "Job sheet, to print");
  const sheet = page.locator("#paper");
  assert.match(await sheet.textContent(), /Weight added to the boat/);
  assert.ok((await sheet.textContent()).includes(String(new Date().getFullYear())), "it is dated");
  assert.ok(await button(page, "Close").evaluate((element) => element === document.activeElement));
  assert.deepEqual(await violations(page), []);
  const [file] = await Promise.all([page.waitForEvent("download"), button(page, "Save as a file").click()]);
  assert.match(file.suggestedFilename(), /^thole-.*\.html$/);
  assert.match(readFileSync(await file.path(), "utf8"), /^<!doctype html>/i);
  await page.keyboard.press("Escape");
  await sheet.waitFor({ state: "detached" });
  assert.match(await heading(page).textContent(), /Quick check/);
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  assert.equal(await sheet.count(), 1, "Ctrl+P prints the sheet, not a canvas");
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  assert.equal(await sheet.count(), 0);
});

// Millimetres as CSS and as PDF count them.
const css = (mm) => mm / 25.4 * 96;
const points = (mm) => mm / 25.4 * 72;
const mediaBoxes = (pdf) => [...pdf.toString("latin1").matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/g)]
  .map(([, wide, high]) => [Number(wide), Number(high)]);

test("the plate is printed at true size, and goes out as a cut file", async () => {
  const page = await open(await profile(DESK));
  await page.getByRole("navigation").getByRole("button", { name: /^Mount/ }).first().click();
  await settle(page);
  await press(page, "Drawings to make it by");
  for (const [paper, wide, high] of [["Drawing with all measures", 420, 297], ["Drill template, A4", 210, 297],
    ["Drill template, Letter", 215.9, 279.4]]) {
    await press(page, paper);
    assert.deepEqual(await violations(page), [], paper);
    await page.emulateMedia({ media: "print" });
    const box = await page.locator("#paper svg").first().boundingBox();
    const sides = [box.width, box.height].sort((a, b) => a - b);
    [wide, high].sort((a, b) => a - b).forEach((mm, i) => assert.ok(Math.abs(sides[i] - css(mm)) < 0.5, `${paper}: ${sides}`));
    const boxes = mediaBoxes(await page.pdf({ preferCSSPageSize: true }));
    assert.equal(boxes.length, await page.locator("#paper svg").count(), "a page each");
    for (const sheet of boxes) {
      sheet.sort((a, b) => a - b);
      [wide, high].sort((a, b) => a - b).forEach((mm, i) => assert.ok(Math.abs(sheet[i] - points(mm)) < 1, `${paper}: ${sheet}`));
    }
    await page.emulateMedia({ media: null });
    await page.keyboard.press("Escape");
    await page.locator("#paper").waitFor({ state: "detached" });
  }
  for (const [name, ending, version] of [["Cut file, DXF R12", /-plate_mm\.dxf$/, "AC1009"], ["Cut file, DXF 2000", /-plate\.dxf$/, "AC1015"]]) {
    const [file] = await Promise.all([page.waitForEvent("download"), button(page, name).click()]);
    assert.match(file.suggestedFilename(), ending);
    const text = readFileSync(await file.path(), "latin1");
    assert.ok(text.includes(version) && text.trimEnd().endsWith("EOF"), name);
  }
});

test("a job goes out as a file and comes in again; a file that is none changes nothing", async () => {
  const context = await profile(DESK);
  const page = await open(context);
  await type(page, "Length overall", "8.1");
  await press(page, "Files");
  const [saved] = await Promise.all([page.waitForEvent("download"), button(page, "Save the job").click()]);
  const path = await saved.path();
  assert.equal(JSON.parse(readFileSync(path, "utf8")).boat.length_m, 8.1);
  await type(page, "Length overall", "5.5");
  const load = async (file) => {
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button(page, "Open a job").click()]);
    await chooser.setFiles(file);
    await page.waitForTimeout(300);
    await settle(page);
  };
  await load(path);
  assert.equal(await box(page, "Length overall").inputValue(), "8.1 m");
  const wrong = join(mkdtempSync(join(tmpdir(), "thole-file-")), "wrong.json");
  writeFileSync(wrong, "{\"schema\": 1, \"boat\": {\"length_m\": [");
  await load(wrong);
  assert.match(await page.locator("#sheet").textContent(), /your job is unchanged/);
  assert.equal(await box(page, "Length overall").inputValue(), "8.1 m");
});

// --- rules of access in the states that a person meets ------------------------------------------------

test("no violation of the accessibility rules: error shown, reason opened, night, large text", async () => {
  for (const [state, options, prepare] of [
    ["error shown", PHONE, (page) => type(page, "Length overall", "long")],
    ["reason opened", PHONE, async (page) => {
      await page.evaluate(() => window.scrollTo(0, 0));
      for (const name of [/^Next page/, /^Next page/, /^Next page/]) {
        await page.getByRole("button", { name }).click();
        await settle(page);
      }
      await page.getByRole("button", { name: /^Wind, bow-on/ }).click();
      await page.getByRole("button", { name: "Every step" }).click();
      await settle(page);
    }],
    ["night", { ...PHONE, colorScheme: "dark" }, (page) => press(page, "Show all checks")],
    ["QR code and files", DESK, async (page) => { await press(page, "QR code"); await press(page, "Files"); }],
    ["200 % text", PHONE, async (page) => {
      await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
      await page.reload();
      await ready(page);
      await settle(page);
    }],
  ]) {
    const page = await open(await profile(options));
    await prepare(page);
    assert.deepEqual(await violations(page), [], state);
  }
});

test("landscape, and a small phone: nothing runs off the side, the field in hand stays in view", async () => {
  for (const viewport of [{ width: 740, height: 360 }, { width: 320, height: 640 }]) {
    const page = await open(await profile({ ...PHONE, viewport }));
    const [wide, room] = await page.evaluate(() =>
      [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
    assert.ok(wide <= room);
    await box(page, "Bow height").focus();
    await settle(page);
    const { y, height } = await box(page, "Bow height").boundingBox();
    assert.ok(y > 50 && y + height < viewport.height - 8, `${y} to ${y + height} of ${viewport.height}`);
  }
});
