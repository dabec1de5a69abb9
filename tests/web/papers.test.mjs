// The papers as others read them: an XML parser, a QR reader, a browser, an accessibility audit.

import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { CLI, ROOT } from "./browser.mjs";

const JOBS = join(ROOT, "presets/jobs");
const SKIFF = join(JOBS, "skiff-on-a-lake.json");
const PAGES = ["boat", "water", "hold", "shaft", "bank", "feeder", "charge", "mount", "trim"];
const ADDRESS = "https://boats.example/thole/";
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const thole = (...args) => execFileSync(CLI, args, { encoding: "utf8", maxBuffer: 1 << 28 });
const refused = (...args) => spawnSync(CLI, args, { encoding: "utf8" });

let folder;
let browser;
before(async () => {
  folder = mkdtempSync(join(tmpdir(), "thole-papers-"));
  browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
});
after(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

// The sheet in a browser of its own, with every request and every complaint noted.
async function openSheet(file, viewport) {
  const page = await browser.newPage({ viewport });
  page.asked = [];
  page.problems = [];
  page.on("request", (request) => page.asked.push(request.url()));
  page.on("console", (message) => page.problems.push(message.text()));
  await page.goto(pathToFileURL(file).href);
  return page;
}

function sheetFile(name, ...args) {
  const file = join(folder, name);
  thole("sheet", ...args, "-o", file);
  return file;
}

test("every picture is well-formed SVG", () => {
  const parse = `
import sys, xml.etree.ElementTree as tree
for name in sys.argv[1:]:
    root = tree.parse(name).getroot()
    assert root.tag == "{http://www.w3.org/2000/svg}svg", root.tag
    assert root.get("width").endswith("mm")
    assert all(len(child.text) > 5 for child in root if child.tag.endswith(("title", "desc")))
    assert sum(child.tag.endswith("path") for child in root) > 2
    print("read")
`;
  const files = [];
  for (const job of readdirSync(JOBS)) {
    for (const page of PAGES) {
      files.push(join(folder, `${job}-${page}.svg`));
      thole("picture", join(JOBS, job), page, "-o", files.at(-1), "--units", "us");
    }
  }
  const read = execFileSync("python3", ["-c", parse, ...files], { encoding: "utf8" });
  assert.equal(read.trim().split("\n").length, files.length);
});

test("a bad command says what there is", () => {
  for (const args of [["picture", SKIFF, "engine"], ["picture", SKIFF], ["sheet", SKIFF, "--units", "feet"],
    ["sheet", "no such file"], ["sheet", SKIFF, "--date"], ["sheet", SKIFF, "-o", "/no/such/folder/x"]]) {
    const said = refused(...args);
    assert.equal(said.status, 2, args.join(" "));
    assert.match(JSON.parse(said.stderr).at(-1).message, /\w+ .*\.$/);
  }
  assert.match(refused("picture", SKIFF, "engine").stderr, /boat, water, hold/);
});

for (const job of ["skiff-on-a-lake", "pilothouse-in-the-estuary"]) {
  test(`the QR code on the sheet is the whole link: ${job}`, async () => {
    const source = join(JOBS, `${job}.json`);
    const page = await openSheet(sheetFile("qr.html", source, "--address", `${ADDRESS}#old`),
      { width: 1000, height: 1400 });
    const image = join(folder, "qr.png");
    await page.getByRole("img", { name: /QR code/ }).screenshot({ path: image });
    const read = execFileSync("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", image], {
      encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }).trim();
    assert.equal(read, `${ADDRESS}#${thole("link", source).trim()}`);
    assert.equal(await page.getByRole("link").getAttribute("href"), read);
    assert.deepEqual(JSON.parse(thole("unlink", read)).boat, JSON.parse(readFileSync(source)).boat);
    await page.close();
  });
}

for (const width of [320, 412, 1280]) {
  test(`the sheet is readable at ${width} px`, async () => {
    const page = await openSheet(
      sheetFile("wide.html", join(JOBS, "express-with-a-thin-plate.json"), "--units", "us",
        "--address", ADDRESS),
      { width, height: 900 });
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(overflow <= 0, `${overflow} px too wide`);
    const cut = await page.evaluate(() => [...document.querySelectorAll(".drawing text")]
      .filter((text) => {
        const own = text.getBoundingClientRect();
        const whole = text.ownerSVGElement.getBoundingClientRect();
        return own.left < whole.left || own.right > whole.right ||
          own.top < whole.top - 3 || own.bottom > whole.bottom + 3;  // the line is higher than its letters
      }).map((text) => text.textContent));
    assert.deepEqual(cut, [], "text cut by the edge of its picture");
    assert.deepEqual(page.problems, []);
    assert.equal(page.asked.length, 1, page.asked.join(" "));  // the sheet itself and nothing else
    await page.close();
  });
}

test("the sheet has no accessibility violation", async () => {
  const page = await openSheet(sheetFile("axe.html", SKIFF, "--address", ADDRESS),
    { width: 1000, height: 1400 });
  await page.evaluate(AXE);
  const { violations, passes } = await page.evaluate(() => globalThis.axe.run());
  assert.deepEqual(violations.map((violation) => `${violation.id}: ${violation.nodes[0].html}`), []);
  assert.ok(passes.length > 15);
  assert.equal(await page.getByRole("main").count(), 1);
  assert.equal(await page.getByRole("heading", { level: 1 }).textContent(), "Skiff on a lake, 12 V");
  assert.equal(await page.getByRole("heading", { level: 2 }).count(), 15);  // checks, chapters, sources
  await page.close();
});

for (const job of readdirSync(JOBS).filter((name) => name.endsWith(".json"))) {
  test(`printed, it takes at most fourteen pages of A4 and Letter: ${job}`, async () => {
    const file = sheetFile("print.html", join(JOBS, job), "--address", ADDRESS, "--date", "3 May");
    const page = await openSheet(file, { width: 1000, height: 1400 });
    for (const format of ["A4", "Letter"]) {
      const pdf = (await page.pdf({ format })).toString("latin1");
      const pages = pdf.match(/\/Type\s*\/Page\b/g).length;
      assert.ok(pages >= 6 && pages <= 14, `${pages} pages on ${format}`);
    }
    await page.close();
  });
}

test("printed, it is black on white", async () => {
  const file = sheetFile("print.html", SKIFF, "--address", ADDRESS, "--date", "3 May");
  const page = await openSheet(file, { width: 1000, height: 1400 });
  await page.emulateMedia({ media: "print" });
  const colours = await page.evaluate(() => [...new Set([...document.querySelectorAll(".sheet *")]
    .map((element) => getComputedStyle(element).color))]);
  const dark = (colour) => colour.match(/\d+/g).slice(0, 3).every((part) => Number(part) <= 0x22);
  assert.deepEqual(colours.filter((colour) => !dark(colour)), []);
  const backgrounds = await page.evaluate(() => [...document.querySelectorAll(".sheet *")]
    .filter((element) => getComputedStyle(element).backgroundColor !== "rgba(0, 0, 0, 0)").length);
  assert.equal(backgrounds, 0, "a background is lost in print");
  await page.close();
});

test("a hostile title is a title", async () => {
  const file = join(folder, "hostile.json");
  const title = "<script>document.title = 'run'</script><b>bold</b>";
  writeFileSync(file, JSON.stringify({ schema: 1, title }));
  const page = await openSheet(sheetFile("hostile.html", file), { width: 800, height: 600 });
  assert.equal(await page.getByRole("heading", { level: 1 }).textContent(), title);
  assert.equal(await page.title(), `Job sheet: ${title}`);
  assert.equal(await page.locator("script").count(), 0);
  await page.close();
});
