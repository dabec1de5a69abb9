// The page around the program: what it starts with, how it looks, where it is in the browser's history,
// and who is told what. The canvas paints and takes no input; mirror.js keeps a real element over
// everything that can be read or touched.

import { Canvas } from "./canvas.js";
import { Frames } from "./frames.js";
import { Keep } from "./keep.js";
import { Mirror } from "./mirror.js";
import { keepOffline } from "./offline.js";
import { Paper } from "./paper.js";
import { firstPaint, nextTask, startProgram } from "./program.js";
import { canShare, copyLink, pickFile, saveFile, shareLink } from "./share.js";

const PLAIN_AFTER_MS = 2500;  // without a painted canvas the form shows itself
const embedded = window !== window.top && new URLSearchParams(location.search).has("embed");
const byId = (id) => document.getElementById(id);
const { dataset } = document.documentElement;

let program = null;
let frames = null;
let mirror = null;
let keep = null;
let paper = null;
let offlineUpdate = null;  // applies the newer build, once there is one

// --- the canvas -------------------------------------------------------------------------------------

// Started before the program is here: a graphics context takes its time, and has a thread of its own.
let paintable = null;  // null while it is not known
const canvas = new Canvas(byId("canvas"), {
  ready: () => {
    paintable = true;
    program?.repaintAll();  // frames drawn before it could paint took their textures with them
    frames?.request(1);
  },
  painted: () => {
    dataset.painted = "true";
    mirror?.setPlain(false);
    frames.painted();
  },
  lost: () => {},
  restored: () => {
    program.repaintAll();
    frames.request(3);
  },
  none: () => {
    paintable = false;
    showPlain();
  },
});

// The form without a canvas; its pictures are drawings of the document.
let plainStyle = null;
function showPlain() {
  if (!mirror || dataset.painted) return;
  if (!plainStyle) {
    plainStyle = new CSSStyleSheet();
    plainStyle.replaceSync(program.text("svg-style"));
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, plainStyle];
  }
  mirror.setPlain(true);
}

// --- what a frame changed, carried over to the document ---------------------------------------------

const seen = { height: 0, tree: -1, job: 0, units: "" };
const listeners = { change: [], quote: [] };  // of the page around a frame
let scrollNext = null;  // where to, once the document has the length of the new page

function follow() {
  const scroll = scrollNext;
  const height = Math.ceil(program.contentHeight());
  if (height !== seen.height) {
    seen.height = height;
    byId("sheet").style.height = `${height}px`;
  }
  if (program.treeVersion() !== seen.tree) {
    seen.tree = program.treeVersion();
    mirror.update(JSON.parse(program.tree()));
  }
  if (program.jobVersion() !== seen.job) {
    seen.job = program.jobVersion();
    addressSoon();
    keep.soon();
    for (const tell of listeners.change) tell();
  }
  if (scroll !== null && scrollNext === scroll) {
    scrollNext = null;
    window.scrollTo(0, scroll);
  }
  if (program.text("units") !== seen.units) {
    seen.units = program.text("units");
    keep.units = seen.units;
  }
  if (program.pageTurned()) turned();
}

function act(id, verb, text = "") {
  whenWhole(() => {
    program.act(id, verb, String(text));
    frames.request(3);
  });
}

// Most of what an act runs comes with the first of them (rest.js); order is kept.
let waiting = 0;
function whenWhole(go) {
  if (program.whole()) return go();
  ++waiting;
  return program.makeWhole().then(go, (error) => {
    console.error(error);
    say("Part of the program could not be fetched. Check the connection and try again.");
  }).finally(() => { --waiting; });
}

// --- theme and type ---------------------------------------------------------------------------------

const dark = matchMedia("(prefers-color-scheme: dark)");
const still = matchMedia("(prefers-reduced-motion: reduce)");
let asked = "auto";  // the shop's page may ask for day or night
function theme() {
  const textScale = parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;
  const night = asked === "auto" ? dark.matches : asked === "dark";
  program.theme(night ? 1 : 0, still.matches ? 1 : 0, textScale);
  frames.request();
}

// Real inputs are set in the type that the canvas paints; its bytes are in the program already.
function shareType() {
  for (const [semibold, weight] of [[0, "400"], [1, "600"]]) {
    document.fonts.add(new FontFace("Thole Sans", program.font(semibold), { weight }));
  }
}

// --- the job: in the address, kept, handed on -------------------------------------------------------

const place = `${location.protocol}//${location.host}${location.pathname}`;
const address = () => `${place}#${program.text("link")}`;
const isJob = (hash) => hash.startsWith("#job=");

let addressTimer = 0;
function addressSoon() {
  clearTimeout(addressTimer);
  addressTimer = setTimeout(writeAddress, 500);
}
function writeAddress() {
  clearTimeout(addressTimer);
  history.replaceState(history.state, "", `#${program.text("link")}`);
}

function saveNow() {
  mirror.commitTyped();
  frames.draw(performance.now());
  writeAddress();
  keep.now();
}

function open(text) {
  const issues = JSON.parse(program.open(text));
  if (issues.length > 0) say(issues.map((issue) => issue.message).join(" "));
  frames.request(3);
  return issues;
}

// What was on the table first, so that undo leads back from a link to one's own job.
async function openFirst() {
  const own = await keep.first();
  if (own || isJob(location.hash) || history.state?.page || embedded) await program.makeWhole();
  if (own) program.open(own.link);
  if (isJob(location.hash) && location.hash !== `#${own?.link}`) open(location.hash);
  seen.job = program.jobVersion();
}

function fileName(ending) {
  const words = program.text("label").toLowerCase().replaceAll(/[^a-z0-9]+/g, "-").replaceAll(/^-|-$/g, "");
  return `thole-${words || "job"}${ending}`;
}
// What is printed, by the name that the program gives it; dated today.
function paperOf(kind, ending) {
  const html = () => {
    program.act("app", "date", new Date().toLocaleDateString(undefined, { dateStyle: "long" }));
    return program.text(kind);
  };
  return { html, save: () => saveFile(fileName(ending), "text/html", html()) };
}
const jobSheet = paperOf("sheet", ".html");
const saveCutFile = (kind, ending) => saveFile(fileName(ending), "application/dxf", program.text(kind));

// Done here, in the gesture; the program only paints the buttons.
const actions = {
  "copy-link": () => copyLink(address(), say),
  "share-link": () => shareLink(address(), document.title, say),
  "save-file": () => saveFile(fileName(".json"), "application/json", program.text("job")),
  "open-file": () => pickFile(open),
  "show-sheet": () => paper.show(),
  "show-plate": () => paper.show(paperOf("plate-drawing", "-plate.html")),
  "show-template-a4": () => paper.show(paperOf("template-a4", "-template.html")),
  "show-template-letter": () => paper.show(paperOf("template-letter", "-template.html")),
  "show-elevation-a4": () => paper.show(paperOf("elevation-a4", "-bow.html")),
  "show-elevation-letter": () => paper.show(paperOf("elevation-letter", "-bow.html")),
  "save-dxf-r12": () => saveCutFile("plate-dxf-r12", "-plate_mm.dxf"),
  "save-dxf-r2000": () => saveCutFile("plate-dxf-r2000", "-plate.dxf"),
  "ask-quote": () => { for (const tell of listeners.quote) tell(); },
  "open-kept": (node) => {
    const job = keep.others()[Number(node.id.split(".").pop())];
    if (job) open(job.link);
  },
  "update": () => offlineUpdate?.(),
};

// One after the other, each as long as it takes to read.
const toSay = [];
function say(text) {
  if (toSay.includes(text)) return;
  toSay.push(text);
  if (toSay.length === 1) sayNext();
}
function sayNext() {
  const toast = byId("toast");
  toast.hidden = toSay.length === 0;
  if (toast.hidden) return;
  const [text] = toSay;
  toast.textContent = text;
  setTimeout(() => { toSay.shift(); sayNext(); }, 2500 + 40 * text.length);
}

function tellKept(jobs) {
  if (!program) return;
  const when = (at) => new Date(at).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
  program.act("app", "kept", jobs.slice(0, 6).map((job) => `${job.label || "A job"}, ${when(job.at)}`).join("\n"));
  frames.request(3);
}

// --- pages and the browser's own Back ---------------------------------------------------------------

history.scrollRestoration = "manual";
let walking = null;  // where Back or Forward leads while the page follows

function turned() {
  const key = program.text("page");
  if (walking) {
    scrollNext = walking.scroll ?? 0;
  } else {
    scrollNext = 0;
    if (!embedded) {  // inside a shop's page, Back belongs to the shop
      history.replaceState({ ...history.state, scroll: window.scrollY }, "");
      history.pushState({ page: key }, "");
    }
  }
  walking = null;
  mirror.focusHeading();
  frames.request();
}

addEventListener("popstate", (event) => {
  if (paper?.open) paper.clear();
  if (!program || !event.state?.page || event.state.page === program.text("page")) return;
  walking = event.state;
  act("app", "page", event.state.page);
});
addEventListener("hashchange", () => {
  if (!program || !isJob(location.hash) || location.hash === `#${program.text("link")}`) return;
  const link = location.hash;
  whenWhole(() => open(link));
});

// --- keys -------------------------------------------------------------------------------------------

addEventListener("keydown", (event) => {
  if (!program || paper.open) return;
  if (event.key === "Escape") act("app", "escape");
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  if (mirror.typing()) return;  // the input undoes its own typing
  const key = event.key.toLowerCase();
  const redo = key === "y" || (key === "z" && event.shiftKey);
  if (key !== "z" && !redo) return;
  event.preventDefault();
  act("app", redo ? "redo" : "undo");
});

// --- inside a shop's page ---------------------------------------------------------------------------

// The wizard as the page around it may use it: see host.js.
const forHost = {
  open,
  say,
  act,
  setCatalogue: (text) => {
    const issues = JSON.parse(program.setCatalogue(text));
    frames.request(3);
    return issues;
  },
  configure: (settings) => {
    if (settings.theme) {
      asked = settings.theme;
      dataset.theme = asked;
      theme();
    }
    for (const [key, value] of Object.entries(settings)) program.configure(key, [value].flat().join(" "));
    frames.request(3);
  },
  text: (kind) => program.text(kind),
  contentHeight: () => program.contentHeight(),
  onChange: (tell) => listeners.change.push(tell),
  onQuote: (tell) => listeners.quote.push(tell),
};

// --- start ------------------------------------------------------------------------------------------

function fail(message) {
  byId("progress").textContent = message;
}

// The first text stays painted under the canvas: it goes with the first touch, when nobody waits for it.
function letWelcomeGo() {
  const go = () => {
    byId("welcome")?.remove();
    whenWhole(() => {});
  };
  for (const type of ["pointerdown", "keydown", "scroll"]) {
    addEventListener(type, go, { once: true, passive: true, capture: true });
  }
}

async function start() {
  await firstPaint();  // the text first: what follows is ten times as large
  canvas.start();
  const late = setTimeout(() => fail("Still loading; the first visit takes longest …"), 5000);
  try {
    program = await startProgram();
  } catch (error) {
    console.error(error);
    fail("The program could not be started. Reload the page, or try another browser.");
    return;
  } finally {
    clearTimeout(late);
  }
  mirror = new Mirror(byId("sheet"), {
    act, actions,
    drawn: (id) => program.text(id),
    typing: (on) => {
      if (!matchMedia("(pointer: coarse)").matches) return;
      whenWhole(() => {
        program.typing(on ? 1 : 0);
        frames.request(1);
      });
    },
  });
  frames = new Frames({ program, canvas, place: byId("canvas"), insets: byId("insets"), follow });
  window.tholeDrawn = Object.defineProperty(Object.assign(frames.seen, {  // for the tests and the audit
    memory_bytes: () => program.memoryBytes(),
    context: (deed) => canvas.loss?.(deed),
  }), "busy", { get: () => waiting > 0 || canvas.busy || frames.pending !== 0 || !(dataset.painted || mirror.plain) });
  paper = new Paper(jobSheet);
  keep = new Keep({
    forbidden: embedded,
    current: () => ({ link: program.text("link"), label: program.text("label") }),
    refused: () => {
      say("This browser keeps nothing for you here. Copy the link to keep your job.");
      act("app", "unkept", "1");
    },
    elsewhere: tellKept,
  });
  await nextTask();
  shareType();
  theme();
  await openFirst();
  if (canShare()) program.act("app", "can-share", "1");
  program.act("app", "units", keep.units || (navigator.language === "en-US" ? "us" : "metric"));
  if (history.state?.page) program.act("app", "page", history.state.page);
  else history.replaceState({ page: program.text("page") }, "");
  program.act("app", "address", place);
  walking = history.state;  // the first page is not a step of its own
  do {
    await nextTask();
  } while (program.search());
  frames.resize();
  frames.draw(performance.now());
  walking = null;
  frames.watchSize();
  if (paintable === false) showPlain();
  else setTimeout(showPlain, PLAIN_AFTER_MS);
  dataset.ready = "true";
  byId("welcome").inert = true;
  byId("welcome").setAttribute("aria-hidden", "true");
  letWelcomeGo();

  dark.addEventListener("change", theme);
  still.addEventListener("change", theme);
  addEventListener("pagehide", writeAddress);
  if (embedded) (await import(new URL("./host.js", import.meta.url))).connectHost(forHost);
  else keepOffline({ say, saveNow, onUpdate: (apply) => { offlineUpdate = apply; act("app", "update", "1"); } });
}

start();
