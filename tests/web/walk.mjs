// From page to page of the wizard, in Chromium.

import { settle } from "./browser.mjs";

// Visits every page in turn, by the button that leads on: visit(title, number from 1).
export async function eachPage(page, visit) {
  for (let number = 1; ; ++number) {
    await visit(await page.locator("#sheet").getByRole("heading", { level: 1 }).textContent(), number);
    const onward = page.getByRole("button", { name: /^Next page/ })
      .or(page.locator("nav button[aria-current] + button"));
    if (await onward.count() === 0) return;
    await onward.first().click();
    await settle(page);
  }
}
