// Three browser engines behind one small interface, all by role and accessible name.
//
//   const engine = await startEngine("chromium" | "firefox" | "webkit");
//   const page = await engine.open(address, { width, height, touch, dark, reducedMotion });
//   await (await page.find("textbox", "Bow height")).fill("1,35 m");
//   await page.press("Enter");
//
// engine  name; open(address, options): a page in a profile of its own; `foreign` when it is no page of
//         ours, to be told by its title alone; close().
// page    find(role, name): a handle, waits for it; findLike(role, pattern); count(role, name);
//         evaluate(function, ...values); press("Shift+Tab"); type(text); screenshot(): PNG bytes;
//         go(address); back(); forward(); reload(); offline(bool), where `canGoOffline`; close();
//         problems(): what the console called an error since the page was opened (in WebKit, since it was
//         usable).
// handle  click(); fill(text); focus(); press(keys); value(); text(); attribute(name); box(); exists().
//
// Each engine file gives the primitives; what the three have in common stands here. `touch`, `dark` and
// `reducedMotion` are honoured as far as an engine can: `touch` not by WebKit.

import * as chromium from "./chromium.mjs";
import * as firefox from "./firefox.mjs";
import { LOAD_WITHIN_MS, until } from "./wait.mjs";
import * as webkit from "./webkit.mjs";

const STARTERS = { chromium, firefox, webkit };
export const ENGINES = Object.keys(STARTERS);

const STILL_MS = 150;  // without a frame: nothing more is to come

export async function startEngine(name) {
  const engine = await STARTERS[name].start();
  return {
    name,
    async open(address, options = {}) {
      const page = new Page(await engine.open({ width: 412, height: 915, ...options }));
      if (options.foreign) await page.driver.go(address);
      else await page.go(address);
      return page;
    },
    close: () => engine.close(),
  };
}

class Page {
  constructor(driver) {
    this.driver = driver;
    this.canGoOffline = Boolean(driver.offline);
  }

  async problems() { return this.driver.problems(); }

  // --- elements ------------------------------------------------------------------------------------

  async find(role, name) {
    const [element] = await until(async () => {
      const found = await this.driver.locate(role, name);
      return found.length > 0 && found;
    }, `${role} "${name}"`);
    return new Handle(this, element, `${role} "${name}"`);
  }

  // The first one whose name is like the pattern. The name is read from the document, the element is
  // then found by role and by exactly that name.
  async findLike(role, pattern) {
    const name = await until(async () => {
      const names = await this.evaluate(namesInDocument);
      return names.find((one) => pattern.test(one));
    }, `${role} like ${pattern}`);
    return this.find(role, name);
  }

  async count(role, name) {
    return (await this.driver.locate(role, name)).length;
  }

  // --- input ---------------------------------------------------------------------------------------

  press(keys) { return this.driver.press(keys.split("+")); }
  type(text) { return this.driver.type(text); }

  // --- the page ------------------------------------------------------------------------------------

  evaluate(code, ...values) { return this.driver.evaluate(code, values); }
  screenshot() { return this.driver.screenshot(); }
  offline(on) { return this.driver.offline(on); }
  close() { return this.driver.close(); }

  async go(address) {
    await this.driver.go(address);
    await this.ready();
  }
  async reload() {
    await this.driver.reload();
    await this.ready();
  }
  async back() {
    await this.driver.back();
    await this.settle();
  }
  async forward() {
    await this.driver.forward();
    await this.settle();
  }

  // The form is usable, and the first picture stands.
  async ready() {
    await until(() => this.evaluate(() => {
      const page = document.documentElement;
      return page?.hasAttribute("data-ready") && page.hasAttribute("data-painted");
    }), "html[data-ready][data-painted]", LOAD_WITHIN_MS).catch(async (error) => {
      error.message += `; instead: ${await this.evaluate(() => {
        const { attributes } = document.documentElement;
        const said = Array.from(attributes, ({ name, value }) => `${name}=${value}`).join(" ");
        return `${document.readyState} ${said} ${document.body?.innerText.slice(0, 400)}`;
      })}`;
      throw error;
    });
    await this.driver.ready?.();
    await this.settle();
  }

  frames() { return this.evaluate(() => window.tholeDrawn.frames); }

  // Waits until nothing more is drawn.
  async settle() {
    let before = -1;
    let since = 0;
    await until(async () => {
      const now = await this.evaluate(() => (window.tholeDrawn?.busy === false ? window.tholeDrawn.frames : -1));
      if (now !== before || now < 0) since = performance.now();
      before = now;
      return performance.now() - since >= STILL_MS;
    }, "nothing more is drawn", LOAD_WITHIN_MS);
  }
}

class Handle {
  constructor(page, element, what) {
    this.page = page;
    this.driver = page.driver;
    this.element = element;
    this.what = what;
  }

  click() { return this.driver.click(this.element); }
  focus() { return this.on((element) => element.focus()); }
  value() { return this.on((element) => element.value); }
  text() { return this.on((element) => element.textContent); }
  attribute(name) { return this.on((element, wanted) => element.getAttribute(wanted), name); }
  exists() { return this.on((element) => element.isConnected); }
  box() {
    return this.on((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      return { x, y, width, height };
    });
  }

  async press(keys) {
    await this.focus();
    await this.page.press(keys);
  }

  // Replaces what stands in a field, as fingers do; nothing is committed yet.
  async fill(text) {
    await this.click();
    await until(() => this.on((element) => element === document.activeElement), `${this.what} has the focus`);
    await this.on((element) => element.select());
    await this.page.type(text);
  }

  on(code, ...values) { return this.driver.evaluateOn(this.element, code, values); }
}

// Runs in the page.
function namesInDocument() {
  const named = document.querySelectorAll("a,button,input,select,h1,h2,h3,h4,[role],[aria-label]");
  return [...named].map((element) => element.getAttribute("aria-label")
    ?? element.labels?.[0]?.textContent.trim() ?? element.textContent.trim());
}
