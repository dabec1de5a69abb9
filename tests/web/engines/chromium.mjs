// Chromium by Playwright, headless, painting in software.

import { chromium } from "playwright-core";
import { CHROMIUM } from "../browser.mjs";

export async function start() {
  const browser = await chromium.launch(CHROMIUM);
  return {
    open: (options) => open(browser, options),
    close: () => browser.close(),
  };
}

async function open(browser, { width, height, touch = false, dark = false, reducedMotion = false }) {
  const context = await browser.newContext({
    viewport: { width, height }, hasTouch: touch, isMobile: touch, deviceScaleFactor: touch ? 2 : 1,
    colorScheme: dark ? "dark" : "light", reducedMotion: reducedMotion ? "reduce" : "no-preference",
    locale: "en-GB",
  });
  const page = await context.newPage();
  const problems = [];
  page.on("pageerror", (error) => problems.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error") problems.push(message.text());
  });
  return {
    problems: () => problems,
    locate: (role, name) => page.getByRole(role, { name, exact: true }).all(),
    click: (element) => (touch ? element.tap() : element.click()),
    press: (keys) => page.keyboard.press(keys.join("+")),
    type: (text) => page.keyboard.type(text),
    evaluate: (code, values) => page.evaluate(applied("values", code), values),
    evaluateOn: (element, code, values) => element.evaluate(applied("element, values", code), values),
    screenshot: () => page.screenshot(),
    go: (address) => page.goto(address),
    reload: () => page.reload(),
    back: () => page.goBack(),
    forward: () => page.goForward(),
    offline: (on) => context.setOffline(on),
    close: () => context.close(),
  };
}

// Playwright passes one value beside the element; our functions take several.
const applied = (parameters, code) =>
  new Function(parameters, `return (${code})(${parameters.replace("values", "...values")})`);
