// Programs that the engines need, started for a test and ended with it.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { createServer } from "node:net";

const STARTED_WITHIN_MS = 20_000;

// Starts a program in a process group of its own and waits for a line like `pattern` in what it prints.
// Gives { match, output(), stop() }. `lineFrom` 3 listens to an extra channel instead of the two usual ones.
export async function startProgram(command, args, { env = {}, pattern, lineFrom } = {}) {
  const child = spawn(command, args, {
    env: { ...process.env, ...env }, detached: true,
    stdio: ["ignore", "pipe", "pipe", ...(lineFrom ? ["pipe"] : [])],
  });
  let output = "";
  const stop = async () => {
    process.off("exit", kill);
    for (const stream of child.stdio) stream?.destroy();  // a grandchild may hold the other end
    if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined) return;
    const ended = once(child, "exit");
    kill();
    await ended;
  };
  const kill = () => {
    try {
      process.kill(-child.pid, "SIGKILL");
    } catch {
      // it has ended already
    }
  };
  process.on("exit", kill);
  let late = 0;
  const match = await new Promise((resolve, reject) => {
    late = setTimeout(() => reject(new Error(`${command} did not start:\n${output}`)), STARTED_WITHIN_MS);
    for (const stream of child.stdio.slice(1)) {
      stream.setEncoding("utf8").on("data", (part) => {
        output += part;
        const found = pattern?.exec(output);
        if (found) resolve(found);
      });
    }
    child.on("error", (error) => reject(new Error(`${command}: ${error.message}; tools/deps installs it`)));
    child.on("exit", () => reject(new Error(`${command} ended at once:\n${output}`)));
    if (!pattern) resolve(null);
  }).catch(async (error) => {
    await stop();
    throw error;
  }).finally(() => clearTimeout(late));
  return { match, output: () => output, stop };
}

// A screen in memory; the number of a free one is the program's own choice.
export async function startScreen(width, height) {
  const screen = await startProgram("Xvfb",
    ["-displayfd", "3", "-screen", "0", `${width}x${height}x24`, "-nolisten", "tcp"],
    { pattern: /^(\d+)\n/m, lineFrom: 3 });
  return { display: `:${screen.match[1]}`, stop: screen.stop };
}

export function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}
