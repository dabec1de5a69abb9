// WebKitGTK's MiniBrowser in a window on a screen in memory, painting in software, driven by WebDriver.
// A session is a browser of its own with an empty profile. There is no touch.

import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pressed, typed } from "./keys.mjs";
import { freePort, startProgram, startScreen } from "./process.mjs";
import { until } from "./wait.mjs";

const SCREEN = { width: 1500, height: 1400 };
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";  // the key of an element's id (WebDriver 12.1)

// The browser takes a theme only on its command line, where the driver adds words of its own.
const browserScript = (dark) => `#!/bin/sh
exec ${miniBrowser()} ${dark ? "--dark-mode" : ""} "$@"
`;

// WebDriver has no word for the console: from when the page is usable, it is listened to inside.
function listenForProblems() {
  window.heardProblems = [];
  const hear = (problem) => window.heardProblems.push(String(problem));
  addEventListener("error", (event) => hear(event.message));
  addEventListener("unhandledrejection", (event) => hear(event.reason));
  console.error = (...words) => hear(words.join(" "));
}

// The window gets no narrower than its toolbar, and a phone is narrower than that.
const NARROW_TOOLBAR = `
* { min-width: 0; padding: 0; margin: 0; border-width: 0; font-size: 1px; -gtk-icon-transform: scale(0); }
toolbar image { margin: 0 -6px; }
`;

// WebDriver tells the role and name of an element but does not look for them: these may have the role.
const CANDIDATES = {
  button: "button,[role=button]", textbox: "input,textarea", slider: "input[type=range],[role=slider]",
  checkbox: "input[type=checkbox],[role=checkbox],[role=switch]", combobox: "select",
  heading: "h1,h2,h3,h4,h5,h6",
  radio: "input[type=radio],[role=radio]", link: "a[href]", main: "main", navigation: "nav",
  dialog: "dialog,[role=dialog]",
};

export async function start() {
  const screen = await startScreen(SCREEN.width, SCREEN.height);
  const pages = [];
  return {
    async open(options) {
      const page = await open(screen.display, options);
      pages.push(page);
      return page;
    },
    async close() {
      for (const page of pages) await page.close();
      await screen.stop();
    },
  };
}

// It comes with the library, in a folder that bears the machine's and the library's name.
function miniBrowser() {
  for (const machine of readdirSync("/usr/lib")) {
    for (const library of ["webkit2gtk-4.1", "webkit2gtk-4.0", "webkitgtk-6.0"]) {
      const file = join("/usr/lib", machine, library, "MiniBrowser");
      if (existsSync(file)) return file;
    }
  }
  throw new Error("WebKitGTK's MiniBrowser is missing: tools/deps installs it with webkit2gtk-driver");
}

async function open(display, { width, height, dark = false, reducedMotion = false }) {
  const home = mkdtempSync(join(tmpdir(), "thole-webkit-"));
  mkdirSync(join(home, "gtk-3.0"));
  writeFileSync(join(home, "gtk-3.0/settings.ini"),
    `[Settings]\ngtk-enable-animations=${reducedMotion ? 0 : 1}\n`);
  writeFileSync(join(home, "gtk-3.0/gtk.css"), NARROW_TOOLBAR);
  const browser = join(home, "browser");
  writeFileSync(browser, browserScript(dark), { mode: 0o755 });
  const port = await freePort();
  const driver = await startProgram("WebKitWebDriver", [`--port=${port}`], { env: {
    DISPLAY: display, GDK_BACKEND: "x11", LIBGL_ALWAYS_SOFTWARE: "1", NO_AT_BRIDGE: "1",
    XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home,
    WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1",  // a container has no user namespaces for it
  } });
  let session = "";
  async function send(method, path, body) {
    const response = await fetch(`http://127.0.0.1:${port}${session}${path}`, {
      method, headers: { "Content-Type": "application/json" }, body: body && JSON.stringify(body) });
    const { value } = await response.json();
    if (!response.ok) throw new Error(`${path}: ${value.error}: ${value.message}`);
    return value;
  }
  // Values travel as JSON both ways: one form for everything.
  async function run(code, values, elements) {
    const call = `(${code})(...arguments, ...${JSON.stringify(values)})`;
    const script = `return Promise.resolve(${call}).then((value) => JSON.stringify(value))`;
    const text = await send("POST", "/execute/sync", { script, args: elements });
    return text === null ? undefined : JSON.parse(text);
  }
  const act = (actions) => send("POST", "/actions", { actions: [{ type: "key", id: "keys", actions }] });
  const asked = (element, what) => send("GET", `/element/${element}/${what}`);

  const page = {
    problems: () => page.evaluate(() => window.heardProblems, []),
    ready: () => page.evaluate(listenForProblems, []),
    async locate(role, name) {
      const value = CANDIDATES[role] ?? `[role=${role}]`;
      const found = await send("POST", "/elements", { using: "css selector", value });
      const matching = [];
      for (const element of found.map((one) => one[ELEMENT])) {
        if (await asked(element, "computedlabel") !== name) continue;
        if (await asked(element, "computedrole") === role) matching.push(element);
      }
      return matching;
    },
    click: (element) => send("POST", `/element/${element}/click`, {}),
    press: (names) => act(pressed(names)),
    type: (text) => act(typed(text)),
    evaluate: (code, values) => run(code, values, []),
    evaluateOn: (element, code, values) => run(code, values, [{ [ELEMENT]: element }]),
    screenshot: async () => Buffer.from(await send("GET", "/screenshot"), "base64"),
    go: (url) => send("POST", "/url", { url }),
    reload: () => send("POST", "/refresh", {}),
    back: () => send("POST", "/back", {}),
    forward: () => send("POST", "/forward", {}),
    async close() {  // a second time does nothing
      await send("DELETE", "").catch(() => {});
      await driver.stop();
      rmSync(home, { recursive: true, force: true, maxRetries: 5 });
    },
  };
  try {
    await until(() => send("GET", "/status").catch(() => null), "WebKitWebDriver listens");
    const { sessionId } = await send("POST", "/session", { capabilities: { alwaysMatch: {
      "webkitgtk:browserOptions": { binary: browser, args: ["--automation"] } } } });
    session = `/session/${sessionId}`;
    await fitWindow(send, page, width, height);
  } catch (error) {
    error.message += `\n${driver.output()}`;
    await page.close();
    throw error;
  }
  return page;
}

// The window so large that the page in it has the wanted size (it follows a change a little later), and in
// the middle of the screen: without a window manager the window under the pointer has the focus, and the
// pointer rests there.
async function fitWindow(send, page, width, height) {
  const state = () => page.evaluate((wide, high) => ({
    across: outerWidth - innerWidth + wide, down: outerHeight - innerHeight + high,
    right: innerWidth === wide && innerHeight === high, page: [innerWidth, innerHeight] }), [width, height]);
  let last = null;
  await until(async () => {
    last = await state();
    if (!last.right) {
      const { across, down } = last;
      const place = { x: (SCREEN.width - across) >> 1, y: (SCREEN.height - down) >> 1 };
      await send("POST", "/window/rect", { ...place, width: across, height: down });
    }
    return last.right;
  }, `a page of ${width} x ${height}`).catch((error) => {
    throw new Error(`${error.message}; it is ${last.page.join(" x ")}`);
  });
}
