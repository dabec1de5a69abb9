// Lighthouse on the page as tools/start serves it: mobile preset, painting in software.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { launch } from "chrome-launcher";
import lighthouse from "lighthouse";
import { CHROMIUM } from "./browser.mjs";

const ROUNDS = 3;
const TRIES_MAX = 7;  // a round without a first paint says nothing: the window was not in front
const CATEGORIES = ["performance", "accessibility", "best-practices", "seo"];

const score = (result, category) => Math.round(100 * result.lhr.categories[category].score);

// Some of its own guesses at a trace fail loudly and do not matter.
async function quietly(work) {
  const { error } = console;
  console.error = () => {};
  try {
    return await work();
  } finally {
    console.error = error;
  }
}

async function round(address) {
  const browser = await launch({
    chromePath: CHROMIUM.executablePath, chromeFlags: ["--headless=new", ...CHROMIUM.args],
    logLevel: "silent" });
  try {
    return await quietly(() => lighthouse(address, {
      port: browser.port, output: "html", logLevel: "silent", onlyCategories: CATEGORIES }));
  } finally {
    browser.kill();
  }
}

// Scores of three rounds by category, in the order of performance; the middle one's score, its figures in
// words, and what failed in it. With `folder` the reports are kept there.
export async function lighthouseScores(address, folder) {
  const rounds = [];
  let reason = "";
  for (let tries = 0; rounds.length < ROUNDS; ++tries) {
    if (tries === TRIES_MAX) throw new Error(`no result of Lighthouse after ${tries} tries: ${reason}`);
    try {
      const result = await round(address);
      reason = result.lhr.runtimeError?.message ?? "it gave no score";
      if (!result.lhr.runtimeError && result.lhr.categories.performance.score !== null) rounds.push(result);
    } catch (error) {
      reason = error.message;
    }
  }
  rounds.sort((a, b) => score(a, "performance") - score(b, "performance"));
  if (folder) {
    mkdirSync(folder, { recursive: true });
    rounds.forEach((result, at) => writeFileSync(join(folder, `lighthouse-${at + 1}.html`), result.report));
  }
  const middle = rounds[Math.floor(ROUNDS / 2)];
  const shown = (id) => middle.lhr.audits[id].displayValue.replace(/\s/g, " ");
  const scores = CATEGORIES.map((category) => [category, rounds.map((one) => score(one, category))]);
  return {
    ...Object.fromEntries(scores),
    middle: score(middle, "performance"),
    figures: [["first paint", "first-contentful-paint"], ["largest", "largest-contentful-paint"],
      ["blocked", "total-blocking-time"], ["shift", "cumulative-layout-shift"]]
      .map(([words, id]) => `${words} ${shown(id)}`).join(", "),
    failed: CATEGORIES.slice(1).flatMap((category) => middle.lhr.categories[category].auditRefs)
      .map(({ id, weight }) => ({ weight, audit: middle.lhr.audits[id] }))
      .filter(({ weight, audit }) => weight > 0 && audit.score !== null && audit.score < 1)
      .map(({ audit }) => audit.title),
  };
}
