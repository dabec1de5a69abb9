// The page around the program. The canvas paints and takes no input; mirror.js keeps a real element
// over everything that can be read or touched. Frames are drawn when something changed, and only then.

import createThole from "./thole.js";
import { Mirror } from "./mirror.js";

const JOB = "thole.job";      // names in local storage
const UNITS = "thole.units";
const canvas = document.getElementById("canvas");
const sheet = document.getElementById("sheet");
const toast = document.getElementById("toast");

// --- the program -----------------------------------------------------------------------------------

let thole = null;    // its functions, once it runs
let mirror = null;
let alive = false;   // there is a graphics context to draw with

function bind(module) {
  const text = (name, ...types) => module.cwrap(name, "string", types);
  const number = (name, ...types) => module.cwrap(name, "number", types);
  return {
    boot: number("thole_boot"),
    resize: number("thole_resize", ...Array(8).fill("number")),
    theme: number("thole_theme", "number", "number", "number"),
    frame: number("thole_frame", "number", "number"),
    contentHeight: number("thole_content_height"),
    pageTurned: number("thole_page_turned"),
    treeVersion: number("thole_tree_version"),
    jobVersion: number("thole_job_version"),
    tree: text("thole_tree"),
    act: number("thole_act", "string", "string", "string"),
    text: text("thole_text", "string"),
    open: text("thole_open", "string"),
    contextLost: number("thole_context_lost"),
    contextRestored: number("thole_context_restored"),
    font: (semibold) => {
      const from = module._thole_font(semibold);
      return module.HEAPU8.slice(from, from + module._thole_font_size(semibold));
    },
  };
}

// --- frames ----------------------------------------------------------------------------------------

let wanted = 0;
let pending = 0;
let lastTime = 0;
const drawn = { frames: 0 };

function request(count = 2) {
  wanted = Math.max(wanted, count);
  if (pending || !alive || document.hidden) return;
  pending = requestAnimationFrame(tick);
}

function tick(time) {
  pending = 0;
  if (!alive) return;
  const dt = Math.min((time - lastTime) / 1000, 0.1);
  lastTime = time;
  drawn.frames += 1;
  wanted = Math.max(wanted - 1, thole.frame(dt, window.scrollY));
  follow();
  if (wanted > 0) request(wanted);
}

// What the frame changed, carried over to the document.
let seen = { height: 0, tree: -1, job: 0, units: "" };
let scrollNext = null;  // where to, once the document has the length of the new page
function follow() {
  const scroll = scrollNext;
  const height = Math.ceil(thole.contentHeight());
  if (height !== seen.height) {
    seen.height = height;
    sheet.style.height = `${height}px`;
  }
  if (thole.treeVersion() !== seen.tree) {
    seen.tree = thole.treeVersion();
    mirror.update(JSON.parse(thole.tree()));
  }
  if (thole.jobVersion() !== seen.job) {
    seen.job = thole.jobVersion();
    keepSoon();
  }
  if (scroll !== null && scrollNext === scroll) {
    scrollNext = null;
    window.scrollTo(0, scroll);
  }
  if (thole.text("units") !== seen.units) {
    seen.units = thole.text("units");
    store(UNITS, seen.units);
  }
  if (thole.pageTurned()) turned();
}

function act(id, verb, text = "") {
  thole.act(id, verb, String(text));
  request(3);
}

// --- size, theme, type -----------------------------------------------------------------------------

const insets = document.body.appendChild(document.createElement("div"));
insets.id = "insets";

function resize(entry) {
  const { width, height } = canvas.getBoundingClientRect();
  if (!width || !height) return;
  // More than three pixels to one brings nothing that an eye can see.
  const ratio = Math.min(devicePixelRatio, 3);
  // The browser knows how a fraction is rounded; an emulated screen reports other pixels altogether.
  const box = entry?.devicePixelContentBoxSize?.[0];
  const pixels = (css, exact) => (Math.abs(exact - css * ratio) <= 1 ? exact : Math.round(css * ratio));
  const pixelWidth = pixels(width, box?.inlineSize);
  const pixelHeight = pixels(height, box?.blockSize);
  if (canvas.width !== pixelWidth) canvas.width = pixelWidth;
  if (canvas.height !== pixelHeight) canvas.height = pixelHeight;
  const inset = getComputedStyle(insets);
  thole.resize(width, height, pixelWidth, pixelHeight,
    ...["Top", "Right", "Bottom", "Left"].map((side) => parseFloat(inset[`padding${side}`]) || 0));
  // A changed backing store is blank until the next frame: draw it in this one.
  if (alive) {
    cancelAnimationFrame(pending);
    tick(performance.now());
  }
}

function watchSize() {
  const observer = new ResizeObserver((entries) => resize(entries[0]));
  try {
    observer.observe(canvas, { box: "device-pixel-content-box" });
  } catch {
    observer.observe(canvas);
  }
  const watchRatio = () => {
    matchMedia(`(resolution: ${devicePixelRatio}dppx)`)
      .addEventListener("change", () => { watchRatio(); resize(); }, { once: true });
  };
  watchRatio();
}

const dark = matchMedia("(prefers-color-scheme: dark)");
const still = matchMedia("(prefers-reduced-motion: reduce)");
function theme() {
  const textScale = parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
  thole.theme(dark.matches ? 1 : 0, still.matches ? 1 : 0, textScale);
  request();
}

// Real inputs are set in the type that the canvas paints; its bytes are in the program already.
function shareType() {
  for (const [semibold, weight] of [[0, "400"], [1, "600"]]) {
    document.fonts.add(new FontFace("Thole Sans", thole.font(semibold), { weight }));
  }
}

// --- the job: kept here, and in the address --------------------------------------------------------

const address = () => `${location.origin}${location.pathname}${location.search}#${thole.text("link")}`;

let keepTimer = 0;
function keepSoon() {
  clearTimeout(keepTimer);
  keepTimer = setTimeout(keep, 500);
}
function keep() {
  clearTimeout(keepTimer);
  keepTimer = 0;
  const link = thole.text("link");
  store(JOB, link);
  history.replaceState(history.state, "", `#${link}`);
}

// Private windows and frames may refuse storage; the address holds the job as well.
function store(name, text) {
  try {
    localStorage.setItem(name, text);
  } catch {
    // nothing is lost by it
  }
}
function stored(name) {
  try {
    return localStorage.getItem(name) ?? "";
  } catch {
    return "";
  }
}

const isJob = (hash) => hash.startsWith("#job=");

function open(text) {
  const issues = JSON.parse(thole.open(text));
  if (issues.length > 0) say(issues.map((issue) => issue.message).join(" "));
  request(3);
}

// What was on the table first, so that undo leads back from a link to one's own job.
function openFirst() {
  const own = stored(JOB);
  if (own) thole.open(own);
  if (isJob(location.hash) && location.hash !== `#${own}`) open(location.hash);
  seen.job = thole.jobVersion();
}

async function copyLink() {
  const link = address();
  try {
    await navigator.clipboard.writeText(link);  // inside the gesture: nothing is awaited before it
    say("Link copied");
  } catch {
    window.prompt("Copy this link", link);
  }
}

let toastTimer = 0;
function say(text) {
  toast.textContent = text;
  toast.hidden = false;
  clearTimeout(toastTimer);
  toastTimer = setTimeout(() => { toast.hidden = true; }, 2500 + 40 * text.length);
}

// --- pages and the browser's own Back ----------------------------------------------------------------

history.scrollRestoration = "manual";
let walking = null;  // where Back or Forward leads while the page follows

function turned() {
  const key = thole.text("page");
  if (walking) {
    scrollNext = walking.scroll ?? 0;
  } else {
    history.replaceState({ ...history.state, scroll: window.scrollY }, "");
    history.pushState({ page: key }, "");
    scrollNext = 0;
  }
  walking = null;
  mirror.focusHeading();
  request();
}

addEventListener("popstate", (event) => {
  if (!thole || !event.state?.page) return;
  walking = event.state;
  act("app", "page", event.state.page);
});
addEventListener("hashchange", () => {
  if (thole && isJob(location.hash) && location.hash !== `#${thole.text("link")}`) open(location.hash);
});

// --- keys --------------------------------------------------------------------------------------------

addEventListener("keydown", (event) => {
  if (!thole || !(event.ctrlKey || event.metaKey) || event.altKey) return;
  if (mirror.typing()) return;  // the input undoes its own typing
  const key = event.key.toLowerCase();
  const redo = key === "y" || (key === "z" && event.shiftKey);
  if (key !== "z" && !redo) return;
  event.preventDefault();
  act("app", redo ? "redo" : "undo");
});

// --- start ---------------------------------------------------------------------------------------------

function fail(message) {
  document.getElementById("progress").textContent = message;
}

async function start() {
  const late = setTimeout(() => fail("Still loading; the first visit takes longest …"), 5000);
  try {
    thole = bind(await createThole());
  } catch (error) {
    console.error(error);
    fail("The program could not be started. Reload the page, or try another browser.");
    return;
  } finally {
    clearTimeout(late);
  }
  if (!thole.boot()) {
    thole = null;
    fail("This browser does not offer WebGL 2, which the page is drawn with.");
    return;
  }
  mirror = new Mirror(sheet, { act, actions: { "copy-link": copyLink } });
  shareType();
  theme();
  openFirst();
  thole.act("app", "units", stored(UNITS) || (navigator.language === "en-US" ? "us" : "metric"));
  if (history.state?.page) thole.act("app", "page", history.state.page);
  else history.replaceState({ page: thole.text("page") }, "");
  walking = history.state;  // the first page is not a step of its own
  alive = true;
  resize();
  walking = null;
  watchSize();
  document.getElementById("welcome").remove();
  document.documentElement.dataset.ready = "true";

  addEventListener("scroll", () => request(1), { passive: true });
  addEventListener("pageshow", () => request());
  addEventListener("focus", () => request(1));
  addEventListener("pagehide", () => { if (keepTimer) keep(); });
  document.addEventListener("visibilitychange", () => {
    if (document.hidden && keepTimer) keep();
    request(1);
  });
  dark.addEventListener("change", theme);
  still.addEventListener("change", theme);
  canvas.addEventListener("webglcontextlost", (event) => {
    event.preventDefault();  // asks for it back
    alive = false;
    thole.contextLost();
  });
  canvas.addEventListener("webglcontextrestored", () => {
    alive = thole.contextRestored() === 1;
    request(3);
  });
}

window.tholeDrawn = drawn;  // the tests count frames
start();
