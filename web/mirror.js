// The semantic tree as real elements: inputs that bring up the keyboard, buttons, headings, live
// regions. Elements are kept by id and only what changed is written, so that focus, caret and what
// is half typed stay where they are.

const TAGS = {
  text: "p", button: "button", textbox: "input", slider: "input", checkbox: "input",
  select: "select", radio: "button", img: "div", status: "div", alert: "div", group: "div",
  navigation: "nav", main: "main", list: "div", listitem: "div",
};
const ROLES = {
  img: "img", status: "status", alert: "alert", group: "group", list: "list", listitem: "listitem",
  radio: "radio",
};
const INPUT_TYPES = { textbox: "text", slider: "range", checkbox: "checkbox" };
const CONTAINERS = new Set(["group", "navigation", "main", "list", "listitem"]);
const WORDS = new Set(["heading", "text", "status", "alert", "img"]);
const HOLD_MS = 400;    // until a held button begins to repeat
const REPEAT_MS = 80;

function tagOf(node) {
  return node.role === "heading" ? `h${Math.min(Math.max(node.level || 2, 1), 6)}` : TAGS[node.role];
}

function setAttribute(element, name, value) {
  if (value === undefined || value === null || value === false || value === "") {
    if (element.hasAttribute(name)) element.removeAttribute(name);
  } else if (element.getAttribute(name) !== String(value)) {
    element.setAttribute(name, String(value));
  }
}

export class Mirror {
  // act(id, verb, text) reaches the program; actions[name]() is done here, inside the gesture.
  constructor(root, { act, actions }) {
    this.root = root;
    this.act = act;
    this.actions = actions;
    this.entries = new Map();  // id -> {element, outer, node, text}
    this.repeating = 0;
    this.listen();
  }

  // --- tree to elements ------------------------------------------------------------------------------

  update(nodes) {
    const focused = document.activeElement;
    const kept = new Set();
    const list = this.named(nodes).map((node) => {
      const entry = this.entryFor(node);
      kept.add(entry);
      return entry;
    });
    for (const [id, entry] of this.entries) {
      if (kept.has(entry)) continue;
      entry.outer.remove();
      this.entries.delete(id);
    }
    const next = new Map();  // parent element -> the child that should come next
    list.forEach((entry, index) => {
      const parent = nodes[index].parent < 0 ? this.root : list[nodes[index].parent].element;
      const at = next.has(parent) ? next.get(parent) : parent.firstChild;
      if (entry.outer !== at) parent.insertBefore(entry.outer, at);
      next.set(parent, entry.outer.nextSibling);
    });
    // Moving an element takes its focus.
    if (focused !== document.activeElement && focused.isConnected) {
      focused.focus({ preventScroll: true });
    }
    this.keepClear(nodes);
  }

  // Every node under a name of its own; those without one are named after their place.
  named(nodes) {
    const counts = new Map();
    return nodes.map((node) => {
      if (node.id) return { ...node, own: true };
      const base = `${node.parent}/${node.role}`;
      const count = counts.get(base) ?? 0;
      counts.set(base, count + 1);
      return { ...node, id: `${base}/${count}`, own: false };
    });
  }

  entryFor(node) {
    const tag = tagOf(node);
    let entry = this.entries.get(node.id);
    if (entry && entry.tag !== tag + node.role) {
      entry.outer.remove();
      entry = undefined;
    }
    if (!entry) {
      entry = this.create(node, tag);
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

  create(node, tag) {
    const element = document.createElement(tag);
    const entry = { element, outer: element, tag: tag + node.role, node, text: "" };
    if (node.role === "button" && node.level) {  // a disclosure: its label is a heading as well
      entry.outer = document.createElement(`h${node.level}`);
      entry.outer.className = "wrapper";
      entry.outer.append(element);
    }
    element.dataset.id = node.id;
    if (INPUT_TYPES[node.role]) element.type = INPUT_TYPES[node.role];
    if (tag === "button") element.type = "button";
    if (ROLES[node.role]) element.setAttribute("role", ROLES[node.role]);
    if (node.role === "textbox") {
      element.classList.add("typed");
      Object.entries({ autocomplete: "off", autocorrect: "off", autocapitalize: "off",
                       spellcheck: "false", enterkeyhint: "done" })
        .forEach(([name, value]) => element.setAttribute(name, value));
    }
    if (WORDS.has(node.role)) element.classList.add("words");
    if (node.role === "heading") element.tabIndex = -1;
    return entry;
  }

  write(entry, node) {
    const { element } = entry;
    this.place(element, node);
    setAttribute(element, "aria-current", node.current && (node.role === "button" ? "page" : "true"));
    setAttribute(element, "aria-expanded", node.expandable ? String(Boolean(node.expanded)) : "");
    setAttribute(element, "aria-description", this.description(node));
    if ("disabled" in element) element.disabled = Boolean(node.disabled);
    if (WORDS.has(node.role) && node.role !== "img") {
      const text = [node.name, node.value].filter(Boolean).join(" ");
      if (element.textContent !== text) element.textContent = text;
      return;
    }
    if (node.role === "button" || node.role === "radio") {
      const text = [node.name, node.value].filter(Boolean).join(" ");
      if (element.textContent !== text) element.textContent = text;
      if (node.role === "radio") element.setAttribute("aria-checked", String(Boolean(node.checked)));
      if (node.role === "radio") element.parentElement?.setAttribute("role", "radiogroup");
      return;
    }
    setAttribute(element, "aria-label", node.name);
    if (node.role === "textbox") this.writeTextbox(entry, node);
    if (node.role === "checkbox") element.checked = Boolean(node.checked);
    if (node.role === "slider") {
      Object.assign(element, { min: node.min, max: node.max, step: node.step });
      if (element.value !== node.value) element.value = node.value;
      setAttribute(element, "aria-valuetext", node.unit || node.value);
    }
    if (node.role === "select") this.writeSelect(entry, node);
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
    if (!placed) return;
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
    const dirty = document.activeElement === element && element.value !== entry.shown;
    if (!dirty && element.value !== (node.value ?? "")) element.value = node.value ?? "";
    entry.shown = node.value ?? "";
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

  // The browser scrolls a focused element into view: not under the strips that stay.
  keepClear(nodes) {
    const height = document.documentElement.clientHeight;
    let top = 0;
    let bottom = 0;
    for (const node of nodes) {
      if (node.pinned === "top") top = Math.max(top, node.y + node.h);
      if (node.pinned === "bottom") bottom = Math.max(bottom, height - node.y);
    }
    const { style } = document.documentElement;
    style.scrollPaddingTop = `${Math.ceil(top) + 16}px`;
    style.scrollPaddingBottom = `${Math.ceil(bottom) + 16}px`;
  }

  focusHeading() {
    this.root.querySelector("h1")?.focus({ preventScroll: true });
  }

  // Something is typed that is not yet handed over.
  typing() {
    const entry = this.entryOf(document.activeElement);
    return entry?.node.role === "textbox" && entry.element.value !== entry.shown;
  }

  // --- elements to program ---------------------------------------------------------------------------

  entryOf(target) {
    const element = target?.closest?.("[data-id]");
    return element ? this.entries.get(element.dataset.id) : undefined;
  }

  listen() {
    const on = (type, handler, options) => {
      this.root.addEventListener(type, (event) => {
        const entry = this.entryOf(event.target);
        if (entry) handler(entry, event);
      }, options);
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
      if (entry.node.role === "textbox") entry.element.select();
    });
    on("focusout", (entry) => {
      if (entry.node.role === "textbox") this.commit(entry);
    });
    on("keydown", (entry, event) => this.keyed(entry, event));
    on("pointerover", (entry, event) => this.hover(entry, event, "1"));
    on("pointerout", (entry, event) => this.hover(entry, event, "0"));
    on("pointerdown", (entry, event) => this.pressed(entry, event));
    for (const type of ["pointerup", "pointercancel", "blur"]) addEventListener(type, () => this.released());
    this.root.addEventListener("contextmenu", (event) => {
      if (this.held) event.preventDefault();  // a long press repeats, it asks for no menu
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

  keyed(entry, event) {
    const { element, node } = entry;
    if (node.role === "textbox" && event.key === "Enter") {
      this.commit(entry);
      if (matchMedia("(pointer: coarse)").matches) element.blur();  // puts the keyboard away
      else element.select();
    } else if (node.role === "textbox" && event.key === "Escape") {
      element.value = entry.shown ?? "";
      element.select();
    } else if (node.role === "radio" && /^Arrow/.test(event.key)) {
      event.preventDefault();
      const radios = [...element.parentElement.querySelectorAll("[role=radio]")];
      const step = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : radios.length - 1;
      const other = radios[(radios.indexOf(element) + step) % radios.length];
      other.focus();
      other.click();
    }
  }

  hover(entry, event, value) {
    if (event.pointerType === "touch" || WORDS.has(entry.node.role)) return;
    this.act(entry.node.id, "hover", value);
  }

  pressed(entry, event) {
    if (event.button !== 0 || entry.node.disabled) return;
    if (entry.node.role !== "button" && entry.node.role !== "radio") return;
    this.held = entry.node.id;
    this.act(this.held, "press", "1");
    if (entry.node.action !== "repeat") return;
    this.swallow = false;
    const repeat = () => {
      this.swallow = true;
      this.act(this.held, "click");
      this.repeating = setTimeout(repeat, REPEAT_MS);
    };
    this.repeating = setTimeout(repeat, HOLD_MS);
  }

  released() {
    clearTimeout(this.repeating);
    if (!this.held) return;
    this.act(this.held, "press", "0");
    this.held = "";
    // The click that ends a held press comes at once; when none comes, the next one must count.
    setTimeout(() => { this.swallow = false; }, 50);
  }
}
