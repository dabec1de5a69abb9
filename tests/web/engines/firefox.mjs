// Firefox in a window on a screen in memory (headless it has no WebGL), painting by Mesa's software renderer,
// driven by WebDriver BiDi. Roles and names come from the browser's own accessibility tree.

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import WebSocket from "ws";
import { pressed, typed } from "./keys.mjs";
import { startProgram, startScreen } from "./process.mjs";

const SCREEN = { width: 1500, height: 1400 };

// Nothing of its own on the network, no first-run pages, and the theme that was asked for.
const preferences = ({ dark, reducedMotion }) => ({
  "layout.css.prefers-color-scheme.content-override": dark ? 0 : 1,
  "ui.prefersReducedMotion": reducedMotion ? 1 : 0,
  "intl.accept_languages": "en-GB, en",
  "browser.aboutwelcome.enabled": false,
  "browser.shell.checkDefaultBrowser": false,
  "browser.startup.homepage_override.mstone": "ignore",
  "app.normandy.enabled": false,
  "app.update.auto": false,
  "datareporting.policy.dataSubmissionEnabled": false,
  "network.captive-portal-service.enabled": false,
  "network.connectivity-service.enabled": false,
  "extensions.getAddons.cache.enabled": false,
  "services.settings.server": "data:,",
  "toolkit.telemetry.enabled": false,
  "webgl.force-enabled": true,
});

export async function start() {
  const screen = await startScreen(SCREEN.width, SCREEN.height);
  const browsers = new Map();  // by theme and motion, which hold for the whole program
  return {
    async open(options) {
      const look = JSON.stringify([Boolean(options.dark), Boolean(options.reducedMotion)]);
      if (!browsers.has(look)) browsers.set(look, await launch(screen.display, options));
      return open(browsers.get(look), options);
    },
    async close() {
      for (const browser of browsers.values()) await browser.close();
      await screen.stop();
    },
  };
}

async function launch(display, options) {
  const profile = mkdtempSync(join(tmpdir(), "thole-firefox-"));
  writeFileSync(join(profile, "user.js"), Object.entries(preferences(options))
    .map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`).join(""));
  const program = await startProgram("firefox-esr",
    ["--no-remote", "--profile", profile, "--remote-debugging-port=0",
      `--width=${SCREEN.width}`, `--height=${SCREEN.height}`, "about:blank"],
    {
      env: { DISPLAY: display, LIBGL_ALWAYS_SOFTWARE: "1", MOZ_CRASHREPORTER_DISABLE: "1" },
      pattern: /WebDriver BiDi listening on (ws:\S+)/,
    });
  const wire = await Wire.connect(`${program.match[1]}/session`);
  await wire.send("session.new", { capabilities: {} });
  await wire.send("session.subscribe", { events: ["log.entryAdded"] });
  return {
    wire,
    async close() {
      wire.close();
      await program.stop();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

async function open({ wire }, { width, height, touch = false }) {
  const { userContext } = await wire.send("browser.createUserContext", {});
  const { context } = await wire.send("browsingContext.create", { type: "tab", userContext });
  await wire.send("browsingContext.setViewport", { context, viewport: { width, height } });
  const problems = [];
  const stopHearing = wire.hear("log.entryAdded", ({ level, text, source }) => {
    if (source.context === context && level === "error") problems.push(text);
  });
  const pointer = { type: "pointer", id: "pointer", parameters: { pointerType: touch ? "touch" : "mouse" } };
  const act = (...actions) => wire.send("input.performActions", { context, actions });
  const keys = (actions) => act({ type: "key", id: "keys", actions });

  // Values travel as JSON both ways: one form for everything.
  async function run(code, values, nodes) {
    const call = `(${code})(...nodes, ...${JSON.stringify(values)})`;
    const answer = await wire.send("script.callFunction", {
      functionDeclaration: `async (...nodes) => JSON.stringify(await ${call})`, arguments: nodes,
      target: { context }, awaitPromise: true, resultOwnership: "none" });
    if (answer.type === "exception") throw new Error(answer.exceptionDetails.text);
    return answer.result.type === "undefined" ? undefined : JSON.parse(answer.result.value);
  }
  const reference = ({ sharedId }) => ({ sharedId });

  return {
    problems: () => problems,
    async locate(role, name) {
      const { nodes } = await wire.send("browsingContext.locateNodes", {
        context, locator: { type: "accessibility", value: { role, name } } });
      return nodes;
    },
    async click(node) {
      await this.evaluateOn(node, (element) => element.scrollIntoView({ block: "center" }), []);
      await act({ ...pointer, actions: [
        { type: "pointerMove", x: 0, y: 0, origin: { type: "element", element: reference(node) } },
        { type: "pointerDown", button: 0 }, { type: "pointerUp", button: 0 }] });
    },
    press: (names) => keys(pressed(names)),
    type: (text) => keys(typed(text)),
    evaluate: (code, values) => run(code, values, []),
    evaluateOn: (node, code, values) => run(code, values, [reference(node)]),
    async screenshot() {
      const { data } = await wire.send("browsingContext.captureScreenshot", { context });
      return Buffer.from(data, "base64");
    },
    go: (url) => wire.send("browsingContext.navigate", { context, url, wait: "complete" }),
    reload: () => wire.send("browsingContext.reload", { context, wait: "complete" }),
    back: () => wire.send("browsingContext.traverseHistory", { context, delta: -1 }),
    forward: () => wire.send("browsingContext.traverseHistory", { context, delta: 1 }),
    offline: (on) => wire.send("emulation.setNetworkConditions", {
      contexts: [context], networkConditions: on ? { type: "offline" } : null }),
    async close() {
      stopHearing();
      await wire.send("browsingContext.close", { context });
      await wire.send("browser.removeUserContext", { userContext });
    },
  };
}

// Commands and events of WebDriver BiDi over one socket.
class Wire {
  static connect(address) {
    return new Promise((resolve, reject) => {
      const socket = new WebSocket(address, { perMessageDeflate: false });
      socket.on("open", () => resolve(new Wire(socket)));
      socket.on("error", reject);
    });
  }

  constructor(socket) {
    this.socket = socket;
    this.last = 0;
    this.waiting = new Map();
    this.listeners = new Set();
    socket.on("message", (data) => this.heard(JSON.parse(data)));
    socket.on("close", () => this.drop());
  }

  send(method, params) {
    const id = ++this.last;
    this.socket.send(JSON.stringify({ id, method, params }));
    return new Promise((resolve, reject) => { this.waiting.set(id, { resolve, reject, method }); });
  }

  hear(method, listener) {
    const entry = { method, listener };
    this.listeners.add(entry);
    return () => this.listeners.delete(entry);
  }

  heard(message) {
    if (message.type === "event") {
      for (const { method, listener } of this.listeners) {
        if (method === message.method) listener(message.params);
      }
      return;
    }
    const { resolve, reject, method } = this.waiting.get(message.id);
    this.waiting.delete(message.id);
    if (message.type === "success") resolve(message.result);
    else reject(new Error(`${method}: ${message.error}: ${message.message}`));
  }

  drop() {
    for (const { reject, method } of this.waiting.values()) {
      reject(new Error(`${method}: the browser is gone`));
    }
    this.waiting.clear();
  }

  close() { this.socket.close(); }
}
