// The talk between a shop's page and the frame, with a wizard without insides: origins, shapes, events,
// methods, full screen. tests/web/embed.test.mjs does the same with the real one.

import assert from "node:assert/strict";
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, afterEach, before, test } from "node:test";
import { PHONE, ROOT } from "./browser.mjs";
import { element, heard, openShop, ROOM, until, wizardFrame } from "./shop.mjs";

let shop;
let folder;
let opened = [];
before(async () => {
  folder = mkdtempSync(join(tmpdir(), "thole-tool-"));
  const take = (from, to) => copyFileSync(join(ROOT, from), join(folder, to));
  for (const name of ["embed.js", "messages.js", "host.js"]) take(`web/${name}`, name);
  take("tests/web/fixtures/embed/tool.html", "index.html");
  take("tests/web/fixtures/embed/tool.js", "tool.js");
  shop = await openShop(folder);
});
after(async () => {
  await shop?.close();
  rmSync(folder, { recursive: true });
});
afterEach(async () => {
  for (const page of opened) await page.context().close();
  opened = [];
});

async function open(attributes = "", options = {}) {
  const page = await shop.page(element(shop, attributes, options.inside), options);
  opened.push(page);
  return page;
}
async function openReady(attributes = "", options = {}) {
  const page = await open(attributes, options);
  await heard(page, "ready");
  const frame = await wizardFrame(page, shop);
  return { page, frame, asked: () => frame.evaluate(() => window.tool.asked) };
}
const call = (page, method, ...args) => page.evaluate(
  ([name, values]) => document.querySelector("thole-configurator")[name](...values), [method, args]);
const refusal = (page, method, ...args) => page.evaluate(
  ([called, values]) => document.querySelector("thole-configurator")[called](...values)
    .then(() => null, ({ name, message, issues }) => ({ name, message, issues })), [method, args]);
const set = (page, name, value) => page.evaluate(
  (what) => document.querySelector("thole-configurator").setAttribute(...what), [name, value]);
const all = (page) => page.evaluate(() => window.heard);
const events = async (page, name) => (await all(page)).filter(([kind]) => kind === name);

// --- what comes and goes -----------------------------------------------------------------------------------

test("settings arrive from attributes and style properties; the wizard answers with the design", async () => {
  const { page, asked } = await openReady(
    'units="us" page="hold" pages="quick, hold  pack" theme="light" contact-label="Ask the yard" '
    + 'job=\'{"schema": 1}\'');
  const [settings] = (await asked()).settings;
  assert.deepEqual(settings, { units: "us", theme: "light", page: "hold", pages: ["quick", "hold", "pack"],
    accent: "", paper: "", ink: "", contactLabel: "Ask the yard" });
  assert.deepEqual((await asked()).opened, ['{"schema": 1}']);
  const detail = await heard(page, "design-change");
  assert.deepEqual(detail.job, { schema: 1 });
  assert.match(detail.link, /^http:\/\/127\.0\.0\.1:\d+\/#job=/);
  assert.equal(detail.summary.verdict, "fits");
  assert.deepEqual(detail.summary.outputs,
    [{ path: "hold.motor", label: "Motor", value: "200 N", unit: "", text: "200 N" }]);
  assert.equal(await page.evaluate(() => document.querySelector("thole-configurator").summary.price), 1234.5);
  assert.deepEqual(page.problems, []);
});

test("colours: any CSS colour goes over as six digits, nonsense not at all", async () => {
  const page = await open("id=conf");
  await heard(page, "ready");
  const frame = await wizardFrame(page, shop);
  const last = async () => (await frame.evaluate(() => window.tool.asked.settings)).at(-1);
  await page.evaluate(() => {
    const { style } = document.getElementById("conf");
    style.setProperty("--thole-accent", "rebeccapurple");
    style.setProperty("--thole-paper", "rgb(250 240 230 / 1)");
    style.setProperty("--thole-ink", "inherit");
  });
  await until(async () => (await last()).accent === "#663399");
  assert.equal((await last()).paper, "#faf0e6");
  assert.equal((await last()).ink, "");
});

test("without a theme of its own the wizard follows the page's paper, else the system", async () => {
  const dressed = async (attributes, css) => {
    shop.put("shop.css", css);
    const { asked } = await openReady(attributes);
    return (await asked()).settings[0].theme;
  };
  assert.equal(await dressed("", ""), "auto");
  assert.equal(await dressed("", ":root { --thole-paper: #FBF4EA }"), "light");
  assert.equal(await dressed("", ":root { --thole-paper: #201018 }"), "dark");
  assert.equal(await dressed('theme="light"', ":root { --thole-paper: #201018 }"), "light");
  shop.put("shop.css", ROOM);
});

test("the catalogue is fetched by the page and passed on; one that is not there is said", async () => {
  shop.put("parts.json", '{"schema": 1, "motors": []}');
  const good = await openReady('catalogue="/parts.json"');
  assert.deepEqual((await good.asked()).catalogues, ['{"schema": 1, "motors": []}']);
  assert.deepEqual(await events(good.page, "error"), []);

  const bad = await openReady('catalogue="/none.json"');
  assert.deepEqual((await bad.asked()).catalogues, []);
  const said = await heard(bad.page, "error");
  assert.equal(said.code, "catalogue");
  assert.match(said.text, /none\.json.*404/);
});

test("another language is answered in English, and said once", async () => {
  const { page } = await openReady('lang="fr"');
  const said = await heard(page, "error");
  assert.equal(said.code, "language");
  assert.match(said.text, /fr.*English/);
  assert.deepEqual((await events((await openReady('lang="en-GB"')).page, "error")), []);
});

test("an edit in the wizard is told once, half a second later", async () => {
  const { page, frame } = await openReady();
  await heard(page, "design-change");
  const before = (await events(page, "design-change")).length;
  for (const step of ["one", "two", "three"]) {
    await frame.evaluate((words) => window.tool.edit(`{"schema": 1, "title": "${words}"}`), step);
  }
  const detail = await heard(page, "design-change", (said) => said.job.title);
  assert.equal(detail.job.title, "three");
  assert.equal((await events(page, "design-change")).length, before + 1);
});

test("methods: get, set, catalogue, page, answer to a quote", async () => {
  const { page, asked } = await openReady();
  await call(page, "setJob", { schema: 1, title: "From the shop" });
  assert.deepEqual(await call(page, "getJob"), { schema: 1, title: "From the shop" });
  const refused = await refusal(page, "setJob", "job=broken");
  assert.equal(refused.name, "TholeError");
  assert.equal(refused.message, "The link is cut off.");
  assert.deepEqual(refused.issues, [{ severity: "error", field: "", message: "The link is cut off." }]);
  assert.deepEqual(await call(page, "getJob"), { schema: 1, title: "From the shop" });
  await call(page, "setCatalogue", { schema: 1 });
  assert.equal((await refusal(page, "setCatalogue", "nothing")).issues.length, 1);
  await call(page, "focusPage", "bank");
  await call(page, "quoteResult", { ok: true, text: "We answer within a day." });
  const seen = await asked();
  assert.deepEqual(seen.catalogues, ['{"schema":1}', "nothing"]);
  assert.deepEqual(seen.acts, [["app", "page", "bank"]]);
  assert.deepEqual(seen.said, ["We answer within a day."]);
});

test("methods wait for a wizard that is not there yet", async () => {
  const page = await open('style="margin-top: 4000px"');
  assert.equal(page.asked.some((url) => url.includes("?embed")), false);  // far below: not loaded
  assert.deepEqual(await call(page, "getJob"), { schema: 1 });
  assert.equal(page.asked.filter((url) => url.includes("?embed")).length, 1);
});

test("attributes that change later are followed; where somebody is, he stays", async () => {
  const { page, asked } = await openReady('page="hold"');
  await set(page, "units", "us");
  await until(async () => (await asked()).settings.at(-1).units === "us");
  assert.equal("page" in (await asked()).settings.at(-1), false);
  await set(page, "job", '{"schema":1,"title":"B"}');
  await heard(page, "design-change", (said) => said.job.title === "B");
});

test("a quote is asked for by the user alone, and is plain data", async () => {
  const { page, frame } = await openReady('contact-label="Quote"');
  assert.deepEqual(await events(page, "quote-request"), []);
  await frame.click("#quote");
  const detail = await heard(page, "quote-request");
  assert.deepEqual(Object.keys(detail).sort(), ["cautions", "job", "link", "parts", "summary", "tasks"]);
  assert.deepEqual(detail.parts,
    [{ id: "x", label: "Cable", detail: "", quantity: 12, unit: "m", price: 60, lead_days: 3 }]);
  assert.deepEqual(detail.cautions, ["Switch it off first."]);
});

test("taken off the page and put back, it goes on with the same job", async () => {
  const { page } = await openReady();
  await call(page, "setJob", { schema: 1, title: "Kept" });
  await heard(page, "design-change", (said) => said.job.title === "Kept");
  await page.evaluate(() => {
    const configurator = document.querySelector("thole-configurator");
    const place = document.createElement("section");
    document.body.append(place);
    place.append(configurator);
  });
  assert.deepEqual(await call(page, "getJob"), { schema: 1, title: "Kept" });
});

// --- who may talk ------------------------------------------------------------------------------------------

const message = (type, payload, id = 1) => ({ app: "thole", protocol: 1, id, type, payload });
const malformed = (type, payload) => [
  null, 1, "x", [], {}, { app: "thole" },
  { ...message(type, payload), protocol: 2 },
  { ...message(type, payload), app: "other" },
  ...[-1, NaN, 1.5, "1", null].map((id) => message(type, payload, id)),
  ...[[type], "constructor", "__proto__", "toString", "x".repeat(50), 5].map((odd) => message(odd, payload)),
  ...[[payload], null, "x", undefined].map((odd) => message(type, odd)),
];
const shout = (frame, data) => frame.evaluate((said) => window.tool.shout(said), data);

// The frame as a page would make it that does not use the element.
const bare = (query = "?embed") =>
  `<iframe id="tool" src="${shop.toolOrigin}/${query}" width="600" height="600"></iframe>`;
async function openBare(query, other = shop) {
  const page = await other.page(bare(query), { policy: `frame-src ${shop.toolOrigin}; script-src 'self'` });
  opened.push(page);
  const frame = await wizardFrame(page, shop);
  await until(() => frame.evaluate(() => Boolean(window.tool)));
  return { page, frame, asked: () => frame.evaluate(() => window.tool.asked) };
}
const post = (page, messages) => page.evaluate((list) => {
  for (const one of list) document.getElementById("tool").contentWindow.postMessage(one, "*");
}, messages);
// Everything sent before has been read once this is answered.
async function answered(page, id) {
  await page.evaluate((number) => {
    window.replies ??= (addEventListener("message", ({ data }) => window.replies.push(data)), []);
    document.getElementById("tool").contentWindow.postMessage(
      { app: "thole", protocol: 1, id: number, type: "get", payload: {} }, "*");
  }, id);
  return until(() => page.evaluate((number) => window.replies.find(
    (reply) => reply.type === "reply" && reply.id === number), id));
}

test("before the first init nothing is answered and nothing done", async () => {
  const { page, asked } = await openBare();
  await post(page, [message("set", { job: "{}" }), message("set-catalogue", { catalogue: "{}" }),
    message("configure", { units: "us" }), message("focus", { page: "bank" })]);
  await post(page, [message("init", {})]);
  await answered(page, 7);
  const seen = await asked();
  assert.deepEqual([seen.opened, seen.catalogues, seen.acts], [[], [], []]);
  assert.equal(seen.settings.length, 1);
});

test("a host that is not in the address is not answered", async () => {
  const other = await openShop(folder);
  try {
    const wrong = await openBare(`?embed&host=${encodeURIComponent(shop.shopAddress.slice(0, -1))}`, other);
    const job = '{"schema": 1}';
    await post(wrong.page, [message("init", { job }), message("set", { job })]);
    const right = await openBare(`?embed&host=${encodeURIComponent(shop.shopAddress.slice(0, -1))}`);
    await post(right.page, [message("init", { job })]);
    await answered(right.page, 3);
    assert.equal((await right.asked()).opened.length, 1);
    // A turn of the other frame's own message queue, so that it has had its chance too.
    await wrong.frame.evaluate(() => new Promise((resolve) => {
      addEventListener("message", ({ data }) => data === "turn" && resolve(), { once: false });
      postMessage("turn", "*");
    }));
    assert.deepEqual((await wrong.asked()).opened, []);
    assert.deepEqual((await wrong.asked()).settings, []);
  } finally {
    await other.close();
  }
});

test("a frame beside it is not its parent, whatever it says", async () => {
  shop.put("side.html", "<!doctype html><title>Side</title>");
  const page = await shop.page(`${bare()}<iframe src="/side.html"></iframe>`,
    { policy: `frame-src 'self' ${shop.toolOrigin}` });
  opened.push(page);
  const frame = await wizardFrame(page, shop);
  await until(() => frame.evaluate(() => Boolean(window.tool)));
  const side = await until(() => page.frames().find((one) => one.url().endsWith("side.html")));
  await post(page, [message("init", {})]);
  await answered(page, 2);
  // Right origin, wrong window; then the frame's own window, with an origin that is wrong as well.
  await side.evaluate((data) => parent.document.getElementById("tool").contentWindow.postMessage(data, "*"),
    message("set", { job: '{"schema": 1}' }));
  await frame.evaluate((data) => window.postMessage(data, "*"), message("set", { job: '{"schema": 1}' }));
  await answered(page, 3);
  assert.deepEqual((await frame.evaluate(() => window.tool.asked)).opened, []);
});

test("malformed messages to the wizard change nothing", async () => {
  const { page, frame, asked } = await openBare();
  await post(page, [message("init", {})]);
  await answered(page, 2);
  await post(page, malformed("set", { job: "{}" }));
  await post(page, [
    message("configure", { units: 3, theme: "neon", page: [], pages: "all", accent: "red", paper: "#12",
                           ink: 5, contactLabel: {} }),
    message("configure", { units: ["us"], pages: [1, null, {}], accent: "#GGGGGG" })]);
  await page.evaluate(() => document.getElementById("tool").contentWindow.postMessage({ app: "thole",
    protocol: 1, id: 9, type: "configure", payload: JSON.parse('{"__proto__": {"units": "us"}}') }, "*"));
  await post(page, [message("set", { job: 5 }), message("set", { job: "x".repeat(100_001) }),
    message("set-catalogue", { catalogue: "x".repeat(1_000_001) }), message("focus", { page: 3 })]);
  await answered(page, 4);
  const seen = await asked();
  assert.deepEqual([seen.opened, seen.catalogues, seen.acts], [[], [], []]);
  assert.deepEqual(seen.settings.slice(1), [{}, { pages: [] }, {}]);
  assert.equal(await frame.evaluate(() => ({}).units), undefined);
});

test("malformed messages to the page change nothing", async () => {
  const { page, frame } = await openReady();
  await heard(page, "design-change");
  const before = (await all(page)).length;
  const height = await page.evaluate(() => document.querySelector("thole-configurator").offsetHeight);
  for (const bad of malformed("change", { job: "{}" })) await shout(frame, bad);
  for (const bad of [Infinity, NaN, -1, "900", [900], null, { valueOf: 900 }]) {
    await shout(frame, message("resize", { height: bad }));
  }
  await shout(frame, message("no-such", {}));
  await call(page, "getJob");  // everything before it has been read
  assert.equal((await all(page)).length, before);
  assert.equal(await page.evaluate(() => document.querySelector("thole-configurator").offsetHeight), height);
});

test("a change in strange shapes is read as far as it makes sense, and reaches no prototype", async () => {
  const { page, frame } = await openReady();
  await shout(frame, message("change", {
    job: '{"schema": 1, "__proto__": {"polluted": true}, "title": "odd"}', link: 5,
    summary: { verdict: { evil: 1 }, governing: [],
               outputs: [1, { label: ["x"], value: NaN, text: "t" }, null],
               price: "free", currency: 9, edition: Infinity, extra: "<img src=x onerror=alert(1)>" } }));
  const detail = await heard(page, "design-change", (said) => said.job.title === "odd");
  assert.deepEqual(detail, {
    job: { schema: 1, title: "odd" }, link: "",
    summary: { verdict: "not evaluated", governing: { id: "", label: "", text: "" },
               outputs: [{ path: "", label: "", value: null, unit: "", text: "t" }],
               price: null, currency: "", edition: 0 } });
  assert.equal(await page.evaluate(() => ({}).polluted), undefined);
});

test("messages from another window or another origin are not for the element", async () => {
  const page = await shop.page(`${element(shop)}<iframe id="tool" src="${shop.toolAddress}?other"></iframe>`);
  opened.push(page);
  await heard(page, "ready");
  await heard(page, "design-change");
  const before = (await all(page)).length;
  const quote = message("quote", { job: "{}", link: "", summary: {} });
  const other = await until(() => page.frames().find((one) => one.url().endsWith("?other")));
  await other.evaluate((data) => parent.postMessage(data, "*"), quote);  // right origin, wrong window
  await page.evaluate((data) => {
    window.postMessage(data, "*");  // both wrong
    const { shadowRoot } = document.querySelector("thole-configurator");
    const source = shadowRoot.querySelector("iframe").contentWindow;
    dispatchEvent(new MessageEvent("message", { data, source, origin: "https://shop.example" }));
  }, quote);
  await call(page, "getJob");
  // The element's own frame is heard, so the test would have heard the others.
  const own = page.frames().find((one) => one.url().includes("?embed"));
  await shout(own, quote);
  await until(async () => (await all(page)).length === before + 1);
});

// --- size --------------------------------------------------------------------------------------------------

const heightOf = (page) => page.evaluate(() => document.querySelector("thole-configurator").offsetHeight);
const frameHeight = (page) => page.evaluate(() =>
  document.querySelector("thole-configurator").shadowRoot.querySelector("iframe").offsetHeight);

test("on a desk the frame is as high as the wizard, from 480 px to nine tenths of the screen", async () => {
  const { page, frame } = await openReady();
  assert.equal(await heightOf(page), 720);  // 900 asked for, 0.9 x 800 given
  await frame.evaluate(() => window.tool.grow(600));
  await until(async () => await frameHeight(page) === 600);
  await frame.evaluate(() => window.tool.grow(100));
  await until(async () => await heightOf(page) === 480);
  await shout(frame, message("resize", { height: 1e9 }));
  await until(async () => await heightOf(page) === 720);
  await set(page, "max-height", "500");
  assert.equal(await heightOf(page), 500);
});

test("the room is kept before the wizard is there: nothing on the page jumps", async () => {
  const { page } = await openReady();
  const shift = await page.evaluate(() => new Promise((resolve) => {
    new PerformanceObserver((list, observer) => {
      observer.disconnect();
      resolve(list.getEntries().reduce((sum, entry) => sum + entry.value, 0));
    }).observe({ type: "layout-shift", buffered: true });
    // Entries that there are come before the next frame but one.
    requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => resolve(0))));
  }));
  assert.equal(shift, 0);
});

// --- on a phone --------------------------------------------------------------------------------------------

const openButton = (page) => page.getByRole("button", { name: "Open full screen" });
const closeButton = (page) => page.getByRole("button", { name: "Close" });
const focused = (page) => page.evaluate(() =>
  document.querySelector("thole-configurator").shadowRoot.activeElement.textContent);
const isFull = (page) => page.evaluate(() => {
  const frame = document.querySelector("thole-configurator").shadowRoot.querySelector("iframe");
  const box = frame?.getBoundingClientRect();
  return Boolean(box && box.width === innerWidth && box.bottom === innerHeight && box.top < 70);
});

test("a phone loads the wizard when it is opened, full screen, and Close leads back", async () => {
  const page = await open("", { options: PHONE });
  await openButton(page).waitFor();
  assert.equal(page.asked.some((url) => url.includes("?embed")), false);
  await openButton(page).tap();
  await heard(page, "ready");
  assert.ok(await isFull(page));
  assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).overflow), "hidden");
  assert.equal(await page.evaluate(() => document.querySelector("h1").inert), true);
  assert.equal(await page.getByRole("dialog", { name: "Bow motor configurator" }).count(), 1);
  assert.equal(await focused(page), "Close");

  await closeButton(page).tap();
  assert.equal(await isFull(page), false);
  assert.equal(await page.evaluate(() => document.querySelector("h1").inert), false);
  assert.equal(await page.evaluate(() => document.documentElement.style.overflow), "");
  assert.equal(await focused(page), "Open full screen");
  // Closed, the card says how the job stands.
  assert.match(await page.getByText(/^Fits\. Drop/).textContent(), /3 %/);
  await until(() => page.evaluate(() => !history.state?.thole));
});

test("a phone's own Back closes the full screen and stays on the page", async () => {
  const page = await open("", { options: PHONE });
  const address = page.url();
  for (let time = 0; time < 2; time += 1) {  // and again: nothing is left behind
    await openButton(page).tap();
    await until(() => isFull(page));
    await page.goBack();
    await until(async () => !(await isFull(page)));
    assert.equal(page.url(), address);
  }
});

test("Escape closes too; a quote closes, unless the page says no", async () => {
  const page = await open('contact-label="Quote"', { options: PHONE });
  await openButton(page).tap();
  await heard(page, "ready");
  await page.keyboard.press("Escape");
  await until(async () => !(await isFull(page)));

  await openButton(page).tap();
  const frame = await wizardFrame(page, shop);
  await frame.click("#quote");
  await heard(page, "quote-request");
  await until(async () => !(await isFull(page)));

  await page.evaluate(() => addEventListener("quote-request", (event) => event.preventDefault()));
  await openButton(page).tap();
  await frame.click("#quote");
  await until(async () => (await events(page, "quote-request")).length === 2);
  assert.ok(await isFull(page));
});

// --- policy and privacy ------------------------------------------------------------------------------------

test("a strict policy holds: nothing is refused, nothing else is asked for, nothing is stored", async () => {
  shop.put("parts.json", '{"schema": 1}');
  const { page, frame } = await openReady('catalogue="/parts.json" style="--thole-accent: teal"');
  await heard(page, "design-change");
  // (The style attribute above is the shop's own, and its policy forbids it: that one complaint is right.)
  assert.deepEqual(page.problems.filter((problem) => !/inline style/.test(problem)), []);
  const origins = new Set(page.asked.map((url) => new URL(url).origin));
  assert.deepEqual([...origins].sort(), [shop.shopAddress.slice(0, -1), shop.toolOrigin].sort());
  assert.deepEqual(await page.context().cookies(), []);
  for (const place of [page, frame]) {
    assert.deepEqual(await place.evaluate(() => [localStorage.length, sessionStorage.length]), [0, 0]);
  }
});

test("where the policy forbids the frame, the card offers a tab of its own", async () => {
  const policy = `default-src 'none'; style-src 'self'; script-src 'self' ${shop.toolOrigin}`;
  const page = await shop.page(element(shop), { policy });
  opened.push(page);
  assert.match((await heard(page, "error", (detail) => detail.code === "load")).text, /tab of its own/);
  const way = page.getByRole("link", { name: "Open in a new tab", includeHidden: true });
  assert.equal(await way.getAttribute("href"), shop.toolAddress);
});

test("the logo is shown by the page, not in the frame, and only from https or the page itself", async () => {
  shop.put("logo.svg", '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20"/>');
  const { page, frame } = await openReady('logo="/logo.svg"');
  const shown = () => page.evaluate(() => [...document.querySelector("thole-configurator").shadowRoot
    .querySelectorAll("img")].filter((image) => !image.hidden).map((image) => image.src));
  assert.deepEqual([...new Set(await shown())], [`${shop.shopAddress}logo.svg`]);
  assert.equal(await frame.evaluate(() => document.images.length), 0);
  for (const address of ["javascript:alert(1)", "data:image/svg+xml,x", "http://other.example/x.png"]) {
    await set(page, "logo", address);
    assert.deepEqual(await shown(), [], address);
  }
});

test("docs/embedding.md names every attribute, event, method and message that there is", () => {
  const source = (name) => readFileSync(join(ROOT, name), "utf8");
  const guide = source("docs/embedding.md");
  const embed = source("web/embed.js");
  const [, attributes] = embed.match(/observedAttributes = \[(.*?)\]/s);
  for (const [, name] of attributes.matchAll(/"([\w-]+)"/g)) {
    if (name !== "style" && name !== "class") assert.match(guide, new RegExp(`^\\| \`${name}\``, "m"), name);
  }
  for (const [, name] of embed.matchAll(/#say\("([\w-]+)"/g)) {
    assert.match(guide, new RegExp(`^\\| \`${name}\``, "m"), name);
  }
  for (const [, name] of embed.matchAll(/^ {2}(?:async )?([a-z]\w+)\([^)]*\) \{$/gm)) {
    if (!/Callback$|^constructor$/.test(name)) assert.match(guide, new RegExp(`\`${name}\\(`), name);
  }
  for (const [, name] of source("web/host.js").matchAll(/^ {4}\["([\w-]+)", \(/gm)) {
    assert.match(guide, new RegExp(`\\| page \\| \`${name}\``), name);
  }
});
