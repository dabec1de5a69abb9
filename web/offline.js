// Thole without a connection, and the change to a newer build: never behind the user's back, never with
// a job half typed.

import { BUILD, forgetFiles } from "./one_build.js";

const CHECK_MS = 60 * 60 * 1000;
const PATIENCE_MS = 8000;
const CALM_MS = 400;

// Not inside a shop's page, whose visitors did not come for us; not from a file on a disk.
const possible = () => "serviceWorker" in navigator && window.top === window &&
  /^https?:$/.test(location.protocol) && !new URLSearchParams(location.search).has("embed");

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

// The build that a worker keeps; undefined when it does not say.
function buildOf(worker) {
  const { port1, port2 } = new MessageChannel();
  const answer = new Promise((resolve) => { port1.onmessage = (event) => resolve(event.data); });
  worker.postMessage("BUILD", [port2]);
  return Promise.race([answer, pause(PATIENCE_MS)]);
}

// Resolves with the state that the worker reaches: one of those asked for, or "redundant".
function reaches(worker, ...states) {
  return new Promise((resolve) => {
    const look = () => {
      if (![...states, "redundant"].includes(worker.state)) return;
      worker.removeEventListener("statechange", look);
      resolve(worker.state);
    };
    worker.addEventListener("statechange", look);
    look();
  });
}

async function latestBuild() {
  try {
    const response = await fetch("version.json", { cache: "no-store" });
    return (await response.json()).build;
  } catch {
    return undefined;  // no connection
  }
}

class Offline {
  constructor(registration, { say, saveNow, onUpdate }) {
    this.registration = registration;
    this.say = say;
    this.saveNow = saveNow;
    this.onUpdate = onUpdate;
    this.leaving = false;
    this.timesBehind = 0;
    this.apply = null;
    this.checking = false;
  }

  start() {
    const { registration } = this;
    if (!registration.active) this.tellWhenKept(registration.installing ?? registration.waiting);
    else if (registration.waiting) this.offer(registration.waiting);
    else if (registration.installing) this.follow(registration.installing);
    registration.addEventListener("updatefound", () => {
      if (registration.active) this.follow(registration.installing);
    });
    navigator.serviceWorker.addEventListener("controllerchange", () => this.taken());
    const checkWhenSeen = () => { if (!document.hidden) this.check(); };
    document.addEventListener("visibilitychange", checkWhenSeen);
    setInterval(checkWhenSeen, CHECK_MS);
    this.check();
  }

  async tellWhenKept(worker) {
    if (worker && await reaches(worker, "activated") === "activated" && await buildOf(worker)) {
      this.say("Works without a connection now");
    }
  }

  async follow(worker) {
    if (await reaches(worker, "installed", "activated") === "installed") await this.offer(worker);
  }

  async offer(worker) {
    const build = await buildOf(worker);
    if (build === BUILD) worker.postMessage("SKIP_WAITING");  // this page came before it
    else if (build) this.propose(() => this.change(worker));
  }

  // Once, however many ways lead to the newer build; the last one found is taken.
  propose(apply) {
    const first = !this.apply;
    this.apply = apply;
    if (first) this.onUpdate(() => this.apply());
  }

  // Reloading before the new worker is in charge would show the old page again. In Chromium a request that
  // comes just when the old worker is stopped wakes that one for half a minute, and saving has the
  // browser ask for the page's icon: so wait for that, and any message makes the old worker stop again.
  async change(worker) {
    if (!await this.leave()) return;
    await pause(CALM_MS);
    const inCharge = reaches(worker, "activated");
    for (let asked = 0; asked < 20 && worker.state === "installed"; ++asked) {
      worker.postMessage("SKIP_WAITING");
      await Promise.race([pause(CALM_MS), inCharge]);
      if (worker.state === "installed") this.registration.active?.postMessage("STOP");
    }
    await Promise.race([pause(PATIENCE_MS), inCharge]);
    location.reload();
  }

  // Another tab has changed to a newer build; what is typed in this one stays until its user agrees.
  async taken() {
    const worker = navigator.serviceWorker.controller;
    if (this.leaving || !worker) return;
    const build = await buildOf(worker);
    if (build && build !== BUILD) this.propose(async () => { if (await this.leave()) location.reload(); });
  }

  // The browser looks for a new worker by itself, but an installed page on a phone is never closed. And a
  // cache on the way may hold the old worker back, or the search may not end: then we help ourselves.
  async check() {
    if (this.checking) return;
    this.checking = true;
    try {
      await this.compare();
    } finally {
      this.checking = false;
    }
  }

  async compare() {
    const build = await latestBuild();
    if (!build || build === BUILD) {
      this.timesBehind = 0;
      return;
    }
    const { registration } = this;
    await Promise.race([pause(PATIENCE_MS), registration.update().catch(() => {})]);
    if (registration.waiting || registration.installing) return;
    this.timesBehind += 1;
    if (this.timesBehind < 2) return;
    this.propose(async () => {
      if (!await this.leave()) return;
      await Promise.race([pause(PATIENCE_MS), forgetFiles()]);
      location.reload();
    });
  }

  async leave() {
    if (this.leaving) return false;
    this.leaving = true;
    await this.saveNow();
    return true;
  }
}

// say(text) tells the user; saveNow() puts the job where a reload finds it; onUpdate(apply) offers
// "A newer Thole is ready", is called once at most, and calls apply() when the user agrees.
export function keepOffline(callbacks) {
  if (!possible()) return;
  const idle = window.requestIdleCallback ?? ((run) => setTimeout(run, 1000));
  idle(async () => {
    try {
      const registration = await navigator.serviceWorker.register("sw.js", { updateViaCache: "none" });
      new Offline(registration, callbacks).start();
    } catch {
      // storage refused, or no secure connection: the page works as long as there is one
    }
  });
}
