// What tools/serve.mjs sends: types, compression, caching, nothing from outside; and how much of it.

import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { serve } from "../../tools/serve.mjs";
import { SITE } from "./browser.mjs";

const OVER_THE_WIRE_BYTES = 350_000;  // script, program, type and shell, in brotli

let site;
before(async () => { site = await serve(SITE); });
after(() => site.close());

// As it stands: neither the path is tidied nor the body unpacked, which fetch would do.
function get(path, headers = {}, method = "GET") {
  const { hostname, port } = new URL(site.address);
  return new Promise((resolve, reject) => {
    request({ hostname, port, path, headers, method }, (response) => {
      const parts = [];
      response.on("data", (part) => parts.push(part));
      response.on("end", () => resolve({ status: response.statusCode, headers: response.headers,
                                         body: Buffer.concat(parts) }));
    }).on("error", reject).end();
  });
}
const named = (ending) => readdirSync(SITE).find((name) => name.endsWith(ending));

test("each kind of file has its type", async () => {
  for (const [ending, type] of [[".wasm", "application/wasm"], [".css", "text/css; charset=utf-8"],
    [".js", "text/javascript; charset=utf-8"], [".svg", "image/svg+xml"], [".html", "text/html; charset=utf-8"]]) {
    const response = await get(`/${named(ending)}`);
    assert.equal(response.status, 200);
    assert.equal(response.headers["content-type"], type);
  }
});

test("brotli where it is taken, else gzip, else plain; always the same bytes", async () => {
  const name = named(".wasm");
  const bytes = readFileSync(join(SITE, name));
  const brotli = await get(`/${name}`, { "accept-encoding": "gzip, deflate, br" });
  assert.equal(brotli.headers["content-encoding"], "br");
  assert.ok(brotliDecompressSync(brotli.body).equals(bytes));
  const gzip = await get(`/${name}`, { "accept-encoding": "gzip" });
  assert.equal(gzip.headers["content-encoding"], "gzip");
  assert.ok(gunzipSync(gzip.body).equals(bytes));
  const plain = await get(`/${name}`);
  assert.equal(plain.headers["content-encoding"], undefined);
  assert.ok(plain.body.equals(bytes));
  assert.equal(plain.headers.vary, "Accept-Encoding");
});

test("names with a digest are kept for ever, the page itself is asked for again", async () => {
  assert.match((await get(`/${named(".wasm")}`)).headers["cache-control"], /immutable/);
  assert.equal((await get("/")).headers["cache-control"], "no-cache");
});

test("nothing from outside the folder, and no other method", async () => {
  for (const path of ["/../CMakeCache.txt", "/%2e%2e/CMakeCache.txt", "/..%2fCMakeCache.txt", "/%00", "/%",
    "/none.html", "//etc/passwd"]) {
    assert.equal((await get(path)).status, 404, path);
  }
  assert.equal((await get("/", {}, "POST")).status, 405);
  const head = await get("/", {}, "HEAD");
  assert.equal(head.status, 200);
  assert.equal(head.body.length, 0);
});

test("the page names only files that are there", () => {
  for (const name of readdirSync(SITE).filter((file) => /\.(html|js)$/.test(file))) {
    const text = readFileSync(join(SITE, name), "utf8");
    for (const [, wanted] of text.matchAll(/["']\.?\/?([\w-]+\.[0-9a-f]{10}\.\w+)["']/g)) {
      assert.ok(readdirSync(SITE).includes(wanted), `${name} names ${wanted}`);
    }
    assert.doesNotMatch(text, /["'](\.\/)?(thole|shell|mirror|style)\.(js|wasm|css)["']/, name);
  }
});

test("what the first visit takes stays under the limit", (t) => {
  const rows = JSON.parse(readFileSync(join(SITE, "sizes.json"), "utf8")).filter((row) => row.firstVisit);
  const total = rows.reduce((sum, row) => sum + row.brotli, 0);
  for (const row of rows) t.diagnostic(`${row.name}: ${row.bytes} bytes, ${row.brotli} in brotli`);
  t.diagnostic(`together ${total} of ${OVER_THE_WIRE_BYTES} bytes`);
  assert.ok(total < OVER_THE_WIRE_BYTES);
});
