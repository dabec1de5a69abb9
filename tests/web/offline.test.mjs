// Without a connection, and from one build to the next, in Chromium: the built site and a second one made
// from the same sources with another title, served in turn under one address.

import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync,
  writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, afterEach, before, test } from "node:test";
import { chromium } from "playwright-core";
import { serve } from "../../tools/serve.mjs";
import { CHROMIUM, PHONE, ready, ROOT, settle, SITE } from "./browser.mjs";

const WEB = join(ROOT, "web");
const OFFER = "A newer Thole is ready";
const AGREE = "Change to the newer one";
const TOLD = "Works without a connection now";

const folder = mkdtempSync(join(tmpdir(), "thole-offline-"));
const NEWER = join(folder, "newer");
let browser;
let closing = [];

before(async () => {
  const web = join(folder, "web");
  cpSync(WEB, web, { recursive: true });
  const page = readFileSync(join(web, "index.html"), "utf8");
  writeFileSync(join(web, "index.html"), page.replace(/<title>.*<\/title>/, "<title>Thole, newer</title>"));
  execFileSync(process.execPath, [join(ROOT, "tools/make_site.mjs"), web, join(SITE, "../page"), NEWER]);
  browser = await chromium.launch(CHROMIUM);
});
after(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});
afterEach(async () => {
  for (const close of closing.reverse()) await close();
  closing = [];
});

// One address whose content can be exchanged, and what was asked of it.
async function address() {
  const live = join(mkdtempSync(join(folder, "live-")), "site");
  const deploy = (site) => {
    symlinkSync(site, `${live}.next`);
    renameSync(`${live}.next`, live);
  };
  deploy(SITE);
  const server = await serve(live);
  closing.push(server.close);
  return { url: server.address, deploy, cut: server.close };
}

// A copy of the site in which files read otherwise; the packed ones go, or they would be sent instead.
function altered(files) {
  const copy = mkdtempSync(join(folder, "altered-"));
  cpSync(SITE, copy, { recursive: true });
  for (const [name, change] of Object.entries(files)) {
    const bytes = change(readFileSync(join(copy, name)));
    for (const ending of [".br", ".gz"]) rmSync(join(copy, name + ending), { force: true });
    if (bytes) writeFileSync(join(copy, name), bytes);
    else rmSync(join(copy, name));
  }
  return copy;
}

// A profile of its own; what its pages say is gathered in window.said, the pages loaded in page.loads.
async function profile() {
  const context = await browser.newContext({ ...PHONE, locale: "en-GB" });
  closing.push(() => context.close());
  await context.addInitScript(() => {
    window.said = [];
    const listen = () => new MutationObserver(() => window.said.push(document.body.innerText))
      .observe(document.body, { subtree: true, childList: true, characterData: true });
    document.addEventListener("DOMContentLoaded", listen);
  });
  return context;
}
async function visit(context, url) {
  const page = await context.newPage();
  page.loads = 0;
  // Asked for, whether or not it came as far as loading.
  page.on("request", (request) => { if (request.isNavigationRequest()) page.loads += 1; });
  await page.goto(url);
  await ready(page);
  return page;
}
const said = (page, text) =>
  page.waitForFunction((words) => window.said.some((all) => all.includes(words)), text);

async function keptVisit(context, url) {
  const page = await visit(context, url);
  await said(page, TOLD);
  await settle(page);
  return page;
}

const box = (page, name) => page.getByRole("textbox", { name, exact: true });
const lengthOf = (page) => box(page, "Length overall").inputValue();
const look = (page) => page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
const build = (page) => page.evaluate(() => document.querySelector('meta[name="thole-build"]').content);
const cacheNames = (page) => page.evaluate(() => caches.keys());
const buildOf = (site) => JSON.parse(readFileSync(join(site, "version.json"), "utf8")).build;
const agree = (page) => page.getByRole("button", { name: AGREE, exact: true }).click();

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
const ofAnotherBuild = (bytes) => Buffer.from(bytes.toString().replaceAll(buildOf(SITE), "0000000000"));
const arrived = (page, site) => page.waitForFunction((id) =>
  document.documentElement.dataset.ready && document.querySelector('meta[name="thole-build"]').content === id,
buildOf(site));

// --- without a connection ------------------------------------------------------------------------------

test("after one visit the page opens, opens a link and keeps the job without a connection", async () => {
  const { url, cut } = await address();
  const context = await profile();
  const page = await keptVisit(context, url);
  await threeNumbers(page);
  await page.waitForFunction(() => location.hash.startsWith("#job="));
  const link = page.url();

  cut();
  await context.setOffline(true);
  await page.reload();
  await ready(page);
  await settle(page);
  assert.match(await lengthOf(page), /^7\.6/);
  const verdict = await page.locator("[data-id=verdict]").textContent();
  assert.match(verdict, /^(Fits|Fits with changes|Does not fit)\b/);

  await page.evaluate(() => localStorage.clear());
  const other = await visit(context, link);
  await settle(other);
  assert.equal(await other.locator("[data-id=verdict]").textContent(), verdict);
});

test("it says once that it works without a connection", async () => {
  const { url } = await address();
  const page = await keptVisit(await profile(), url);
  const asked = page.waitForResponse(/version\.json$/);  // by then offline.js is at work
  await page.reload();
  await ready(page);
  await asked;
  await settle(page);
  assert.deepEqual(await page.evaluate((told) => window.said.filter((all) => all.includes(told)), TOLD), []);
});

test("kept are the parts of the page, and nothing else; the rest comes from the network", async () => {
  const { url } = await address();
  const page = await keptVisit(await profile(), url);
  const names = await cacheNames(page);
  assert.deepEqual(names, [`thole / ${buildOf(SITE)}`]);
  const kept = await page.evaluate(async (name) =>
    (await (await caches.open(name)).keys()).map((request) => request.url), names[0]);
  const expected = readdirSync(SITE)
    .filter((name) => /\.[0-9a-f]{10}\.\w+$/.test(name) || name === "manifest.webmanifest")
    .filter((name) => !name.startsWith("host."))  // of a shop's page, where nothing is kept
    .map((name) => url + name);
  assert.deepEqual(kept.sort(), [url, ...expected].sort());

  const origin = new Map();
  page.on("response", (response) => {
    origin.set(response.url().slice(url.length), response.fromServiceWorker());
  });
  await page.reload();
  await ready(page);
  for (const name of ["version.json", "embed.js", "icons/icon-192.png", "sw_off.js"]) {
    await page.evaluate((wanted) => fetch(wanted), name);
    assert.equal(origin.get(name), false, name);
  }
  assert.equal(origin.get(""), true);
  assert.equal(origin.get(expected.find((name) => name.endsWith(".wasm")).slice(url.length)), true);
});

test("a set that is not whole is not kept at all", async () => {
  const style = readdirSync(SITE).find((name) => /^style\.\w+\.css$/.test(name));
  const other = (bytes) => Buffer.concat([bytes, Buffer.from("/* of another build */")]);
  for (const files of [{ [style]: other }, { [style]: () => null },
    { "index.html": ofAnotherBuild }]) {
    const { url, deploy } = await address();
    const page = await (await profile()).newPage();
    await page.goto(`${url}sw_off.js`);  // any page of this address that registers nothing
    deploy(altered(files));
    const state = await page.evaluate(async () => {
      const { installing } = await navigator.serviceWorker.register("sw.js");
      return new Promise((resolve) => {
        installing.onstatechange = () => resolve(installing.state);
      });
    });
    assert.equal(state, "redundant");
    assert.deepEqual(await cacheNames(page), []);
  }
});

// --- from one build to the next --------------------------------------------------------------------------

test("a newer build waits, is offered, and is taken with the job, half typed as it is", async () => {
  const { url, deploy } = await address();
  const page = await keptVisit(await profile(), url);
  await threeNumbers(page);
  await box(page, "Length overall").tap();
  await page.keyboard.type("8.8");
  deploy(NEWER);
  await look(page);
  await page.getByText(OFFER).waitFor();
  assert.equal(await lengthOf(page), "8.8");
  assert.equal(page.loads, 1);

  await agree(page);
  await arrived(page, NEWER);
  await settle(page);
  assert.equal(page.loads, 2);
  assert.equal(await page.title(), "Thole, newer");
  assert.match(await lengthOf(page), /^8\.8/);
  assert.deepEqual(await cacheNames(page), [`thole / ${buildOf(NEWER)}`]);
});

test("who does not agree stays with the build he has, whole, and is asked again", async () => {
  const { url, deploy } = await address();
  const page = await keptVisit(await profile(), url);
  deploy(NEWER);
  await look(page);
  await page.getByText(OFFER).waitFor();
  await page.reload();
  await ready(page);
  assert.equal(await build(page), buildOf(SITE));
  await page.getByText(OFFER).waitFor();
  await agree(page);
  await arrived(page, NEWER);
});

test("a second tab keeps what is typed there when the first changes over", async () => {
  const { url, deploy } = await address();
  const context = await profile();
  const first = await keptVisit(context, url);
  const second = await visit(context, url);
  await settle(second);
  await type(second, "Length overall", "9.1");
  await box(second, "Loaded weight").tap();
  await second.keyboard.type("31");
  deploy(NEWER);
  await first.bringToFront();
  await look(first);
  await first.getByText(OFFER).waitFor();
  await agree(first);
  await arrived(first, NEWER);
  await second.bringToFront();
  await second.getByText(OFFER).waitFor();
  assert.equal(second.loads, 1);
  assert.equal(await box(second, "Loaded weight").inputValue(), "31");
  await agree(second);
  await arrived(second, NEWER);
  await settle(second);
  assert.match(await lengthOf(second), /^9\.1/);
});

test("one whom an old worker holds back is helped at the second look", async () => {
  const { url, deploy } = await address();
  const page = await keptVisit(await profile(), url);
  await threeNumbers(page);
  deploy(altered({ "version.json": () => Buffer.from(readFileSync(join(NEWER, "version.json"))) }));
  const asked = page.waitForResponse(/version\.json$/);
  await look(page);
  await asked;
  // Queued behind the page's own search for a new worker.
  await page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
  assert.equal(await page.getByText(OFFER).count(), 0);
  await look(page);
  await page.getByText(OFFER).waitFor();
  deploy(NEWER);
  await agree(page);
  await arrived(page, NEWER);
  await settle(page);
  assert.match(await lengthOf(page), /^7\.6/);
});

test("the worker that is the way out removes what was kept, and the page goes on", async () => {
  const { url, deploy } = await address();
  const page = await keptVisit(await profile(), url);
  await threeNumbers(page);
  deploy(altered({ "sw.js": () => readFileSync(join(SITE, "sw_off.js")) }));
  const loaded = page.waitForEvent("load");
  await page.evaluate(() => { navigator.serviceWorker.getRegistration().then((found) => found.update()); });
  await loaded;
  await page.waitForFunction(async () => document.documentElement.dataset.ready &&
    (await caches.keys()).length === 0 && !(await navigator.serviceWorker.getRegistration()));
  await settle(page);
  assert.match(await lengthOf(page), /^7\.6/);
  assert.equal(page.loads, 2);
});

// --- parts of two builds ---------------------------------------------------------------------------------

test("a page of another build than its script starts nothing, asks once more, and says so", async () => {
  const { url, deploy } = await address();
  deploy(altered({ "index.html": ofAnotherBuild }));
  const page = await (await profile()).newPage();
  let loads = 0;
  page.on("load", () => { loads += 1; });
  await page.goto(url);
  await page.getByText(/could not be started/).waitFor();
  assert.equal(loads, 2);
  assert.equal(await page.locator("html[data-ready]").count(), 0);
  deploy(SITE);
  await page.reload();
  await ready(page);
  assert.equal(await page.evaluate(() => history.state?.afresh), undefined);
});

test("what a mixed-up cache brings is thrown away, once, and fetched from the network", async () => {
  // Runs in the page.
  const mixUp = async (what) => {
    const cache = await caches.open((await caches.keys())[0]);
    const names = (await cache.keys()).map((request) => request.url);
    const name = names.find((url) => url.endsWith(what === "program" ? ".wasm" : "/"));
    const kept = await cache.match(name);
    const headers = { "Content-Type": kept.headers.get("Content-Type") };
    if (what === "program") {  // one that another script was made for
      const bytes = new Uint8Array(await kept.arrayBuffer());
      bytes[bytes.length - 1] ^= 1;
      await cache.put(name, new Response(bytes, { headers }));
      return;
    }
    const text = await kept.text();
    await cache.put(name, new Response(what === "page"
      ? text.replace(/shell\.\w+\.js/, "shell.0000000000.js")          // whose script is there no longer
      : text.replace(/(?<=thole-build" content=")\w+/, "0000000000"),  // made for another script
    { headers }));
  };
  for (const what of ["program", "page", "mark"]) {
    const { url } = await address();
    const page = await keptVisit(await profile(), url);
    await threeNumbers(page);
    await page.evaluate(mixUp, what);
    await page.reload();
    await arrived(page, SITE);
    await settle(page);
    assert.equal(page.loads, 3, `${what}: loaded, mixed up, mended`);
    assert.match(await lengthOf(page), /^7\.6/, what);
  }
});

// --- where no worker belongs -------------------------------------------------------------------------------

const registrations = (page) =>
  page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);

test("nothing is registered in a frame or for an embedded page", async () => {
  const { url, deploy } = await address();
  const site = altered({});
  writeFileSync(join(site, "host.html"),
    '<!doctype html><title>Host</title><iframe src="./" width="400" height="800"></iframe>');
  deploy(site);
  const context = await profile();
  const host = await context.newPage();
  await host.goto(`${url}host.html`);
  const frame = host.frames()[1];
  await frame.waitForSelector("html[data-ready]", { state: "attached" });
  const top = await visit(context, `${url}?embed`);
  for (const page of [frame, top]) {
    // Later than anything that was put off until the page is idle.
    await page.evaluate(() => new Promise((done) => requestIdleCallback(() => requestIdleCallback(done))));
    assert.equal(await registrations(page), 0);
  }
  // The same look finds one where there is one.
  const plain = await keptVisit(context, url);
  assert.equal(await registrations(plain), 1);
});

// --- installing -------------------------------------------------------------------------------------------

// Width, height and least alpha of a picture, and the largest mean difference of a colour from the mark.
function examine(page, picture, mark) {
  return page.evaluate(async ([pictureUrl, markText]) => {
    const draw = async (url, size) => {
      const image = new Image();
      image.src = url;
      await image.decode();
      const canvas = new OffscreenCanvas(size ?? image.naturalWidth, size ?? image.naturalHeight);
      const context = canvas.getContext("2d");
      context.drawImage(image, 0, 0, canvas.width, canvas.height);
      return { width: canvas.width, height: canvas.height,
               data: context.getImageData(0, 0, canvas.width, canvas.height).data };
    };
    const drawn = await draw(pictureUrl);
    const markDrawn = await draw(`data:image/svg+xml;base64,${btoa(markText)}`, drawn.width);
    let apart = 0;
    let alpha = 255;
    drawn.data.forEach((value, at) => {
      apart += Math.abs(value - markDrawn.data[at]);
      if (at % 4 === 3) alpha = Math.min(alpha, value);
    });
    return { width: drawn.width, height: drawn.height, alpha, apart: apart / drawn.data.length };
  }, [picture, mark]);
}

test("the icons are the mark, as large as they claim, whole where the system cuts the shape", async () => {
  const { url } = await address();
  const page = await (await profile()).newPage();
  await page.goto(`${url}version.json`);
  const manifest = JSON.parse(readFileSync(join(WEB, "manifest.webmanifest"), "utf8"));
  const mark = readFileSync(join(WEB, "icon.svg"), "utf8");
  const square = mark.replace(' rx="12"', "");
  const icons = [...manifest.icons,
    { src: "icons/apple-touch-icon.png", sizes: "180x180", type: "image/png", purpose: "maskable" }];
  for (const { src, sizes, type, purpose } of icons) {
    assert.equal((await (await fetch(url + src)).headers.get("content-type")), type);
    const whole = purpose === "maskable";
    const found = await examine(page, url + src, whole ? square : mark);
    assert.equal(`${found.width}x${found.height}`, sizes, src);
    assert.equal(found.alpha, whole ? 255 : 0, src);
    assert.ok(found.apart < 1, `${src} is ${found.apart} from the mark: run tools/make_icons`);
    const other = await examine(page, url + src, mark.replace("#0A5A78", "#FFFFFF"));
    assert.ok(other.apart > 1, "the comparison bites");
  }
});

test("the page can be installed", async () => {
  const { url } = await address();
  const page = await keptVisit(await profile(), url);
  const devtools = await page.context().newCDPSession(page);
  const { errors, data } = await devtools.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
  // A profile without a history is what a test has; it could not keep an installed page.
  assert.deepEqual(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito"), []);
  const manifest = JSON.parse(data);
  const html = readFileSync(join(WEB, "index.html"), "utf8");
  const colours = [...html.matchAll(/name="theme-color" content="(#\w+)"/g)];
  assert.equal(manifest.theme_color, colours[0][1]);
  assert.equal(manifest.background_color, colours[0][1]);
  assert.equal(manifest.display, "standalone");
  for (const key of ["start_url", "scope"]) assert.equal(new URL(manifest[key], url).href, url);
  for (const key of ["name", "short_name", "description"]) assert.ok(manifest[key].length > 4, key);
  assert.ok(manifest.short_name.length <= 12);
});
