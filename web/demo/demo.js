// What a shop does with the wizard: takes the design of a quote request into its own form. A real shop
// would send the form to its own server; this one keeps it on the page.

const byId = (id) => document.getElementById(id);
const configurator = byId("configurator");
let wanted = null;  // what the last quote request said

const money = (amount, currency) =>
  new Intl.NumberFormat("en", { style: "currency", currency, maximumFractionDigits: 0 }).format(amount);

const sentence = (words) => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

function pair(term, value) {
  const dt = document.createElement("dt");
  const dd = document.createElement("dd");
  dt.textContent = term;
  dd.textContent = value;
  return [dt, dd];
}

configurator.addEventListener("quote-request", ({ detail }) => {
  wanted = detail;
  const { verdict, governing, outputs, price, currency } = detail.summary;
  byId("verdict").textContent = [verdict, `${governing.label} ${governing.text}`].map(sentence).join(" ");
  byId("figures").replaceChildren(
    ...outputs.flatMap(({ label, text }) => pair(label, text)),
    ...pair("Parts", `${detail.parts.length} lines`),
    ...(price === null ? [] : pair("Price, without tax", money(price, currency))));
  byId("link").href = detail.link;
  byId("design").hidden = false;
  byId("no-design").hidden = true;
  byId("name").focus();
  configurator.quoteResult({ ok: true, text: "The design is in the enquiry form below." }).catch(() => {});
});

byId("enquiry").addEventListener("submit", (event) => {
  event.preventDefault();
  const form = new FormData(event.target);
  const item = document.createElement("li");
  const words = [form.get("name"), form.get("reach"), form.get("words")].filter(Boolean).join(", ");
  item.textContent = wanted
    ? `${words}: ${wanted.summary.verdict}, ${wanted.parts.length} lines of parts. `
    : `${words}: no design. `;
  if (wanted) {
    const link = document.createElement("a");
    link.href = wanted.link;
    link.textContent = "Open the design";
    item.append(link);
  }
  byId("kept").append(item);
  byId("status").textContent = "Kept below, on this page alone.";
  event.target.reset();
});

configurator.addEventListener("error", ({ detail }) => {
  byId("status").textContent = detail.text;
});
