// <thole-configurator>: the wizard inside a shop's page. One script tag and one element:
//
//   <script type="module" src="https://tool.example/embed.js"></script>
//   <thole-configurator catalogue="/parts.json" contact-label="Ask for a quote"></thole-configurator>
//
// The wizard runs in a frame of its own origin, apart from the page's styles and scripts; this element
// makes the frame, talks with it (messages.js) and hands on what it says as events. It sets no cookie,
// stores nothing, and asks for no file but the wizard's own and the catalogue. docs/embedding.md says
// what each attribute, event and method does.

import { envelope, MOST, number, parse, PROTOCOL, readEnvelope, readIssues, readQuote, readSummary, part,
  text } from "./messages.js";

const TOOL = new URL("./", import.meta.url);
const LEAST_HEIGHT = 480;
const MOST_HEIGHT = 20_000;
const SHARE_OF_SCREEN = 0.9;
const EDGES = 2;  // above and below the frame
const BAR = 48;   // with the logo
const READY_MS = 20_000;
const ANSWER_MS = 10_000;
const CATALOGUE_MS = 15_000;
// A frame that scrolls inside a page that scrolls is a trap for a thumb: on a small screen the wizard
// takes all of it, or none.
const PHONE = matchMedia("(max-width: 599.98px), (max-height: 479.98px)");
const DARK = matchMedia("(prefers-color-scheme: dark)");
const LEAD = "Three numbers say whether a steered electric motor on the bow holds your boat.";
const DAY = { accent: "#0a5a78", paper: "#f7f5ef", ink: "#12263a" };
const NIGHT = { accent: "#e6b066", paper: "#0c1218", ink: "#efe9dd" };

// Constructed sheets and element.style need no leave from the page's Content-Security-Policy.
const STYLE = new CSSStyleSheet();
STYLE.replaceSync(`
  :host { display: block; }
  :host([hidden]) { display: none; }
  * { box-sizing: border-box; }
  .all { position: relative; color: var(--ink); line-height: 1.5; }
  .card, .stage { background: var(--paper); border: 1px solid var(--ink); }
  .card { display: grid; align-content: center; justify-items: start; gap: 12px; padding: 24px 16px; }
  .card p, dl { margin: 0; max-width: 36em; }
  .title { font-size: 1.25em; font-weight: 600; }
  dl { display: grid; grid-template-columns: 1fr 1fr; gap: 4px 16px; width: 100%; }
  dt, dd { min-width: 0; margin: 0; overflow-wrap: break-word; }
  dd { text-align: right; font-weight: 600; }
  button {
    flex: none; min-width: 48px; min-height: 48px; padding: 0 20px; border: 0; border-radius: 6px;
    background: var(--accent); color: var(--on-accent); font: inherit; font-weight: 600; cursor: pointer;
  }
  button:focus-visible, a:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
  a { display: inline-block; padding: 12px 0; color: inherit; }
  .logo { display: block; max-width: min(160px, 40%); height: 32px; object-fit: contain; object-position: 0; }
  .bar { display: flex; align-items: center; justify-content: space-between; gap: 16px; padding: 8px 16px; }
  .bar.bare { display: none; }
  .bar .title { flex: 1; overflow: hidden; font-size: 1em; text-overflow: ellipsis; white-space: nowrap; }
  .bar button { display: none; }
  @media (max-width: 599.98px) { .bar .logo:not([hidden]) + .title { visibility: hidden; } }
  .stage { display: flex; flex-direction: column; color: inherit; }
  iframe { display: block; flex: 1; width: 100%; min-height: 0; border: 0; background: var(--paper); }
  .stage.full {
    position: fixed; inset: 0; z-index: 2147483647; width: 100%; max-width: none; max-height: none; margin: 0;
    height: 100vh; height: 100dvh; border: 0;
    padding: env(safe-area-inset-top) env(safe-area-inset-right) env(safe-area-inset-bottom)
      env(safe-area-inset-left);
  }
  .full .bar, .full .bar button { display: flex; align-items: center; }
  .full .bar { padding: 4px 8px 4px 16px; }
  [hidden] { display: none !important; }
`);

// --- small things -----------------------------------------------------------------------------------------

function make(tag, className, words = "") {
  const element = document.createElement(tag);
  if (className) element.className = className;
  element.textContent = words;
  return element;
}

// Any CSS colour as "#rrggbb"; "" when it is none.
function hex(colour) {
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 1;
  const context = canvas.getContext("2d");
  const read = (before) => {
    context.fillStyle = before;
    context.fillStyle = colour;  // what is no colour leaves the one before
    return context.fillStyle;
  };
  const value = read("#000000");
  if (!colour || value !== read("#ffffff")) return "";
  if (/^#[0-9a-f]{6}$/.test(value)) return value;
  context.fillRect(0, 0, 1, 1);
  const [red, green, blue] = context.getImageData(0, 0, 1, 1).data;
  return `#${[red, green, blue].map((part) => part.toString(16).padStart(2, "0")).join("")}`;
}

// Relative luminance and contrast of WCAG 2.2.
function luminance(rrggbb) {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const value = parseInt(rrggbb.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
const isDark = (rrggbb) => luminance(rrggbb) < 0.18;  // the middle between black and white
function contrast(one, other) {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}
// The colour itself where it can be read on that ground, else black or white.
const readable = (colour, ground) =>
  [colour, "#000000", "#ffffff"].find((one) => contrast(one, ground) >= 4.5);

// Everything of the page beside the way down to this element: what a full screen covers.
function* othersOf(element) {
  for (let node = element; node && node !== document.body; node = node.parentNode ?? node.host) {
    for (const other of node.parentNode?.children ?? []) {
      if (other !== node && !other.inert) yield other;
    }
  }
}

// What the wizard refused, with the issue for each field.
export class TholeError extends Error {
  constructor(message, issues = []) {
    super(message);
    this.name = "TholeError";
    this.issues = issues;
  }
}
const sentence = (issues) => issues.map((issue) => issue.message).join(" ");

const asText = (document) => (typeof document === "string" ? document : JSON.stringify(document));

// --- the element -------------------------------------------------------------------------------------------

class TholeConfigurator extends HTMLElement {
  // "style" and "class" may change the colours.
  static observedAttributes = ["catalogue", "units", "lang", "page", "pages", "job", "theme", "contact-label",
    "logo", "max-height", "style", "class"];

  #parts = null;            // elements inside
  #frame = null;            // the iframe, once it is wanted
  #ready = null;            // settles when the wizard has taken the first message
  #asked = new Map();       // requests on the way: number -> { resolve, reject, timer }
  #count = 0;
  #content = MOST_HEIGHT;   // height that the wizard would like
  #summary = null;
  #job = "";                // as last told: a frame that is made anew goes on from here
  #full = null;             // while full screen: what has to be put back
  #listening = null;        // ends all listeners outside the element
  #seen = null;             // watches for the viewport
  #token = "";

  get summary() {
    return this.#summary;
  }

  // --- life ------------------------------------------------------------------------------------------------

  connectedCallback() {
    if (!this.#parts) this.#build();
    this.#listening = new AbortController();
    const { signal } = this.#listening;
    addEventListener("message", (event) => this.#heard(event), { signal });
    addEventListener("popstate", () => this.#wentBack(), { signal });
    addEventListener("resize", () => this.#arrange(), { signal });
    document.addEventListener("securitypolicyviolation", (event) => {
      if (event.effectiveDirective === "frame-src" && event.blockedURI.startsWith(TOOL.origin)) this.#late();
    }, { signal });
    document.addEventListener("keydown", (event) => {
      if (event.key === "Escape" && this.#full) this.closeFullScreen();
    }, { signal });
    PHONE.addEventListener("change", () => this.#arrange(), { signal });
    DARK.addEventListener("change", () => { this.#dress(); this.#configure(); }, { signal });
    this.#seen = new IntersectionObserver((entries) => {
      if (entries.some((entry) => entry.isIntersecting) && !PHONE.matches) this.#load();
    }, { rootMargin: "300px" });
    this.#seen.observe(this);
    this.#dress();
    this.#arrange();
  }

  disconnectedCallback() {
    this.#putBack();
    this.#listening.abort();
    this.#seen.disconnect();
    this.#frame?.remove();
    this.#frame = null;
    this.#ready = null;
    this.#drop(new TholeError("The configurator was taken off the page."));
  }

  attributeChangedCallback(name, before, now) {
    if (!this.#parts || before === now) return;
    this.#dress();
    this.#arrange();
    if (name === "job" && !this.#frame) this.#job = "";
    if (!this.#frame) return;
    const act = {
      catalogue: () => this.#catalogue().then((words) => words && this.setCatalogue(words)),
      job: () => now && this.setJob(now),
      page: () => now && this.focusPage(now),
      logo: () => {},
      "max-height": () => {},
    }[name] ?? (() => this.#configure());
    Promise.resolve(act()).catch((error) => this.#fail(name, error));
  }

  // --- methods ---------------------------------------------------------------------------------------------

  // The job document: what is known of the boat, as plain data.
  async getJob() {
    const reply = await this.#ask("get", {});
    return parse(text(reply, "job", MOST.job) ?? "") ?? {};
  }

  // A job document, its text, or a link.
  async setJob(job) {
    await this.#ask("set", { job: asText(job) });
  }

  async setCatalogue(catalogue) {
    await this.#ask("set-catalogue", { catalogue: asText(catalogue) });
  }

  async focusPage(key) {
    await this.#ask("focus", { page: String(key) });
  }

  // What became of a quote request; said in the wizard.
  async quoteResult({ ok = true, text: words = "" } = {}) {
    await this.#ask("quote-result", { ok: Boolean(ok), text: String(words) });
  }

  openFullScreen() {
    if (this.#full) return;
    this.#load();
    const { stage, close } = this.#parts;
    const covered = [...othersOf(this)];
    this.#full = { covered, back: this.shadowRoot.activeElement, scroll: [scrollX, scrollY],
                   overflow: document.documentElement.style.overflow };
    stage.classList.add("full");
    stage.setAttribute("role", "dialog");
    stage.setAttribute("aria-modal", "true");
    stage.setAttribute("aria-label", this.#title);
    if (stage.showPopover) {  // above everything, whatever the page does with z-index and transforms
      stage.popover = "manual";
      stage.showPopover();
    }
    for (const other of covered) other.inert = true;
    document.documentElement.style.overflow = "hidden";
    this.#arrange();
    close.focus({ preventScroll: true });
    // The browser's own Back closes it.
    this.#token = `thole-${Date.now()}-${Math.round(Math.random() * 1e9)}`;
    history.pushState({ ...history.state, thole: this.#token }, "");
  }

  closeFullScreen() {
    if (!this.#full) return;
    this.#putBack();
    if (history.state?.thole === this.#token) history.back();
  }

  // --- full screen and back --------------------------------------------------------------------------------

  #wentBack() {
    if (this.#full && history.state?.thole !== this.#token) this.#putBack();
  }

  #putBack() {
    if (!this.#full) return;
    const { covered, back, scroll, overflow } = this.#full;
    this.#full = null;
    const { stage, open } = this.#parts;
    if (stage.popover) {
      if (stage.matches(":popover-open")) stage.hidePopover();
      stage.popover = null;
    }
    stage.classList.remove("full");
    for (const name of ["role", "aria-modal", "aria-label"]) stage.removeAttribute(name);
    for (const other of covered) other.inert = false;
    document.documentElement.style.overflow = overflow;
    this.#arrange();
    scrollTo({ left: scroll[0], top: scroll[1], behavior: "instant" });
    (back?.isConnected ? back : open).focus({ preventScroll: true });
  }

  // --- what it looks like ----------------------------------------------------------------------------------

  get #title() {
    return this.getAttribute("label") || "Bow motor configurator";
  }

  #build() {
    const shadow = this.attachShadow({ mode: "open" });
    shadow.adoptedStyleSheets = [STYLE];
    const parts = {
      all: make("div", "all"),
      card: make("div", "card"),
      cardLogo: make("img", "logo"),
      cardTitle: make("p", "title", this.#title),
      lead: make("p", "", LEAD),
      rows: make("dl"),
      open: make("button"),
      elsewhere: make("a", "", "Open in a new tab"),
      stage: make("div", "stage"),
      bar: make("div", "bar"),
      barLogo: make("img", "logo"),
      barTitle: make("span", "title", this.#title),
      close: make("button", "", "Close"),
    };
    parts.cardLogo.alt = parts.barLogo.alt = "";
    parts.open.type = parts.close.type = "button";
    parts.rows.setAttribute("aria-live", "polite");
    Object.assign(parts.elsewhere, { href: TOOL.href, target: "_blank", rel: "noopener", hidden: true });
    parts.stage.hidden = true;
    parts.open.addEventListener("click", () => (PHONE.matches ? this.openFullScreen() : this.#load()));
    parts.close.addEventListener("click", () => this.closeFullScreen());
    parts.card.append(parts.cardLogo, parts.cardTitle, parts.lead, parts.rows, parts.open, parts.elsewhere);
    parts.bar.append(parts.barLogo, parts.barTitle, parts.close);
    parts.stage.append(parts.bar);
    parts.all.append(parts.card, parts.stage);
    shadow.append(parts.all);
    this.#parts = parts;
  }

  // Colours and logo.
  #dress() {
    const { all, cardLogo, barLogo, bar } = this.#parts;
    const own = this.#night ? NIGHT : DAY;
    const asked = this.#colours();
    if (asked.paper && isDark(asked.paper) !== this.#night) asked.paper = "";
    const colours = Object.fromEntries(Object.keys(own).map((name) => [name, asked[name] || own[name]]));
    all.style.setProperty("--paper", colours.paper);
    all.style.setProperty("--ink", readable(colours.ink, colours.paper));
    all.style.setProperty("--accent", colours.accent);
    all.style.setProperty("--on-accent", readable(colours.paper, colours.accent));
    const logo = this.#logo();
    for (const image of [cardLogo, barLogo]) {
      image.hidden = !logo;
      if (logo && image.src !== logo) image.src = logo;
    }
    bar.classList.toggle("bare", !logo);
  }

  // Where nobody says day or night, the page's own paper does; else the system.
  get #theme() {
    const theme = this.getAttribute("theme");
    if (theme === "light" || theme === "dark") return theme;
    const { paper } = this.#colours();
    if (!paper) return "auto";
    return isDark(paper) ? "dark" : "light";
  }
  get #night() {
    return this.#theme === "dark" || (this.#theme === "auto" && DARK.matches);
  }

  #logo() {
    const address = this.getAttribute("logo");
    if (!address) return "";
    try {
      const url = new URL(address, document.baseURI);
      return url.protocol === "https:" || url.origin === location.origin ? url.href : "";
    } catch {
      return "";
    }
  }

  // The page's own style rules decide; what is no colour is as if it were not there.
  #colours() {
    const style = getComputedStyle(this);
    const read = (name) => hex(style.getPropertyValue(`--thole-${name}`).trim());
    return { accent: read("accent"), paper: read("paper"), ink: read("ink") };
  }

  // A height for the frame, and for the card before it: the same, so that nothing jumps.
  #arrange() {
    const { card, stage, open } = this.#parts;
    const phone = PHONE.matches;
    if (!phone && this.#full) {
      this.closeFullScreen();
      return;
    }
    const wish = Number(this.getAttribute("max-height"));
    const limit = Math.min(SHARE_OF_SCREEN * innerHeight, wish > 0 ? wish : MOST_HEIGHT);
    const most = Math.max(LEAST_HEIGHT, limit);
    const content = this.#content + EDGES + (this.#logo() ? BAR : 0);
    const height = `${Math.round(Math.min(Math.max(content, LEAST_HEIGHT), most))}px`;
    const shown = this.#full || (!phone && this.#frame);
    card.hidden = Boolean(!phone && shown);
    card.style.minHeight = phone ? "" : height;
    open.textContent = phone ? "Open full screen" : "Open here";
    stage.hidden = !shown;
    stage.style.height = this.#full ? "" : height;
  }

  // On a phone the card says how the job stands while the wizard is closed.
  #showSummary() {
    const { lead, rows } = this.#parts;
    const { verdict, governing, outputs } = this.#summary;
    lead.textContent = verdict.charAt(0).toUpperCase() + verdict.slice(1)
      + (governing.label ? `. ${governing.label} ${governing.text}` : "");
    rows.replaceChildren(...outputs.slice(0, 5).flatMap(
      (output) => [make("dt", "", output.label), make("dd", "", output.text)]));
  }

  // --- the frame -------------------------------------------------------------------------------------------

  #load() {
    if (this.#frame || !this.isConnected) return this.#ready;
    const frame = make("iframe");
    const address = new URL(TOOL);
    address.search = `?embed&host=${encodeURIComponent(location.origin)}`;
    frame.title = this.#title;
    // With the origin of its own it can neither reach this page nor be reached by it.
    frame.setAttribute("sandbox", "allow-scripts allow-same-origin allow-downloads allow-popups "
      + "allow-popups-to-escape-sandbox allow-modals");
    frame.allow = "clipboard-write; web-share; fullscreen";
    frame.referrerPolicy = "strict-origin-when-cross-origin";
    frame.src = address.href;
    this.#frame = frame;
    this.#ready = new Promise((resolve, reject) => {
      const timer = setTimeout(() => this.#late(), READY_MS);
      this.#asked.set("ready", { resolve, reject, timer });
    });
    this.#ready.catch(() => {});  // said by an event
    this.#parts.stage.append(frame);
    this.#arrange();
    return this.#ready;
  }

  // The page's policy forbids the frame, or there is no network, of which no event speaks.
  #late() {
    clearTimeout(this.#asked.get("ready")?.timer);
    const error = new TholeError("The configurator did not start. It can be opened in a tab of its own.");
    this.#parts.elsewhere.hidden = false;
    this.#asked.get("ready")?.reject(error);
    this.#fail("load", error);
  }

  #settings() {
    const settings = {
      theme: this.#theme,
      contactLabel: this.getAttribute("contact-label") ?? "",
      pages: (this.getAttribute("pages") ?? "").split(/[\s,]+/).filter(Boolean),
      ...this.#colours(),
    };
    for (const name of ["units", "lang", "page"]) {
      if (this.hasAttribute(name)) settings[name] = this.getAttribute(name);
    }
    return settings;
  }

  #configure() {
    if (!this.#frame) return;
    const { page, ...settings } = this.#settings();  // where somebody is, he stays
    this.#ask("configure", settings).catch(() => {});
  }

  // Fetched here, by the page's own rules; "" when none is asked for.
  async #catalogue() {
    const address = this.getAttribute("catalogue");
    if (!address) return "";
    let words;
    try {
      const signal = AbortSignal.timeout(CATALOGUE_MS);
      const response = await fetch(new URL(address, document.baseURI), { signal });
      if (!response.ok) throw new Error(`status ${response.status}`);
      words = await response.text();
    } catch (error) {
      throw new TholeError(`The catalogue ${address} could not be fetched (${error.message}).`);
    }
    if (words.length > MOST.catalogue) throw new TholeError(`The catalogue ${address} is larger than 1 MB.`);
    return words;
  }

  // The wizard said that it is there.
  async #introduce() {
    const first = this.#settings();
    try {
      const catalogue = await this.#catalogue();
      if (catalogue) first.catalogue = catalogue;
    } catch (error) {
      this.#fail("catalogue", error);
    }
    const job = this.#job || this.getAttribute("job");
    if (job) first.job = job;
    if (!this.#frame) return;
    const issues = readIssues(await this.#post("init", first));
    if (issues.length > 0) this.#fail("init", new TholeError(sentence(issues), issues));
    const waiting = this.#asked.get("ready");
    this.#asked.delete("ready");
    clearTimeout(waiting?.timer);
    waiting?.resolve();
    this.#ready = Promise.resolve();  // also when it came late
    this.#parts.elsewhere.hidden = true;
    this.#say("ready", { protocol: PROTOCOL });
  }

  // --- messages --------------------------------------------------------------------------------------------

  // Once the wizard is there; refused with what it said.
  async #ask(type, payload) {
    if (!this.isConnected) throw new TholeError("The configurator is not on the page.");
    await this.#load();
    const reply = await this.#post(type, payload);
    if (reply.ok !== true) {
      const issues = readIssues(reply);
      throw new TholeError(sentence(issues) || "The configurator refused it.", issues);
    }
    return reply;
  }

  #post(type, payload) {
    this.#count += 1;
    const id = this.#count;
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        this.#asked.delete(id);
        reject(new TholeError(`The configurator gave no answer to "${type}".`));
      }, ANSWER_MS);
      this.#asked.set(id, { resolve, reject, timer });
      this.#frame.contentWindow.postMessage(envelope(type, payload, id), TOOL.origin);
    });
  }

  #heard(event) {
    if (!this.#frame || event.source !== this.#frame.contentWindow || event.origin !== TOOL.origin) return;
    const message = readEnvelope(event.data);
    if (!message) return;
    const { id, type, payload } = message;
    const act = new Map([
      ["ready", () => this.#introduce().catch((error) => this.#fail("load", error))],
      ["reply", () => this.#answered(id, payload)],
      ["resize", () => this.#resized(payload)],
      ["change", () => this.#changed(payload)],
      ["quote", () => this.#quoted(payload)],
      ["error", () => this.#fail(text(payload, "code", MOST.word) ?? "error",
                                 new TholeError(text(payload, "text") ?? ""))],
    ]).get(type);
    act?.();
  }

  #answered(id, payload) {
    const waiting = this.#asked.get(id);
    if (!waiting) return;
    this.#asked.delete(id);
    clearTimeout(waiting.timer);
    waiting.resolve(payload);
  }

  #resized(payload) {
    const height = number(payload, "height", 1, MOST_HEIGHT);
    if (height === undefined) return;
    this.#content = height;
    this.#arrange();
  }

  // { job, link, summary } as plain data.
  #state(payload) {
    const job = text(payload, "job", MOST.job) ?? "";
    const link = text(payload, "link", MOST.link) ?? "";
    return { words: job, job: parse(job) ?? {}, link: link ? `${TOOL.href}#${link}` : "",
             summary: readSummary(part(payload, "summary") ?? {}) };
  }

  #changed(payload) {
    const { words, ...detail } = this.#state(payload);
    this.#job = words;
    this.#summary = detail.summary;
    this.#showSummary();
    this.#say("design-change", detail);
  }

  #quoted(payload) {
    const { words, ...state } = this.#state(payload);
    const stay = !this.#say("quote-request", { ...state, ...readQuote(payload) }, true);
    if (!stay) this.closeFullScreen();  // the page's form is under it
  }

  #say(name, detail, cancelable = false) {
    return this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true, cancelable }));
  }

  // Does not bubble, as the errors of images and scripts do not: a page's own error log is not for this.
  #fail(code, error) {
    this.dispatchEvent(new CustomEvent("error", { composed: true,
      detail: { code, text: error.message, issues: error.issues ?? [] } }));
  }

  #drop(error) {
    for (const { reject, timer } of this.#asked.values()) {
      clearTimeout(timer);
      reject(error);
    }
    this.#asked.clear();
  }
}

if (!customElements.get("thole-configurator")) customElements.define("thole-configurator", TholeConfigurator);
