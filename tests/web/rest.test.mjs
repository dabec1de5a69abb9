// The program comes in two parts (tools/split_program.mjs): a first visit fetches the first alone, the
// rest follows the first touch, and is never waited for where the profile of a first visit has told right.

import assert from "node:assert/strict";
import { join } from "node:path";
import { after, afterEach, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { PHONE, ready, settle, SITE, startBrowser } from "./browser.mjs";

let web, context;
before(async () => { web = await startBrowser(); });
after(() => web?.close());
afterEach(() => context?.close());

const isRest = (url) => /\/rest\.[0-9a-f]+\.wasm$/.test(url.pathname ?? new URL(url).pathname);

// A page of a browser that was never here, and how the rest was asked for: "fetch" or, on the spot, "xhr".
async function visit(fragment = "", prepare = () => {}) {
  context = await web.browser.newContext({ serviceWorkers: "block", locale: "en-GB", ...PHONE });
  const page = await context.newPage();
  const asked = [];
  page.on("request", (request) => { if (isRest(request.url())) asked.push(request.resourceType()); });
  await prepare(page);
  await page.goto(web.address + fragment);
  await ready(page);
  await settle(page);
  return { page, asked };
}
const loa = (page) => page.getByRole("textbox", { name: "Length overall", exact: true });
async function typeLength(page, text) {
  await loa(page).focus();
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await settle(page);
}

test("a first visit does without the rest; the first touch fetches it, once", async () => {
  const { page, asked } = await visit();
  await page.setViewportSize({ width: 1280, height: 800 });
  await settle(page);
  assert.deepEqual(asked, [], "the first picture and a turn of the phone need the first part alone");
  await typeLength(page, "7.7");
  await page.locator("nav button[aria-current] + button").click();
  await settle(page);
  assert.deepEqual(asked, ["fetch"]);
});

test("the first part alone reads as the whole program does", async () => {
  const words = (page) => page.evaluate(() => [...document.querySelectorAll("[data-id]")].map((element) =>
    [element.textContent, element.getAttribute("aria-label"), element.getAttribute("aria-description"), element.value]));
  const { page, asked } = await visit();
  const first = await words(page);
  assert.deepEqual(asked, []);
  assert.ok(first.length > 20, `${first.length} elements`);
  const whole = await context.newPage();
  await whole.goto(pathToFileURL(join(SITE, "../thole.html")).href);
  await ready(whole);
  await settle(whole);
  assert.deepEqual(await words(whole), first);
});

test("a link opens whole", async () => {
  const first = await visit();
  await typeLength(first.page, "7.9");
  await first.page.waitForFunction(() => location.hash.length > 10);
  const fragment = await first.page.evaluate(() => location.hash);
  await context.close();
  const { page, asked } = await visit(fragment);
  assert.match(await loa(page).inputValue(), /7\.9/);
  assert.deepEqual(asked, ["fetch"]);
});

test("a link put into the address of an untouched page opens", async () => {
  const first = await visit();
  await typeLength(first.page, "7.9");
  await first.page.waitForFunction(() => location.hash.length > 10);
  const fragment = await first.page.evaluate(() => location.hash);
  await context.close();
  const { page, asked } = await visit();
  await page.evaluate((hash) => { location.hash = hash; }, fragment);
  await page.waitForFunction(() => document.querySelector('[data-id="boat.length_m"]').value.startsWith("7.9"));
  assert.match(await loa(page).inputValue(), /7\.9/);
  assert.deepEqual(asked, ["fetch"]);
});

test("without a connection for the rest it says so, keeps what was typed, and the next touch tries again", async () => {
  let broken = true;
  const { page, asked } = await visit("", (page) => page.route(isRest, (route) => (broken ? route.abort() : route.continue())));
  await typeLength(page, "7.7");
  await page.getByText("Part of the program could not be fetched.").first().waitFor();
  assert.match(await loa(page).inputValue(), /7\.7/);
  broken = false;
  await loa(page).focus();
  await page.keyboard.press("End");
  await page.keyboard.type("5");
  await page.keyboard.press("Enter");
  await settle(page);
  await page.waitForFunction(() => location.hash.length > 10);
  assert.match(await loa(page).inputValue(), /7\.75/);
  assert.ok(asked.length >= 2 && asked.every((how) => how === "fetch"), asked.join());
});

test("called before it is here, the rest is fetched on the spot: printing an untouched page", async () => {
  const { page, asked } = await visit();
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  assert.deepEqual(asked, ["xhr"]);
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await typeLength(page, "7.7");
  assert.deepEqual(asked, ["xhr"], "and is there for good");
});
