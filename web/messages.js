// What a shop's page and the wizard in its frame say to each other (docs/embedding.md has the table).
// Both sides read what arrives through this file: a message is hostile until then. Nothing is passed on
// but what was looked for, copied piece by piece; numbers are finite and in range, texts of bounded length.

export const APP = "thole";
export const PROTOCOL = 1;
// Characters; the readers of the engine have the same limits in bytes.
export const MOST = { job: 100_000, link: 20_000, catalogue: 1_000_000, text: 2000, word: 120, items: 400 };

export const envelope = (type, payload, id) => ({ app: APP, protocol: PROTOCOL, id, type, payload });

const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const own = (object, key) => (Object.hasOwn(object, key) ? object[key] : undefined);

// The message in what arrived, or null when it is none of ours.
export function readEnvelope(data) {
  if (!isObject(data) || own(data, "app") !== APP || own(data, "protocol") !== PROTOCOL) return null;
  const id = own(data, "id");
  const type = own(data, "type");
  const payload = own(data, "payload");
  if (!Number.isSafeInteger(id) || id < 0 || !isObject(payload)) return null;
  if (typeof type !== "string" || !/^[a-z][a-z-]{0,39}$/.test(type)) return null;
  return { id, type, payload };
}

// --- pieces: the value under a key, or undefined when it is not what it should be ------------------------

export function text(object, key, most = MOST.text) {
  const value = own(object, key);
  return typeof value === "string" && value.length <= most ? value : undefined;
}

export function number(object, key, min, max) {
  const value = own(object, key);
  return typeof value === "number" && Number.isFinite(value) && value >= 0
    ? Math.min(Math.max(value, min), max) : undefined;
}

export function choice(object, key, ...allowed) {
  const value = own(object, key);
  return allowed.includes(value) ? value : undefined;
}

// Items that cannot be read are left out.
export function list(object, key, read) {
  const value = own(object, key);
  if (!Array.isArray(value)) return undefined;
  return value.slice(0, MOST.items).map(read).filter((item) => item !== undefined);
}

export function part(object, key) {
  const value = own(object, key);
  return isObject(value) ? value : undefined;
}

const word = (value) => (typeof value === "string" && value.length <= MOST.word ? value : undefined);
const line = (value) => (typeof value === "string" && value.length <= MOST.text ? value : undefined);
const record = (read) => (value) => (isObject(value) ? read(value) : undefined);
const finite = (object, key) => {
  const value = own(object, key);
  return typeof value === "number" && Number.isFinite(value) ? value : null;
};

// Text to data, without a key that could reach an object's prototype.
export function parse(json) {
  try {
    return JSON.parse(json, (key, value) => (key === "__proto__" ? undefined : value));
  } catch {
    return undefined;
  }
}

// --- whole payloads ---------------------------------------------------------------------------------------

// How the wizard shall look and what it shall show; what is absent stays as it is.
export function readSettings(payload) {
  const colour = (key) => {
    const value = text(payload, key, 7);
    return value !== undefined && (value === "" || /^#[0-9a-f]{6}$/i.test(value)) ? value : undefined;
  };
  const settings = {
    units: choice(payload, "units", "metric", "us"),
    theme: choice(payload, "theme", "auto", "light", "dark"),
    lang: text(payload, "lang", 35),
    page: text(payload, "page", MOST.word),
    pages: list(payload, "pages", word),
    accent: colour("accent"),
    paper: colour("paper"),
    ink: colour("ink"),
    contactLabel: text(payload, "contactLabel", 60),
  };
  return Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== undefined));
}

export const readIssues = (payload) => list(payload, "issues", record((issue) => ({
  severity: choice(issue, "severity", "note", "warning", "error") ?? "error",
  field: text(issue, "field") ?? "",
  message: text(issue, "message") ?? "",
}))) ?? [];

// A document that could not be read as a whole leaves what was there; a field that could not is left out.
export const refused = (issues) => issues.some((issue) => issue.severity === "error" && issue.field === "");

export const readSummary = record((summary) => {
  const governing = part(summary, "governing") ?? {};
  return {
    verdict: text(summary, "verdict", MOST.word) ?? "not evaluated",
    governing: { id: text(governing, "id") ?? "", label: text(governing, "label") ?? "",
                 text: text(governing, "text") ?? "" },
    outputs: list(summary, "outputs", record((output) => ({
      path: text(output, "path") ?? "",
      label: text(output, "label") ?? "",
      value: text(output, "value") ?? finite(output, "value"),
      unit: text(output, "unit") ?? "",
      text: text(output, "text") ?? "",
    }))) ?? [],
    price: finite(summary, "price"),
    currency: text(summary, "currency", MOST.word) ?? "",
    edition: finite(summary, "edition") ?? 0,
  };
});

export const readQuote = (payload) => ({
  parts: list(payload, "parts", record((row) => ({
    id: text(row, "id") ?? "",
    label: text(row, "label") ?? "",
    detail: text(row, "detail") ?? "",
    quantity: finite(row, "quantity"),
    unit: text(row, "unit") ?? "",
    price: finite(row, "price"),
    lead_days: finite(row, "lead_days"),
  }))) ?? [],
  tasks: list(payload, "tasks", record((row) => ({
    id: text(row, "id") ?? "",
    label: text(row, "label") ?? "",
    labour_h: finite(row, "labour_h"),
  }))) ?? [],
  cautions: list(payload, "cautions", line) ?? [],
});
