// Waiting for what will come, instead of sleeping and hoping.

const WITHIN_MS = 5000;
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
