// Serves a folder on a loopback port: correct types, brotli or gzip where it lies beside the file and
// the browser takes it, nothing from outside the folder.
//
// usage: serve.mjs FOLDER [PORT [FRAGMENT JOB]]
// Port 0, or one that is taken: any free one. Prints the address, and how to open a ready-made job.

import { createReadStream, existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, normalize, sep } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES = {
  ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
  ".wasm": "application/wasm", ".json": "application/json", ".svg": "image/svg+xml",
  ".png": "image/png", ".webmanifest": "application/manifest+json",
  ".ts": "text/plain; charset=utf-8", ".txt": "text/plain; charset=utf-8",
};
const ENCODINGS = [["br", ".br"], ["gzip", ".gz"]];
const HASHED = /\.[0-9a-f]{10}\.\w+$/;

// The file asked for; null when there is none, or it would lie outside.
function locate(root, url) {
  let path;
  try {
    path = decodeURIComponent(new URL(url, "http://localhost").pathname);
  } catch {
    return null;
  }
  if (path.includes("\0")) return null;
  const file = normalize(join(root, path.endsWith("/") ? `${path}index.html` : path));
  if (!file.startsWith(root + sep)) return null;
  return existsSync(file) && statSync(file).isFile() ? file : null;
}

function answer(root, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { Allow: "GET, HEAD" }).end();
    return;
  }
  const file = locate(root, request.url);
  if (!file) {
    response.writeHead(404, { "Content-Type": "text/plain" }).end("Not found\n");
    return;
  }
  const headers = {
    "Content-Type": TYPES[extname(file)] ?? "application/octet-stream",
    "Cache-Control": HASHED.test(file) ? "public, max-age=31536000, immutable" : "no-cache",
    // Public files, the same for everyone: a shop's page on another origin loads embed.js and the engine.
    "Access-Control-Allow-Origin": "*",
    "X-Content-Type-Options": "nosniff",
    Vary: "Accept-Encoding",
  };
  let sent = file;
  const accepted = (request.headers["accept-encoding"] ?? "").split(",").map((item) => item.trim().split(";")[0]);
  for (const [encoding, ending] of ENCODINGS) {
    if (sent === file && accepted.includes(encoding) && existsSync(file + ending)) {
      headers["Content-Encoding"] = encoding;
      sent = file + ending;
    }
  }
  headers["Content-Length"] = statSync(sent).size;
  response.writeHead(200, headers);
  if (request.method === "HEAD") response.end();
  else createReadStream(sent).pipe(response);
}

// Resolves to { address, close }.
export function serve(folder, port = 0) {
  const root = normalize(folder).replace(/[/\\]+$/, "");
  const server = createServer((request, response) => answer(root, request, response));
  return new Promise((resolve, reject) => {
    server.on("error", reject);
    server.listen(port, "127.0.0.1", () => resolve({
      address: `http://127.0.0.1:${server.address().port}/`,
      close: () => { server.closeAllConnections(); server.close(); },
    }));
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder, port = "0", fragment, job] = process.argv.slice(2);
  const { address } = await serve(folder, Number(port)).catch(() => serve(folder, 0));
  console.log(`\nThole is at   ${address}`);
  if (fragment) {
    console.log(`\nA ready-made job (${job}):\n  ${address}${fragment}`);
    console.log('More stand on the first page under "Start from a ready-made job"; any job file opens');
    console.log("with the link that  build/release/thole link JOB.json  prints after the address.");
  }
  console.log("\nCtrl+C ends it.");
}
