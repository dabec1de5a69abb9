// Jobs kept in this browser, so that a reload or a closed tab loses nothing. Each tab has a slot of its
// own: two tabs never write over each other, and a new tab goes on from a copy of the latest job.

const SLOT = "thole.job.";      // + slot: {"link", "label", "at"}
const UNITS = "thole.units";
const MINE = "thole.slot";      // of this tab; lives as long as the tab
const SLOTS_MAX = 12;
const SOON_MS = 500;

// Storage may be forbidden (private windows, frames) or full: every access may throw.
function attempt(deed, otherwise) {
  try {
    return deed();
  } catch {
    return otherwise;
  }
}

const newSlot = () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;

export class Keep {
  // current() gives {link, label}; refused() is called once when nothing can be kept here;
  // elsewhere(jobs) whenever the list of the other jobs changed. `forbidden`: inside a shop's page
  // nothing is kept at all.
  constructor({ current, refused, elsewhere, forbidden }) {
    this.current = current;
    this.refused = refused;
    this.elsewhere = elsewhere;
    this.forbidden = forbidden;
    this.timer = 0;
    this.told = false;
    this.slot = "";
    if (forbidden) return;
    addEventListener("storage", (event) => {
      if (event.key?.startsWith(SLOT)) this.elsewhere(this.others());
    });
    addEventListener("pagehide", () => this.flush());
    document.addEventListener("visibilitychange", () => { if (document.hidden) this.flush(); });
  }

  // Takes a slot and gives the job that was last in it, else the latest job kept; null when there is none.
  async first() {
    if (this.forbidden) return null;
    const before = attempt(() => sessionStorage.getItem(MINE), null);
    // A duplicated tab brings a copy of the other's slot: who holds the lock owns it.
    this.slot = before && await this.hold(before) ? before : newSlot();
    if (this.slot !== before) await this.hold(this.slot);
    attempt(() => sessionStorage.setItem(MINE, this.slot));
    const kept = this.all();
    this.elsewhere(this.others());
    return kept.find((job) => job.slot === this.slot) ?? kept[0] ?? null;
  }

  // Resolves to whether the slot is this tab's; held until the tab goes.
  hold(slot) {
    if (!navigator.locks) return Promise.resolve(true);
    return new Promise((resolve) => {
      navigator.locks.request(SLOT + slot, { ifAvailable: true }, (lock) => {
        resolve(Boolean(lock));
        return lock ? new Promise(() => {}) : undefined;
      }).catch(() => resolve(true));
    });
  }

  // All jobs kept, the latest first.
  all() {
    return attempt(() => Object.keys(localStorage)
      .filter((name) => name.startsWith(SLOT))
      .map((name) => ({ slot: name.slice(SLOT.length), ...JSON.parse(localStorage.getItem(name)) }))
      .filter((job) => typeof job.link === "string")
      .sort((a, b) => b.at - a.at), []);
  }

  // The jobs of other tabs and other days, each once.
  others() {
    const seen = new Set([this.current().link]);
    return this.all().filter((job) => job.slot !== this.slot && !seen.has(job.link) && seen.add(job.link));
  }

  soon() {
    if (this.forbidden) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.now(), SOON_MS);
  }

  flush() {
    if (this.timer) this.now();
  }

  now() {
    clearTimeout(this.timer);
    this.timer = 0;
    if (this.forbidden) return;
    const { link, label } = this.current();
    this.write(SLOT + this.slot, JSON.stringify({ link, label, at: Date.now() }));
    for (const { slot } of this.all().slice(SLOTS_MAX)) attempt(() => localStorage.removeItem(SLOT + slot));
    this.elsewhere(this.others());
  }

  write(name, text) {
    if (attempt(() => { localStorage.setItem(name, text); return true; }, false) || this.told) return;
    this.told = true;
    this.refused();
  }

  get units() { return this.forbidden ? "" : attempt(() => localStorage.getItem(UNITS), "") ?? ""; }
  set units(key) { if (!this.forbidden && this.units !== key) this.write(UNITS, key); }
}
