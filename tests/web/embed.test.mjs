// The real wizard inside a shop's page on another origin, by role and name; and the demo page whole.
// embed_contract.test.mjs has the finer points of the talk between the two.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, afterEach, before, test } from "node:test";
import { DESK, PHONE, ROOT, SITE } from "./browser.mjs";
import { decode } from "./png.mjs";
import { element, heard, openShop, ROOM, until, wizardFrame } from "./shop.mjs";

const AXE = readFileSync(join(ROOT, "tests/web/node_modules/axe-core/axe.min.js"), "utf8");
const CATALOGUE = readFileSync(join(ROOT, "web/demo/catalogue.json"), "utf8");
const JOB = JSON.parse(readFileSync(join(ROOT, "presets/jobs/bay-boat-in-the-estuary.json"), "utf8"));

let shop;
let opened = [];
before(async () => {
  shop = await openShop(SITE);
  shop.put("parts.json", CATALOGUE);
});
after(() => shop?.close());
afterEach(async () => {
  for (const page of opened) await page.context().close();
  opened = [];
});

// A page with the element, once the wizard has taken its first message; `frame` is the wizard.
async function open(attributes = "", options = {}) {
  const page = await shop.page(element(shop, attributes), options);
  opened.push(page);
  await heard(page, "ready");
  return { page, frame: await wizardFrame(page, shop) };
}
const call = (page, method, ...args) => page.evaluate(
  ([name, values]) => document.querySelector("thole-configurator")[name](...values), [method, args]);
const box = (frame, name) => frame.getByRole("textbox", { name, exact: true });
const button = (frame, name) => frame.getByRole("button", { name, exact: true });

test("what is typed in the wizard is told to the page, and the page can give and take the job", async () => {
  const { page, frame } = await open();
  await box(frame, "Length overall").fill("25 ft");
  await box(frame, "Length overall").press("Enter");
  const detail = await heard(page, "design-change", (said) => said.job.boat?.length_m);
  assert.equal(detail.job.boat.length_m, 7.62);
  assert.match(detail.link, /^http:\/\/127\.0\.0\.1:\d+\/#job=[\w-]+$/);
  assert.ok(detail.summary.price > 0);
  assert.ok(detail.summary.outputs.length >= 12);

  await call(page, "setJob", JOB);
  const { $schema, ...job } = JOB;
  assert.deepEqual(await call(page, "getJob"), job);
  const changed = await heard(page, "design-change", (said) => said.job.title);
  assert.equal(changed.job.title, JOB.title);
  await until(async () => (await box(frame, "Length overall").inputValue()).includes("6"));
  // The link leads to the same job.
  await call(page, "setJob", { schema: 1 });
  await call(page, "setJob", changed.link);
  assert.deepEqual(await call(page, "getJob"), job);
});

test("a link cut off, a file of another kind: refused by name, the present job stays", async () => {
  const { page } = await open();
  await call(page, "setJob", JOB);
  const before = await call(page, "getJob");
  const { link } = await heard(page, "design-change", (said) => said.job.title);
  for (const bad of [link.slice(0, -4), "{", "[]", "nothing", "<img src=x onerror=alert(1)>"]) {
    const error = await page.evaluate((text) => document.querySelector("thole-configurator").setJob(text)
      .then(() => null, ({ name, message, issues }) => ({ name, message, issues })), bad);
    assert.equal(error?.name, "TholeError", bad);
    assert.ok(error.issues[0].message.length > 10, bad);
    assert.deepEqual(await call(page, "getJob"), before, bad);
  }
});

test("the shop's catalogue, units and pages", async () => {
  const { page, frame } =
    await open('catalogue="/parts.json" units="us" pages="quick hold pack" page="hold"');
  const detail = await heard(page, "design-change");
  assert.equal(detail.summary.currency, "USD");
  await frame.getByRole("heading", { level: 1, name: "Hold" }).waitFor();
  const pages = frame.getByRole("navigation", { name: "Pages" }).getByRole("button");
  assert.deepEqual((await pages.allTextContents()).map((words) => words.replace(/,.*/, "")),
    ["Quick check", "Hold", "Job pack"]);
  await heard(page, "design-change", (said) => said.summary.outputs.some(({ text }) => text.includes("′")));
  await call(page, "focusPage", "pack");
  await frame.getByRole("heading", { level: 1, name: "Job pack" }).waitFor();
  await call(page, "focusPage", "bank");  // not among the shop's pages
  await call(page, "getJob");
  assert.equal(await frame.getByRole("heading", { level: 1, name: "Bank" }).count(), 0);
});

test("a catalogue of half a megabyte is taken, one beyond the limit is refused", async () => {
  const catalogue = JSON.parse(CATALOGUE);
  const more = { ...catalogue, sundries: [...catalogue.sundries] };
  for (let i = 0; more.sundries.length < 1000; i += 1) {
    const label = `Extra ${"x".repeat(110)}`;
    more.sundries.push({ ...catalogue.sundries[0], id: `extra-${i}`, label, count: 0 });
  }
  const { page } = await open();
  await call(page, "setCatalogue", JSON.stringify(more, null, 40));
  const refused = await page.evaluate(() => document.querySelector("thole-configurator")
    .setCatalogue(" ".repeat(1_000_001)).catch((error) => error.message));
  assert.match(refused, /./);
  assert.deepEqual(await call(page, "getJob"), { schema: 1 });
});

test("nothing asks for a quote until the shop wants it; then it is handed over whole", async () => {
  const plain = await open();
  assert.equal(await plain.frame.getByRole("button", { name: /quote|enquiry|yard/i }).count(), 0);
  const { page, frame } = await open('contact-label="Ask the yard"');
  await button(frame, "Ask the yard").click();
  const detail = await heard(page, "quote-request");
  assert.ok(detail.parts.length > 5);
  assert.ok(detail.parts.every((part) => part.label && part.quantity > 0));
  assert.ok(detail.tasks.length > 3);
  assert.ok(detail.cautions.length > 3);
  assert.match(detail.link, /#job=/);
  await call(page, "quoteResult", { ok: true, text: "We answer within two days." });
  await frame.getByText("We answer within two days.").waitFor();
});

test("the shop's colours, kept readable; day and night as the page says", async () => {
  shop.put("shop.css", "thole-configurator { --thole-paper: #FBF4EA; --thole-accent: #FFD0E0 }");
  const { page, frame } = await open('theme="light"', { options: { colorScheme: "dark" } });
  const paper = async () => {
    const { x, y, height } = await page.locator("thole-configurator").boundingBox();
    const clip = { x: x + 4, y: y + height - 8, width: 2, height: 2 };
    return decode(await page.screenshot({ clip })).at(0, 0);
  };
  const dressed = async (red, green, blue) =>
    (await paper()).every((value, i) => Math.abs(value - [red, green, blue][i]) <= 2);
  await until(() => dressed(0xFB, 0xF4, 0xEA));
  await page.evaluate(() => document.querySelector("thole-configurator").setAttribute("theme", "dark"));
  await until(async () => (await paper()).every((value) => value < 0x40));
  assert.ok(await frame.evaluate(() => document.documentElement.scrollWidth <= innerWidth));
  shop.put("shop.css", ROOM);
});

test("a phone: full screen, pages turned inside, Back closes it, focus comes back", async () => {
  const page = await shop.page(element(shop), { options: PHONE });
  opened.push(page);
  const openIt = page.getByRole("button", { name: "Open full screen" });
  await openIt.tap();
  await heard(page, "ready");
  const frame = await wizardFrame(page, shop);
  await until(() => frame.evaluate(() => document.documentElement.dataset.ready));
  const size = await frame.evaluate(() => [innerWidth, innerHeight]);
  assert.equal(size[0], 412);
  assert.ok(size[1] > 800);
  await frame.getByRole("button", { name: /^Next page/ }).click();
  await frame.getByRole("heading", { level: 1, name: "Boat" }).waitFor();
  const dialog = page.getByRole("dialog");
  assert.equal(await dialog.count(), 1);
  await page.goBack();  // a page turned inside a shop's page is no step of its own
  await until(async () => (await dialog.count()) === 0);
  assert.equal(page.url(), shop.shopAddress);
  await until(() => openIt.evaluate((one) => one === one.getRootNode().activeElement));
});

test("no request beyond its own files and the catalogue, no cookie, nothing stored, no worker", async () => {
  const { page, frame } = await open('catalogue="/parts.json" contact-label="Ask"');
  await call(page, "setJob", JOB);
  await heard(page, "design-change", (said) => said.job.title);
  await until(() => frame.evaluate(() => document.documentElement.dataset.painted));
  for (const url of page.asked) {
    const { origin, pathname } = new URL(url);
    const own = origin === shop.toolOrigin;
    assert.ok(own || origin === shop.shopAddress.slice(0, -1), url);
    if (own) assert.match(pathname, /^\/(|embed\.js|[\w-]+\.[0-9a-f]{10}\.(js|css|wasm|svg))$/, url);
  }
  assert.deepEqual(await page.context().cookies(), []);
  assert.deepEqual(await frame.evaluate(async () => [localStorage.length, sessionStorage.length,
    (await indexedDB.databases()).length, (await caches.keys()).length,
    (await navigator.serviceWorker.getRegistrations()).length]), [0, 0, 0, 0, 0]);
  assert.deepEqual(page.problems, []);
});

test("no violations by axe-core on the page around it, desk and phone", async () => {
  for (const options of [DESK, PHONE]) {
    const page = await shop.page(`<main>${element(shop)}</main>`, { options });
    opened.push(page);
    if (options === DESK) await heard(page, "ready");
    else await page.getByRole("button", { name: "Open full screen" }).waitFor();
    await page.evaluate(AXE);
    const found = await page.evaluate(() => window.axe.run(document, { iframes: false,
      rules: { region: { enabled: false } } }));  // the test's own bare paragraphs stand outside main
    assert.deepEqual(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), []);
  }
});

test("a plain frame without messages works, and keeps nothing", async () => {
  const page = await shop.page(`<iframe title="Configurator" width="900" height="600"
    src="${shop.toolAddress}?embed"></iframe>`);
  opened.push(page);
  const frame = await wizardFrame(page, shop);
  await box(frame, "Length overall").fill("8 m");
  await box(frame, "Length overall").press("Enter");
  await until(() => frame.evaluate(() => location.hash.startsWith("#job=")));
  assert.equal(await frame.evaluate(() => localStorage.length), 0);
});

test("the demo: a quote goes into the shop's own form and is kept on the page", async () => {
  const context = await shop.browser.newContext({ locale: "en-US", ...DESK });
  const page = await context.newPage();
  opened.push(page);
  const problems = [];
  page.on("pageerror", (error) => problems.push(String(error)));
  page.on("console", (message) => { if (message.type() === "error") problems.push(message.text()); });
  await page.goto(`${shop.toolAddress}demo/`);
  const frame = await until(() => page.frames().find((one) => one.url().includes("?embed")));
  await button(frame, "Put it into the enquiry").click();
  await page.getByRole("heading", { name: "Your design" }).waitFor();
  assert.match(await page.locator("#figures").textContent(), /Motor.*\$[\d,]+/s);
  const link = await page.getByRole("link", { name: "Open this design" }).getAttribute("href");
  assert.match(link, /#job=/);
  const asked = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.getByRole("textbox", { name: "Name" }).fill("N. O. Body");
  await page.getByRole("textbox", { name: "How we reach you" }).fill("by flag");
  await page.getByRole("button", { name: "Keep this enquiry" }).click();
  assert.match(await page.getByRole("listitem").textContent(), /N\. O\. Body, by flag: .*lines of parts/);
  assert.deepEqual(asked, []);
  assert.deepEqual(problems, []);
});
