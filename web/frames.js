// When a frame is drawn: when something changed, and only then. A frame is laid out on this thread,
// carried over to the document by `follow`, and painted by the canvas.

const RATIO_MAX = 3;  // more pixels to one bring nothing that an eye can see
const KEPT_WORK = 200;

export class Frames {
  constructor({ program, canvas, place, insets, follow }) {
    this.program = program;
    this.canvas = canvas;
    this.place = place;
    this.insets = insets;
    this.follow = follow;
    this.sized = false;  // nothing is drawn before it is known how large
    this.wanted = 0;
    this.pending = 0;
    this.lastTime = 0;
    this.seen = { frames: 0, painted: 0, work_ms: [] };  // for the tests and the audit
  }

  request(count = 2) {
    this.wanted = Math.max(this.wanted, count);
    if (!this.sized || this.pending || this.canvas.busy || document.hidden) return;
    this.pending = requestAnimationFrame((time) => this.draw(time));
  }

  draw(time) {
    cancelAnimationFrame(this.pending);
    this.pending = 0;
    const dt_s = Math.min((time - this.lastTime) / 1000, 0.1);
    this.lastTime = time;
    this.seen.frames += 1;
    const from = performance.now();
    this.wanted = Math.max(this.wanted - 1, this.program.frame(dt_s, window.scrollY));
    this.follow();
    if (this.canvas.able) this.canvas.paint(this.program.packet());
    this.seen.work_ms.push(performance.now() - from);
    if (this.seen.work_ms.length > KEPT_WORK) this.seen.work_ms.shift();
    if (this.wanted > 0) this.request(this.wanted);
  }

  // The canvas has painted the last frame.
  painted() {
    this.seen.painted += 1;
    if (this.wanted > 0) this.request(this.wanted);
  }

  // --- size ------------------------------------------------------------------------------------------

  resize(entry) {
    const { width, height } = this.place.getBoundingClientRect();
    if (!width || !height) return;
    const ratio = Math.min(devicePixelRatio, RATIO_MAX);
    // The browser knows how a fraction is rounded; an emulated screen reports other pixels altogether.
    const box = entry?.devicePixelContentBoxSize?.[0];
    const pixels = (css, exact) => (Math.abs(exact - css * ratio) <= 1 ? exact : Math.round(css * ratio));
    const inset = getComputedStyle(this.insets);
    this.program.resize(width, height, pixels(width, box?.inlineSize), pixels(height, box?.blockSize),
      ...["Top", "Right", "Bottom", "Left"].map((side) => parseFloat(inset[`padding${side}`]) || 0));
    this.sized = true;
    this.request();
  }

  watchSize() {
    const observer = new ResizeObserver((entries) => this.resize(entries[0]));
    try {
      observer.observe(this.place, { box: "device-pixel-content-box" });
    } catch {
      observer.observe(this.place);
    }
    const watchRatio = () => {
      matchMedia(`(resolution: ${devicePixelRatio}dppx)`)
        .addEventListener("change", () => { watchRatio(); this.resize(); }, { once: true });
    };
    watchRatio();
    addEventListener("scroll", () => this.request(1), { passive: true });
    addEventListener("pageshow", () => this.request());
    addEventListener("focus", () => this.request(1));
    document.addEventListener("visibilitychange", () => this.request(1));
  }
}
