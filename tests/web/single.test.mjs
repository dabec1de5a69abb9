// The page as one file, opened from a disk in Chromium: the program's own answers, and no request at all.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import { copyFileSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, afterEach, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { bytesOf, lettersOf } from "../../web/single/letters.js";
import { CHROMIUM, CLI, DESK, PHONE, ready, settle, SITE } from "./browser.mjs";

const SINGLE = join(SITE, "../thole.html");
const LARGEST_BYTES = 800_000;

// A folder with nothing else in it, and a name that needs care in an address.
const folder = mkdtempSync(join(tmpdir(), "thole single ü #1 "));
const file = join(folder, "thole.html");
let browser;
let opened = [];
before(async () => {
  copyFileSync(SINGLE, file);
  browser = await chromium.launch(CHROMIUM);
});
after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});
afterEach(async () => {
  for (const page of opened) await page.context().close();
  opened = [];
});

async function open(options = PHONE, fragment = "") {
  const context = await browser.newContext({ ...options, locale: "en-GB", offline: true });
  const page = await context.newPage();
  opened.push(page);
  page.problems = [];
  page.requests = [];
  page.on("pageerror", (error) => page.problems.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error") page.problems.push(message.text());
  });
  page.on("request", (request) => page.requests.push(request.url()));
  await page.goto(pathToFileURL(file).href + fragment);
  await ready(page);
  await settle(page);
  return page;
}
const box = (page, name) => page.getByRole("textbox", { name, exact: true });
const verdict = (page) => page.locator("[data-id=verdict]").textContent();
async function type(page, name, text) {
  await box(page, name).tap();
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
  await settle(page);
}
async function threeNumbers(page) {
  await type(page, "Length overall", "7.6");
  await type(page, "Loaded weight", "2300");
  await type(page, "Bow height", "1.1");
}
async function copiedLink(page) {
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.getByRole("button", { name: "Copy link", exact: true }).tap();
  await page.getByText("Link copied").waitFor();
  return page.evaluate(() => navigator.clipboard.readText());
}

test("three numbers, the program's verdict, a link that opens again; no request to anyone", async () => {
  const page = await open();
  await threeNumbers(page);
  const said = await verdict(page);
  const link = await copiedLink(page);
  assert.ok(link.startsWith(`${pathToFileURL(file).href}#job=`), link);

  const job = execFileSync(CLI, ["unlink", link]);
  const design = JSON.parse(execFileSync(CLI, ["evaluate", "-"], { input: job }));
  assert.equal(said.toLowerCase().startsWith(design.verdict), true, `${said} / ${design.verdict}`);

  const other = await open(PHONE, new URL(link).hash);
  assert.equal(await verdict(other), said);
  for (const each of [page, other]) {
    assert.deepEqual(each.problems, []);
    // The document itself, and what it carries.
    const asked = each.requests.filter((url) => !url.startsWith("data:"));
    assert.deepEqual(asked.map((url) => url.replace(/#.*/, "")), [pathToFileURL(file).href]);
  }
});

test("pages, Back and a reload work as on the web", async () => {
  const page = await open();
  await threeNumbers(page);
  await page.waitForFunction(() => location.hash.startsWith("#job="));
  const title = () => page.getByRole("heading", { level: 1 }).textContent();
  const first = await title();
  await page.getByRole("button", { name: /^Next page/ }).tap();
  await settle(page);
  assert.notEqual(await title(), first);
  await page.goBack();
  await settle(page);
  assert.equal(await title(), first);
  await page.reload();
  await ready(page);
  await settle(page);
  assert.match(await box(page, "Length overall").inputValue(), /^7\.6/);
  assert.deepEqual(page.problems, []);
});

test("it is painted, and registers nothing", async () => {
  const page = await open(DESK);
  await page.locator("html[data-painted]").waitFor({ state: "attached" });
  assert.ok((await page.screenshot()).length > 20_000, "more than a blank sheet");
  assert.equal(await page.locator("link[rel=manifest], script[src]").count(), 0);
});

test("where storage is refused it works all the same", async () => {
  const context = await browser.newContext({ ...PHONE, locale: "en-GB" });
  await context.addInitScript(() => {
    for (const name of ["localStorage", "sessionStorage", "caches"]) {
      Object.defineProperty(window, name, { get() { throw new DOMException("refused", "SecurityError"); } });
    }
  });
  const page = await context.newPage();
  opened.push(page);
  await page.goto(pathToFileURL(file).href);
  await ready(page);
  await settle(page);
  await threeNumbers(page);
  assert.match(await verdict(page), /^(Fits|Fits with changes|Does not fit)\b/);
});

test("bytes survive as letters, of which none begins a tag", () => {
  for (const length of [0, 1, 8, 9, 10, 8999]) {
    for (const bytes of [randomBytes(length), Buffer.alloc(length), Buffer.alloc(length, 255)]) {
      const letters = lettersOf(bytes);
      assert.match(letters, /^[ -;=-~]*$/);
      assert.deepEqual(Buffer.from(bytesOf(letters, length)), bytes);
    }
  }
});

test("its policy allows its own script and style, by their digests, and no connection", () => {
  const text = readFileSync(SINGLE, "utf8");
  const [, policy] = text.match(/http-equiv="Content-Security-Policy" content="([^"]*)"/);
  const own = "'sha256-[\\w+/]+=*'";
  assert.match(policy,
    new RegExp(`^default-src 'none'; script-src ${own} 'wasm-unsafe-eval'; style-src ${own};`));
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|connect-src|https?:/);
  assert.ok(statSync(SINGLE).size < LARGEST_BYTES);
});
