// A shop's page on one origin and the tool on another, for tests of <thole-configurator>.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { chromium } from "playwright-core";
import { serve } from "../../tools/serve.mjs";
import { CHROMIUM, DESK } from "./browser.mjs";

const TIMEOUT_MS = 120_000;

// As docs/embedding.md has it: room for the element while its script is on the way.
export const ROOM = `@media (min-width: 600px) and (min-height: 480px) {
  thole-configurator:not(:defined) { display: block; height: max(480px, 90vh) } }`;

// Serves `tool` and a folder of the test's own; the policy is what docs/embedding.md asks a shop for.
export async function openShop(tool) {
  const folder = mkdtempSync(join(tmpdir(), "thole-shop-"));
  const toolSite = await serve(tool);
  const shopSite = await serve(folder);
  const browser = await chromium.launch(CHROMIUM);
  const toolOrigin = toolSite.address.slice(0, -1);
  const policy = `default-src 'none'; script-src 'self' ${toolOrigin}; frame-src ${toolOrigin}; `
    + "style-src 'self'; connect-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'";

  const put = (name, text) => {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  };
  put("favicon.ico", "");
  put("shop.css", ROOM);
  // What happens on the page is written down from the start, whoever is late.
  put("listen.js", `window.heard = [];
    for (const name of ["ready", "design-change", "quote-request", "error"]) {
      document.addEventListener(name, (event) => heard.push([name, event.detail]), name === "error");
    }`);

  return {
    browser, put, toolOrigin,
    toolAddress: toolSite.address,
    shopAddress: shopSite.address,
    // A page of the shop with `body` in it, in a profile of its own; problems gathers what went wrong.
    async page(body, { options = {}, policy: own = policy, path = "" } = {}) {
      put(join(path, "index.html"), `<!doctype html><html lang="en"><head><meta charset="utf-8">
        <meta http-equiv="Content-Security-Policy" content="${own}">
        <meta name="viewport" content="width=device-width, initial-scale=1"><title>Shop</title>
        <link rel="stylesheet" href="/shop.css"><script src="/listen.js"></script></head>
        <body><h1>Shop</h1>${body}<p>The end</p></body></html>`);
      const context = await browser.newContext({ locale: "en-GB", ...DESK, ...options });
      context.setDefaultTimeout(TIMEOUT_MS);
      const page = await context.newPage();
      page.problems = [];
      page.asked = [];
      page.on("pageerror", (error) => page.problems.push(String(error)));
      page.on("console", (message) => {
        if (message.type() === "error") page.problems.push(message.text());
      });
      page.on("request", (request) => page.asked.push(request.url()));
      await page.goto(shopSite.address + path);
      return page;
    },
    async close() {
      await browser.close();
      toolSite.close();
      shopSite.close();
      rmSync(folder, { recursive: true });
    },
  };
}

// The element with these attributes, and the one script tag that it takes.
export const element = (shop, attributes = "", inside = "") =>
  `<script type="module" src="${shop.toolOrigin}/embed.js"></script>
   <thole-configurator ${attributes}>${inside}</thole-configurator>`;

// Asks until the answer is true-ish, and gives it. (The browser driver's own way of waiting needs eval,
// which a strict policy forbids.)
export async function until(ask, what = String(ask)) {
  for (const end = Date.now() + TIMEOUT_MS; Date.now() < end;) {
    const answer = await ask();
    if (answer) return answer;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error(`waited in vain for ${what}`);
}

// What the first event of that name that passes the test said.
export const heard = (page, name, test = () => true) => until(async () => {
  const all = await page.evaluate(() => window.heard);
  const found = all.find(([kind, detail]) => kind === name && test(detail));
  return found && { detail: found[1] };
}, `${name} ${test}`).then(({ detail }) => detail);

// The frame with the wizard, once it is there.
export const wizardFrame = (page, shop) =>
  until(() => page.frames().find((frame) => frame.url().startsWith(shop.toolOrigin)), "the wizard's frame");
