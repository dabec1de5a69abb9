// The job sheet shown in place of the page, as it will be printed. Its style names nothing but itself.

export class Paper {
  // html() gives the sheet's document; `save` offers it as a file.
  constructor({ html, save }) {
    this.html = html;
    this.save = save;
    this.place = null;
    this.before = null;  // what had the focus when it was shown
    this.scroll = 0;     // ... and where the page stood
    addEventListener("keydown", (event) => { if (event.key === "Escape" && this.place) history.back(); });
    addEventListener("beforeprint", () => {
      if (this.place) return;
      this.lay();
      addEventListener("afterprint", () => this.clear(), { once: true });
    });
  }

  get open() { return Boolean(this.place); }

  show() {
    if (this.place) return;
    this.before = document.activeElement;
    this.scroll = window.scrollY;
    this.lay();
    window.scrollTo(0, 0);
    history.pushState({ ...history.state, paper: true }, "");
    this.place.querySelector("button").focus();
  }

  lay() {
    // The style is taken out first: the page's policy allows none that comes with markup.
    const style = new CSSStyleSheet();
    const html = this.html().replace(/<style>([^]*?)<\/style>/, (_, rules) => {
      style.replaceSync(rules);
      return "";
    });
    const sheet = new DOMParser().parseFromString(html, "text/html");
    this.place = document.createElement("div");
    this.place.id = "paper";
    const bar = document.createElement("div");
    bar.className = "tools";
    bar.append(this.button("Close", () => history.back()), this.button("Save as a file", this.save),
      this.button("Print", () => window.print()));
    this.style = style;
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
    const page = document.importNode(sheet.querySelector(".sheet"), true);
    this.place.append(bar, page);
    document.body.append(this.place);
    document.documentElement.dataset.paper = "true";
  }

  button(label, press) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = label;
    button.addEventListener("click", press);
    return button;
  }

  // Taken away again: by Back, by Close, after printing.
  clear() {
    if (!this.place) return;
    this.place.remove();
    this.place = null;
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((style) => style !== this.style);
    delete document.documentElement.dataset.paper;
    if (!this.before) return;  // printed without having been shown
    window.scrollTo(0, this.scroll);
    this.before.focus({ preventScroll: true });
    this.before = null;
  }
}
