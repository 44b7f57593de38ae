// A phone in a cellar, by seed: what happens to each sending, and to the phone itself between two steps.
import type { BrowserContext, Page, Route } from "@playwright/test";

/** Numbers in [0, 1) that a seed decides: a run that failed is run again by its seed. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const answersLater = [408, 409, 425, 429, 500, 502, 503] as const;

/** Every sending of the sheet meets its fate here; `off` lets all through again. */
export async function spoilSending(context: BrowserContext, random: () => number) {
  let isOff = false;
  const seen: string[] = [];
  await context.route(/\/sheet\/job\/[^/]+\/(answers|photos|close)$/, async (route) => {
    const fate = isOff ? "through" : fateOf(random);
    seen.push(fate);
    await meet(route, fate, random).catch(() => {}); // the page was closed meanwhile
  });
  return {
    seen,
    off: () => {
      isOff = true;
    },
  };
}

type Fate =
  | "through"
  | "lost on the way"
  | "answer lost"
  | "failed"
  | "failed after it was done"
  | "slow"
  | "too large";

function fateOf(random: () => number): Fate {
  const fates: readonly (readonly [Fate, number])[] = [
    ["through", 0.3],
    ["lost on the way", 0.15],
    ["answer lost", 0.15],
    ["failed", 0.15],
    ["failed after it was done", 0.1],
    ["slow", 0.1],
    ["too large", 0.05],
  ];
  let left = random();
  for (const [fate, share] of fates) {
    left -= share;
    if (left < 0) return fate;
  }
  return "through";
}

async function meet(route: Route, fate: Fate, random: () => number): Promise<void> {
  const status = answersLater[Math.floor(random() * answersLater.length)] ?? 500;
  switch (fate) {
    case "through":
      return await route.continue();
    case "lost on the way":
      return await route.abort("connectionfailed");
    case "answer lost":
      await route.fetch();
      return await route.abort("timedout");
    case "failed":
      return await route.fulfill({ status, body: "{}" });
    case "failed after it was done":
      await route.fetch();
      return await route.fulfill({ status, body: "<html>" });
    case "slow":
      await new Promise((resolve) => setTimeout(resolve, 200 + 800 * random()));
      return await route.continue();
    case "too large":
      return await route.fulfill({ status: 413, json: { detail: "The body is too large." } });
  }
}

/** Lets the page's own store run full, as a phone's does, and empty again. */
export async function breakStore(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given: Parameters<typeof put>) {
      if (sessionStorage.getItem("store is full") !== null)
        throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
      return put.apply(this, given);
    };
  });
}

export async function fillStore(page: Page, isFull: boolean): Promise<void> {
  await page.evaluate((full) => {
    if (full) sessionStorage.setItem("store is full", "yes");
    else sessionStorage.removeItem("store is full");
  }, isFull);
}
