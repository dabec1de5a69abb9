// What the audit measures on the running page. Functions of an engine's page work in all three engines
// (engines/engine.mjs); those of a Playwright page need Chromium's own protocol.

import { readFileSync } from "node:fs";
import { connect, createServer } from "node:net";
import { join } from "node:path";
import { frames, ROOT, settle } from "./browser.mjs";
import { LOAD_WITHIN_MS, pause, until } from "./engines/wait.mjs";

const AXE = readFileSync(join(ROOT, "tests/web/node_modules/axe-core/axe.min.js"), "utf8");
const QUIET_MS = 1500;   // without a byte: the visit has loaded what it loads
const STILL_MS = 150;    // the frames that one change brings are over
const CHANGES = 15;
const TARGET_TOLERANCE_PX = 0.5;

export const median = (numbers) => [...numbers].sort((a, b) => a - b)[numbers.length >> 1];

// --- any engine -----------------------------------------------------------------------------------

// Passes everything on to a server and counts what comes back, headers and all: what a service worker
// fetches for later is counted as well.
export async function countingProxy(address) {
  const { port, hostname } = new URL(address);
  let bytes = 0;
  let lastAt = 0;
  let asked = "";
  const sockets = new Set();
  const proxy = createServer((client) => {
    const server = connect(Number(port), hostname);
    for (const [socket, other] of [[client, server], [server, client]]) {
      sockets.add(socket);
      socket.on("error", () => other.destroy());
      socket.on("close", () => sockets.delete(socket));
    }
    client.on("data", (part) => { asked += part.toString("latin1"); });
    server.on("data", (part) => {
      bytes += part.length;
      lastAt = performance.now();
    });
    client.pipe(server);
    server.pipe(client);
  });
  await new Promise((resolve) => { proxy.listen(0, "127.0.0.1", resolve); });
  return {
    address: `http://127.0.0.1:${proxy.address().port}/`,
    bytes: () => bytes,
    quiet: () => until(() => performance.now() - lastAt > QUIET_MS, "nothing more is loaded", LOAD_WITHIN_MS),
    brotli: () => /^accept-encoding:.*\bbr\b/im.test(asked),
    // Files that never change and were asked for more than once.
    twice() {
      const paths = [...asked.matchAll(/^GET (\S+\.[0-9a-f]{10}\.\w+) /gm)].map(([, path]) => path);
      return paths.filter((path, at) => paths.indexOf(path) < at);
    },
    close() {
      for (const socket of sockets) socket.destroy();
      proxy.close();
    },
  };
}

// Milliseconds from the start of a visit until the form is usable.
export async function usable_ms(page, address) {
  await page.driver.go(address);
  return until(() => page.evaluate(() =>
    document.documentElement?.hasAttribute("data-ready") && performance.now()), "the form is usable");
}

export async function idleFrames(page, during_ms) {
  await page.settle();
  const before = await page.frames();
  await pause(during_ms);
  return await page.frames() - before;
}

export async function accessibilityViolations(page) {
  await page.evaluate(`() => { ${AXE} }`);
  return page.evaluate(async () => {
    const { violations } = await window.axe.run();
    return violations.map((rule) => `${rule.id}: ${rule.nodes[0].html}`);
  });
}

// Wall-clock work of the main thread for each of many changes: of the frames that a change brings, the
// costliest is the one that computes.
export async function typingWork_ms(page) {
  const costs = [];
  const field = await page.find("textbox", "Bow height");
  for (const height of heights()) {
    await field.fill(height);
    await page.evaluate(() => { window.tholeDrawn.work_ms.length = 0; });
    await page.press("Enter");
    await until(() => page.evaluate(() => window.tholeDrawn.work_ms.length > 0), "a new picture");
    await pause(STILL_MS);
    costs.push(await page.evaluate(() => Math.max(...window.tholeDrawn.work_ms)));
  }
  return costs;
}

const heights = () => Array.from({ length: CHANGES }, (_, change) => (1 + 0.03 * change).toFixed(2));

// --- Chromium -------------------------------------------------------------------------------------

export const protocol = (page) => page.context().newCDPSession(page);

export async function throttle(page, rate) {
  const session = await protocol(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
  return () => session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
}

// As typingWork_ms, but in processor time of the main thread, from the browser's own trace: what else the
// machine does meanwhile is left out. `changes` makes them, and calls `next` before each.
export async function tracedWork_ms(page, changes) {
  const browser = page.context().browser();
  await browser.startTracing(page, { categories: ["devtools.timeline", "blink.user_timing"] });
  await changes(() => page.evaluate(() => { performance.mark("audit change"); }));
  await pause(STILL_MS);
  const { traceEvents } = JSON.parse(await browser.stopTracing());
  const marks = traceEvents.filter(({ name }) => name === "audit change").map(({ ts }) => ts);
  const drawn = traceEvents.filter(({ name, ph }) => name === "FireAnimationFrame" && ph === "X");
  return marks.map((from, at) => Math.max(0, ...drawn
    .filter(({ ts }) => ts >= from && ts < (marks[at + 1] ?? Infinity))
    .map(({ tdur }) => tdur / 1000)));
}

export const typing = (page) => async (next) => {
  const field = page.getByRole("textbox", { name: "Bow height", exact: true });
  for (const height of heights()) {
    await next();
    const before = await frames(page);
    await field.fill(height);
    await page.keyboard.press("Enter");
    await until(async () => await frames(page) > before, "a new picture");
    await settle(page);
  }
  await page.evaluate(() => document.activeElement.blur());
};

// Drags a slider across, or a handle of the picture up: `way` is where to, in px from where it is taken.
export const dragging = (page, name, way) => async (next) => {
  const slider = page.getByRole("slider", { name, exact: true });
  await slider.evaluate((element) => element.scrollIntoView({ block: "center" }));
  await settle(page);
  const { x, y, width, height } = await slider.boundingBox();
  const [fromX, fromY] = [x + width / 2, y + height / 2];
  const said = () => slider.getAttribute("aria-valuetext");
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  await settle(page);
  for (let change = 1; change <= CHANGES; ++change) {
    const before = await said();
    await next();
    await page.mouse.move(fromX + way.x * change / CHANGES, fromY + way.y * change / CHANGES);
    await until(async () => await said() !== before, `${name} follows the pointer`);
    await settle(page);
  }
  await page.mouse.up();
  await settle(page);
};

// JavaScript heap of the page and of its workers, and the memory of the program.
export async function memory_bytes(page) {
  const session = await protocol(page);
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  const program = await page.evaluate(() => window.tholeDrawn.memory_bytes());
  const workers = await workerHeap_bytes(session);
  await session.detach();
  return { script: usedSize + workers, program, together: usedSize + workers + program };
}

async function workerHeap_bytes(session) {
  const heaps = [];
  session.on("Target.attachedToTarget", ({ sessionId, targetInfo }) => {
    if (targetInfo.type !== "worker") return;
    heaps.push(new Promise((resolve) => {
      session.on("Target.receivedMessageFromTarget", (event) => {
        const message = JSON.parse(event.message);
        if (event.sessionId === sessionId && message.id === 1) resolve(message.result?.usedSize ?? 0);
      });
    }));
    session.send("Target.sendMessageToTarget", {
      sessionId, message: JSON.stringify({ id: 1, method: "Runtime.getHeapUsage" }) });
  });
  await session.send("Target.setAutoAttach",
    { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  const sizes = await Promise.all(heaps);
  return sizes.reduce((sum, size) => sum + size, 0);
}

// Names of the targets that a finger would miss.
export function smallTargets(page, least_px) {
  return page.evaluate((least) => [...document.querySelectorAll("a[href],button,input,select,[role=radio]")]
    .filter((element) => element.closest("[hidden],[inert]") === null)
    .map((element) => ({ element, box: element.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 0 && (box.width < least || box.height < least))
    .map(({ element, box }) => {
      const name = element.getAttribute("aria-label") ?? element.textContent.trim();
      return `${name} (${box.width.toFixed(0)} x ${box.height.toFixed(0)})`;
    }), least_px - TARGET_TOLERANCE_PX);
}
