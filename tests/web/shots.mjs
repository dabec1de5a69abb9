// See tools/shots.

import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { DESK, PHONE, ROOT, settle, startBrowser } from "./browser.mjs";

const SCREENS = [["phone", { ...PHONE, deviceScaleFactor: 2.6 }], ["desk", DESK]];

export async function shots(fragment) {
  const folder = join(ROOT, "build/shots");
  mkdirSync(folder, { recursive: true });
  const web = await startBrowser();
  const hash = fragment && `#${fragment.trim().replace(/^.*#/, "")}`;
  for (const [name, screen] of SCREENS) {
    for (const colorScheme of ["light", "dark"]) {
      const page = await web.page({ ...screen, colorScheme, locale: "en-GB" }, hash);
      await settle(page);
      for (let number = 1; ; ++number) {
        const title = (await page.getByRole("heading", { level: 1 }).textContent()).toLowerCase();
        const file = `${name}-${colorScheme}-${String(number).padStart(2, "0")}-${title.replace(/\W+/g, "-")}`;
        await page.screenshot({ path: join(folder, `${file}.png`) });
        // The rest of the page below the first screen, one screen further each.
        for (let screenful = 2; screenful <= 4; ++screenful) {
          const moved = await page.evaluate(() => {
            const before = window.scrollY;
            window.scrollBy(0, window.innerHeight - 140);
            return window.scrollY - before;
          });
          if (moved < 8) break;
          await settle(page);
          if (name === "phone") await page.screenshot({ path: join(folder, `${file}-${screenful}.png`) });
        }
        const next = name === "phone"
          ? page.getByRole("button", { name: /^Next page/ })
          : page.locator("nav button[aria-current] + button");
        if (await next.count() === 0) break;
        await next.click();
        await settle(page);
      }
      await page.context().close();
    }
  }
  await web.close();
  console.log(`pictures are in ${folder}`);
}
