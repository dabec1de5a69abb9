// Waiting for what will come, instead of sleeping and hoping. How fast a machine is, is not tested: the bounds
// only end a test that hangs.

const WITHIN_MS = 30_000;
export const LOAD_WITHIN_MS = 120_000;  // a browser in software, that compiles the program anew
const LOOK_EVERY_MS = 25;

export const pause = (ms) => new Promise((resolve) => { setTimeout(resolve, ms); });

// Asks until the answer is truthy, and gives it back.
export async function until(ask, what, within_ms = WITHIN_MS) {
  const end = performance.now() + within_ms;
  for (;;) {
    const answer = await ask();
    if (answer) return answer;
    if (performance.now() > end) throw new Error(`waited ${within_ms} ms in vain: ${what}`);
    await pause(LOOK_EVERY_MS);
  }
}
