// The wizard's end of the talk with the page around it; loaded only in a frame that was asked for with
// "?embed". It answers to one page: its parent, at the origin that sent the first "init" (and, where the
// address names hosts, "?embed&host=https://shop.example", at one of those alone). Nothing is kept here:
// no storage, no cookie; the job comes by message and goes by message.
//
// `program` is the wizard as the shell offers it:
//   open(text) -> issues            a job file or a link; refused as a whole: the present job stays
//   setCatalogue(text) -> issues    a shop's own parts and prices
//   text(kind) -> string            "job", "link", and as JSON "summary", "quote"
//   act(id, verb, text)             as an element of the sheet would: ("app", "page", key)
//   configure(settings)             units, theme, page, pages, accent, paper, ink, contactLabel
//   contentHeight() -> CSS px
//   onChange(callback), onQuote(callback)    the design changed; somebody asked for a quote
//   say(text)                       the status line

import { envelope, MOST, parse, PROTOCOL, readEnvelope, readSettings, refused, text } from "./messages.js";

const CHANGE_MS = 500;
const FEATURES = ["set", "get", "set-catalogue", "configure", "focus", "quote"];

export function connectHost(program) {
  const allowed = new URLSearchParams(location.search).getAll("host");
  let host = null;   // the origin that is answered; null until the first init
  let posted = 0;    // messages of our own, each with its number
  let height = 0;    // as last told

  const mayHost = (origin) => origin !== "null" && (allowed.length === 0 || allowed.includes(origin));
  const tell = (type, payload = {}) => {
    posted += 1;
    if (host) parent.postMessage(envelope(type, payload, posted), host);
  };

  // --- what is told ---------------------------------------------------------------------------------------

  const summary = () => parse(program.text("summary")) ?? {};
  const state = () => ({ job: program.text("job"), link: program.text("link"), summary: summary() });

  function tellHeight() {
    const now = Math.ceil(program.contentHeight());
    if (now === height || !(now > 0)) return;
    height = now;
    tell("resize", { height });
  }

  let changeTimer = 0;
  let told = "";     // what the last change said: the same is not said twice
  function tellChange() {
    clearTimeout(changeTimer);
    changeTimer = 0;
    tellHeight();
    const now = program.text("link") + program.text("summary");
    if (now === told) return;
    told = now;
    tell("change", state());
  }
  function changed() {
    clearTimeout(changeTimer);
    changeTimer = setTimeout(tellChange, CHANGE_MS);
  }

  // --- what is asked ---------------------------------------------------------------------------------------

  const no = (message) => [{ severity: "error", field: "", message }];

  function open(payload) {
    const job = text(payload, "job", MOST.job);
    return job === undefined ? no("A job comes as the text of a job file, or as a link.") : program.open(job);
  }

  function setCatalogue(payload) {
    const catalogue = text(payload, "catalogue", MOST.catalogue);
    return catalogue === undefined ? no("A catalogue comes as the text of its file.")
      : program.setCatalogue(catalogue);
  }

  let lang = "en";
  function settle(payload) {
    const settings = readSettings(payload);
    program.configure(settings);
    if ((settings.lang ?? lang) === lang) return;
    lang = settings.lang;
    if (/^en\b/i.test(lang)) return;
    tell("error", { code: "language", text: `There is no "${lang}" yet; the wizard speaks English.` });
  }

  const answer = (issues) => ({ ok: !refused(issues), issues });

  // Each gives what is replied.
  const requests = new Map([
    ["init", (payload) => {
      // The catalogue first: what a job names is looked up in it.
      const issues = "catalogue" in payload ? setCatalogue(payload) : [];
      if ("job" in payload) issues.push(...open(payload));
      settle(payload);
      tellHeight();
      return answer(issues);
    }],
    ["configure", (payload) => { settle(payload); return { ok: true }; }],
    ["set", (payload) => answer(open(payload))],
    ["set-catalogue", (payload) => answer(setCatalogue(payload))],
    ["get", () => ({ ok: true, ...state() })],
    ["focus", (payload) => {
      const key = text(payload, "page", MOST.word);
      if (key) program.act("app", "page", key);
      return { ok: Boolean(key) };
    }],
    ["quote-result", (payload) => {
      const words = text(payload, "text");
      if (words) program.say(words);
      return { ok: true };
    }],
  ]);

  addEventListener("message", (event) => {
    if (event.source !== parent) return;
    const message = readEnvelope(event.data);
    if (!message) return;
    if (host === null && message.type === "init" && mayHost(event.origin)) host = event.origin;
    if (event.origin !== host) return;
    const request = requests.get(message.type);
    if (!request) return;
    const reply = request(message.payload);
    parent.postMessage(envelope("reply", reply, message.id), host);
    tellChange();
    changed();  // and once more when a frame has carried out what waits for one: units, say
  });

  program.onChange(changed);
  program.onQuote(() => tell("quote", { ...state(), ...parse(program.text("quote")) }));
  new ResizeObserver(tellHeight).observe(document.documentElement);
  // The first word, before it is known who listens: that there is a wizard here, and nothing else.
  for (const target of allowed.length > 0 ? allowed : ["*"]) {
    try {
      parent.postMessage(envelope("ready", { protocol: PROTOCOL, features: FEATURES }, 0), target);
    } catch {
      // not an origin: nobody there to be told
    }
  }
}
