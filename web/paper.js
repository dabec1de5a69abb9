// A paper shown in place of the page, as it will be printed: the job sheet, the plate's drawing, the
// pages of its drill template. Its style names nothing but itself.

export class Paper {
  // Each has html(), which gives its document, and save(), which offers it as a file. `usual` is what
  // the browser's own Print gets.
  constructor(usual) {
    this.usual = usual;
    this.place = null;
    this.before = null;  // what had the focus when it was shown
    this.scroll = 0;     // ... and where the page stood
    addEventListener("keydown", (event) => { if (event.key === "Escape" && this.place) history.back(); });
    addEventListener("beforeprint", () => {
      if (this.place) return;
      this.lay(this.usual);
      addEventListener("afterprint", () => this.clear(), { once: true });
    });
  }

  get open() { return Boolean(this.place); }

  show(wanted = this.usual) {
    if (this.place) return;
    this.before = document.activeElement;
    this.scroll = window.scrollY;
    this.lay(wanted);
    window.scrollTo(0, 0);
    history.pushState({ ...history.state, paper: true }, "");
    this.place.querySelector("button").focus();
  }

  lay({ html, save }) {
    // The style is taken out first: the page's policy allows none that comes with markup.
    const style = new CSSStyleSheet();
    const markup = html().replace(/<style>([^]*?)<\/style>/, (_, rules) => {
      style.replaceSync(rules);
      return "";
    });
    const sheet = new DOMParser().parseFromString(markup, "text/html");
    this.place = document.createElement("div");
    this.place.id = "paper";
    const bar = document.createElement("div");
    bar.className = "tools";
    bar.append(this.button("Close", () => history.back()), this.button("Save as a file", save),
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
