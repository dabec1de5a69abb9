// The built page in headless Chromium, by software rendering.

import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { serve } from "../../tools/serve.mjs";

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), "../..");
export const SITE = process.env.THOLE_SITE ?? join(ROOT, "build/web/site");
export const CLI = process.env.THOLE_CLI ?? join(ROOT, "build/dev/thole");

export const PHONE = {
  viewport: { width: 412, height: 915 }, deviceScaleFactor: 2.625, isMobile: true, hasTouch: true };
export const DESK = { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 };

export const CHROMIUM = {
  executablePath: "/usr/bin/chromium",
  args: ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
    "--ignore-gpu-blocklist", "--disable-gpu-sandbox", "--force-color-profile=srgb"],
};

// One browser and one server for a file of tests; page() opens the site in a profile of its own.
export async function startBrowser() {
  if (!existsSync(join(SITE, "index.html"))) throw new Error(`${SITE} is not built: tools/test builds it`);
  const site = await serve(SITE);
  const browser = await chromium.launch(CHROMIUM);
  return {
    address: site.address,
    browser,
    async page(options = PHONE, fragment = "") {
      // Offline is a matter of its own tests; elsewhere its word would lie over the page.
      const context = await browser.newContext({ serviceWorkers: "block", ...options });
      const page = await context.newPage();
      page.problems = [];
      page.on("pageerror", (error) => page.problems.push(String(error)));
      page.on("console", (message) => {
        if (message.type() === "error") page.problems.push(message.text());
      });
      await page.goto(site.address + fragment);
      await ready(page);
      return page;
    },
    async close() {
      await browser.close();
      site.close();
    },
  };
}

export const ready = (page) => page.waitForSelector("html[data-ready]", { state: "attached" });
export const frames = (page) => page.evaluate(() => window.tholeDrawn.frames);

// Waits until nothing more is drawn, and what was drawn is painted.
export async function settle(page) {
  let before = -1;
  for (;;) {
    const [now, busy] = await page.evaluate(() => [window.tholeDrawn?.frames, window.tholeDrawn?.busy ?? true]);
    if (now === before && !busy) return;
    before = now;
    await page.waitForTimeout(120);
  }
}
