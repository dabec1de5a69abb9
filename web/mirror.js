// The semantic tree as real elements: inputs that bring up the keyboard, buttons, headings, landmarks,
// a live region. Elements are kept by id and only what changed is written, so that focus, caret and what
// is half typed stay where they are.
//
// Over the canvas each element lies, unseen, exactly where its picture is painted. Without a canvas the
// same elements are a plain form: they flow, and carry their labels, help and errors as text.

const TAGS = {
  text: "p", button: "button", textbox: "input", slider: "input", checkbox: "input",
  select: "select", progress: "progress", radio: "button", img: "div", status: "div", alert: "div", group: "div",
  banner: "header", navigation: "nav", main: "main", list: "ul", listitem: "li",
};
// The last two have their roles by their tags; a style without bullets takes them away in one browser.
const ROLES = {
  img: "img", status: "status", alert: "alert", group: "group", radio: "radio", list: "list",
  listitem: "listitem",
};
const INPUT_TYPES = { textbox: "text", slider: "range", checkbox: "checkbox" };
const CONTAINERS = new Set(["group", "banner", "navigation", "main", "list", "listitem"]);
const WORDS = new Set(["heading", "text", "status", "alert", "img"]);
const FIELDS = new Set(["textbox", "slider", "checkbox", "select", "progress"]);
const HOLD_MS = 400;     // until a held button begins to repeat
const REPEAT_MS = 80;
const ANNOUNCE_MS = 700; // a live region speaks once the values rest

const isHandle = (node) => node.role === "slider" && node.action === "drag";

function tagOf(node) {
  if (isHandle(node)) return "div";
  return node.role === "heading" ? `h${Math.min(Math.max(node.level || 2, 1), 6)}` : TAGS[node.role];
}

function setAttribute(element, name, value) {
  if (value === undefined || value === null || value === false || value === "") {
    if (element.hasAttribute(name)) element.removeAttribute(name);
  } else if (element.getAttribute(name) !== String(value)) {
    element.setAttribute(name, String(value));
  }
}

function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

const spoken = (node) => [node.name, node.value].filter(Boolean).join(" ");

export class Mirror {
  // act(id, verb, text) reaches the program; actions[name](node) is done here, inside the gesture;
  // drawn(id) gives a picture as SVG text, for the plain form; typing(on) tells that a field has the focus.
  constructor(root, { act, actions, drawn, typing }) {
    Object.assign(this, { root, act, actions, drawn, typingChanged: typing });
    this.entries = new Map();  // id -> {element, outer, node, text}
    this.nodes = [];
    this.plain = false;
    this.repeating = 0;
    this.dragging = null;
    this.clear = {};
    this.listen();
  }

  // --- tree to elements ------------------------------------------------------------------------------

  update(nodes) {
    this.nodes = nodes;
    const focused = document.activeElement;
    const kept = new Set();
    const list = this.named(nodes).map((node) => {
      const entry = this.entryFor(node);
      kept.add(entry);
      return entry;
    });
    for (const [id, entry] of this.entries) {
      if (kept.has(entry)) continue;
      clearTimeout(entry.announcing);
      entry.outer.remove();
      this.entries.delete(id);
    }
    const last = new Map();  // parent element -> its child that was placed last
    list.forEach((entry, index) => {
      const parent = nodes[index].parent < 0 ? this.root : list[nodes[index].parent].element;
      // Asked only now: what came next may have moved to another parent since.
      const at = last.has(parent) ? last.get(parent).nextSibling : parent.firstChild;
      if (entry.outer !== at) parent.insertBefore(entry.outer, at);
      last.set(parent, entry.outer);
    });
    this.rove(list);
    // Moving an element takes its focus.
    if (focused !== document.activeElement && focused.isConnected) {
      focused.focus({ preventScroll: true });
    }
    this.keepClear(nodes);
  }

  setPlain(plain) {
    if (plain === this.plain) return;
    this.plain = plain;
    document.documentElement.toggleAttribute("data-plain", plain);
    const focused = this.entryOf(document.activeElement)?.node.id;
    this.root.replaceChildren();
    this.entries.clear();
    this.update(this.nodes);
    if (focused) this.entries.get(focused)?.element.focus();
  }

  // Every node under a name of its own; those without one are named after their place.
  named(nodes) {
    const counts = new Map();
    return nodes.map((node) => {
      if (node.id) return node;
      const base = `${node.parent}/${node.role}`;
      const count = counts.get(base) ?? 0;
      counts.set(base, count + 1);
      return { ...node, id: `${base}/${count}` };
    });
  }

  entryFor(node) {
    const kind = tagOf(node) + node.role;
    let entry = this.entries.get(node.id);
    if (entry && entry.kind !== kind) {
      entry.outer.remove();
      entry = undefined;
    }
    if (!entry) {
      entry = this.create(node, kind);
      this.entries.set(node.id, entry);
    }
    const text = JSON.stringify(node);
    if (text !== entry.text) {
      this.write(entry, node);
      entry.text = text;
      entry.node = node;
    }
    return entry;
  }

  create(node, kind) {
    const element = document.createElement(tagOf(node));
    const entry = { element, outer: element, kind, node, text: "" };
    if (node.role === "button" && node.level) {  // a disclosure: its label is a heading as well
      entry.outer = document.createElement(`h${node.level}`);
      entry.outer.className = "wrapper";
      entry.outer.append(element);
    }
    element.dataset.id = node.id;
    element.id = `at-${node.id}`;
    if (node.action) element.dataset.action = node.action;
    if (node.role === "button") element.type = "button";
    if (ROLES[node.role]) element.setAttribute("role", ROLES[node.role]);
    if (isHandle(node)) {
      element.setAttribute("role", "slider");
      element.tabIndex = 0;
      element.classList.add("handle");
    } else if (INPUT_TYPES[node.role]) {
      element.type = INPUT_TYPES[node.role];
    }
    if (node.role === "textbox") {
      element.classList.add("typed");
      Object.entries({ autocomplete: "off", autocorrect: "off", autocapitalize: "off", spellcheck: "false" })
        .forEach(([name, value]) => element.setAttribute(name, value));
    }
    if (WORDS.has(node.role)) element.classList.add("words");
    if (node.role === "heading") element.tabIndex = -1;
    if (this.plain && FIELDS.has(node.role)) this.surround(entry);
    return entry;
  }

  // The plain form's field: label, control, help, each an element of its own.
  surround(entry) {
    const label = document.createElement("label");
    label.htmlFor = entry.element.id;
    entry.label = label;
    entry.help = document.createElement("small");
    entry.outer = document.createElement("div");
    entry.outer.className = "field";
    entry.outer.append(label, entry.element, entry.help);
  }

  write(entry, node) {
    const { element } = entry;
    this.place(element, node);
    const current = node.role === "button" ? "page" : "true";
    setAttribute(element, "aria-current", node.current ? current : "");
    setAttribute(element, "aria-expanded", node.expandable ? String(Boolean(node.expanded)) : "");
    if ("disabled" in element) element.disabled = Boolean(node.disabled);
    if (WORDS.has(node.role)) {
      if (node.role === "img") this.writePicture(entry, node);
      else this.writeWords(entry, node);
      return;
    }
    setAttribute(element, "aria-description", this.description(node));
    if (node.role === "button" || node.role === "radio") {
      setText(element, spoken(node));
      if (node.role === "radio") element.setAttribute("aria-checked", String(Boolean(node.checked)));
      return;
    }
    setAttribute(element, "aria-label", node.name);
    if (entry.label) {
      setText(entry.label, node.name);
      setText(entry.help, [node.description, node.role === "slider" ? node.unit : ""].filter(Boolean).join(" "));
    }
    if (node.role === "textbox") this.writeTextbox(entry, node);
    if (node.role === "progress") Object.assign(element, { max: 100, value: node.value });
    if (node.role === "checkbox") element.checked = Boolean(node.checked);
    if (node.role === "slider") this.writeSlider(entry, node);
    if (node.role === "select") this.writeSelect(entry, node);
  }

  // A live region that changes with each step of a slider would never finish a sentence.
  writeWords(entry, node) {
    const { element } = entry;
    const text = spoken(node);
    clearTimeout(entry.announcing);
    if (node.role !== "status" || !element.textContent) setText(element, text);
    else entry.announcing = setTimeout(() => setText(element, text), ANNOUNCE_MS);
  }

  writePicture(entry, node) {
    const { element } = entry;
    setAttribute(element, "aria-label", spoken(node));
    if (!this.plain) return;
    // Parsed apart from the page, where nothing in it could run.
    const drawing = new DOMParser().parseFromString(this.drawn(node.id), "text/html").querySelector("svg");
    if (!drawing) return;
    drawing.setAttribute("aria-hidden", "true");
    element.replaceChildren(document.importNode(drawing, true));
  }

  description(node) {
    const unit = node.role === "textbox" && node.unit ? `In ${node.unit}.` : "";
    return [unit, node.description].filter(Boolean).join(" ");
  }

  place(element, node) {
    // A container stands aside: what it holds is placed by itself. Pinned, it also shields what
    // scrolls beneath it from taps.
    const placed = !CONTAINERS.has(node.role) || Boolean(node.pinned && node.h > 0);
    element.classList.toggle("placed", placed && !CONTAINERS.has(node.role));
    element.classList.toggle("pinned", Boolean(node.pinned) && placed);
    if (!placed || this.plain) return;
    const { style } = element;
    style.left = `${node.x}px`;
    style.top = `${node.y}px`;
    style.width = `${node.w}px`;
    style.height = `${node.h}px`;
    if (node.size) style.fontSize = `${node.size}px`;
  }

  writeTextbox(entry, node) {
    const { element } = entry;
    setAttribute(element, "inputmode", node.inputmode);
    setAttribute(element, "aria-invalid", node.error ? "true" : "");
    setAttribute(element, "aria-describedby", node.error ? `at-${node.id}.error` : "");
    const focused = document.activeElement === element;
    const dirty = focused && element.value !== entry.shown;
    if (!dirty && element.value !== (node.value ?? "")) {
      element.value = node.value ?? "";
      if (focused) element.select();  // as it was: typing replaces it
    }
    entry.shown = node.value ?? "";
  }

  writeSlider(entry, node) {
    const { element } = entry;
    if (isHandle(node)) {
      for (const [name, value] of [["min", node.min], ["max", node.max], ["now", node.value]]) {
        setAttribute(element, `aria-value${name}`, value);
      }
    } else {
      Object.assign(element, { min: node.min, max: node.max, step: node.step });
      if (element.value !== node.value) element.value = node.value;
    }
    setAttribute(element, "aria-valuetext", node.unit || node.value);
  }

  writeSelect(entry, node) {
    const { element } = entry;
    const options = node.options ?? [];
    const key = JSON.stringify(options);
    if (entry.options !== key) {
      entry.options = key;
      element.replaceChildren(...options.map((option) => new Option(option.label, option.key ?? "")));
    }
    element.value = node.value ?? "";
  }

  // Of the radios in a group one takes the focus, and the arrows lead to the others.
  rove(list) {
    const groups = new Map();
    for (const entry of list) {
      if (entry.node.role !== "radio") continue;
      const group = entry.element.parentElement;
      group.setAttribute("role", "radiogroup");
      if (!groups.has(group)) groups.set(group, []);
      groups.get(group).push(entry);
    }
    for (const radios of groups.values()) {
      const taken = radios.find((entry) => entry.node.checked) ?? radios[0];
      for (const entry of radios) entry.element.tabIndex = entry === taken ? 0 : -1;
    }
  }

  // The browser scrolls a focused element into view: not under the strips that stay.
  keepClear(nodes) {
    const tallest = (place) => Math.max(0, ...nodes.filter((node) => node.pinned === place).map((node) => node.h));
    for (const [side, height] of [["Top", tallest("top")], ["Bottom", tallest("bottom")]]) {
      const padding = `${Math.ceil(height) + 16}px`;
      if (padding === this.clear[side]) continue;
      this.clear[side] = padding;
      document.documentElement.style[`scrollPadding${side}`] = padding;
    }
  }

  focusHeading() {
    this.root.querySelector("h1")?.focus({ preventScroll: true });
  }

  // Something is typed that is not yet handed over.
  typing() {
    const entry = this.entryOf(document.activeElement);
    return entry?.node.role === "textbox" && entry.element.value !== entry.shown;
  }

  commitTyped() {
    const entry = this.entryOf(document.activeElement);
    if (entry?.node.role === "textbox") this.commit(entry);
  }

  // --- elements to program ---------------------------------------------------------------------------

  entryOf(target) {
    const element = target?.closest?.("[data-id]");
    return element ? this.entries.get(element.dataset.id) : undefined;
  }

  listen() {
    const on = (type, handler) => {
      this.root.addEventListener(type, (event) => {
        const entry = this.entryOf(event.target);
        if (entry) handler(entry, event);
      });
    };
    on("click", (entry, event) => this.clicked(entry, event));
    on("input", (entry) => {
      if (entry.node.role === "slider") this.act(entry.node.id, "set", entry.element.value);
    });
    on("change", (entry) => {
      if (entry.node.role === "textbox") this.commit(entry);
      if (entry.node.role === "select") this.act(entry.node.id, "set", entry.element.value);
    });
    on("focusin", (entry) => {
      if (entry.node.role !== "textbox") return;
      entry.element.enterKeyHint = this.fieldAfter(entry.element) ? "next" : "done";
      entry.element.select();
      this.typingChanged(true);
    });
    on("focusout", (entry) => {
      if (entry.node.role !== "textbox") return;
      this.commit(entry);
      this.typingChanged(false);
    });
    on("keydown", (entry, event) => this.keyed(entry, event));
    on("pointerover", (entry, event) => this.hover(entry, event, "1"));
    on("pointerout", (entry, event) => this.hover(entry, event, "0"));
    on("pointerdown", (entry, event) => this.pressed(entry, event));
    on("pointermove", (entry, event) => this.dragged(event));
    for (const type of ["pointerup", "pointercancel", "blur"]) addEventListener(type, () => this.released());
    this.root.addEventListener("contextmenu", (event) => {
      if (this.held || this.dragging) event.preventDefault();  // a long press repeats, it asks for no menu
    });
  }

  clicked(entry, event) {
    const { node } = entry;
    if (this.swallow) {  // the end of a held press, which has acted already
      this.swallow = false;
      return;
    }
    if (node.role === "checkbox") {
      event.preventDefault();  // the program decides; the next frame shows it
      this.act(node.id, "click");
    } else if (node.role === "button" || node.role === "radio") {
      const own = this.actions[node.action];
      if (own) own(node);
      this.act(node.id, "click");
    }
  }

  commit(entry) {
    const { element, node } = entry;
    if (element.value === entry.shown) return;
    entry.shown = element.value;  // the answer of the program replaces it
    this.act(node.id, "set", element.value);
  }

  fieldAfter(element) {
    const fields = [...this.root.querySelectorAll("input.typed:enabled")];
    return fields[fields.indexOf(element) + 1];
  }

  keyed(entry, event) {
    const { element, node } = entry;
    if (node.role === "textbox" && event.key === "Enter") {
      this.commit(entry);
      // "Next" on a soft keyboard goes on; at the end it is put away.
      const next = this.fieldAfter(element);
      if (!matchMedia("(pointer: coarse)").matches) element.select();
      else if (next) next.focus();
      else element.blur();
    } else if (node.role === "textbox" && event.key === "Escape") {
      element.value = entry.shown ?? "";
      element.select();
      event.stopPropagation();
    } else if (node.expanded && event.key === "Escape") {
      this.act(node.id, "click");
      event.stopPropagation();
    } else if (node.role === "radio" && /^Arrow/.test(event.key)) {
      event.preventDefault();
      const radios = [...element.parentElement.querySelectorAll("[role=radio]")];
      const step = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : radios.length - 1;
      const other = radios[(radios.indexOf(element) + step) % radios.length];
      other.focus();
      other.click();
    } else if (isHandle(node)) {
      this.keyedHandle(node, event);
    }
  }

  keyedHandle(node, event) {
    const now = Number(node.value);
    const values = {
      ArrowUp: now + node.step, ArrowRight: now + node.step, ArrowDown: now - node.step,
      ArrowLeft: now - node.step, PageUp: now + 5 * node.step, PageDown: now - 5 * node.step,
      Home: node.min, End: node.max,
    };
    if (!(event.key in values)) return;
    event.preventDefault();
    this.act(node.id, "set", Math.min(Math.max(values[event.key], node.min), node.max));
  }

  hover(entry, event, value) {
    if (event.pointerType === "touch" || WORDS.has(entry.node.role)) return;
    this.act(entry.node.id, "hover", value);
  }

  pressed(entry, event) {
    const { node, element } = entry;
    if (event.button !== 0 || node.disabled) return;
    if (isHandle(node)) {
      element.setPointerCapture(event.pointerId);
      this.dragging = { id: node.id, x: event.clientX, y: event.clientY };
      return;
    }
    if (node.role !== "button" && node.role !== "radio") return;
    this.held = node.id;
    this.act(this.held, "press", "1");
    if (node.action !== "repeat") return;
    this.swallow = false;
    const repeat = () => {
      this.swallow = true;
      this.act(this.held, "click");
      this.repeating = setTimeout(repeat, REPEAT_MS);
    };
    this.repeating = setTimeout(repeat, HOLD_MS);
  }

  dragged(event) {
    if (!this.dragging) return;
    const { id, x, y } = this.dragging;
    this.act(id, "drag", `${(event.clientX - x).toFixed(2)} ${(event.clientY - y).toFixed(2)}`);
  }

  released() {
    clearTimeout(this.repeating);
    if (this.dragging) {
      this.act(this.dragging.id, "drop");
      this.dragging = null;
    }
    if (!this.held) return;
    this.act(this.held, "press", "0");
    this.held = "";
    // The click that ends a held press comes at once; when none comes, the next one must count.
    setTimeout(() => { this.swallow = false; }, 50);
  }
}
