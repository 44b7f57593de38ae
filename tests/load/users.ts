import { setTimeout as pause } from "node:timers/promises";

export interface Asked {
  /** The place, without what follows a question mark. */
  readonly place: string;
  readonly ms: number;
  /** 0 where no answer came. */
  readonly status: number;
}

interface Load {
  readonly site: string;
  readonly addresses: readonly string[];
  /** What the browser of each person sends with every request: one person for each. */
  readonly people: readonly Readonly<Record<string, string>>[];
  readonly seconds: number;
  readonly seed: number;
  readonly signal: AbortSignal;
}

/** A person looks at a page for so long before asking for the next: between the two, evenly. Our own choice. */
const thinkMs = [500, 3500] as const;

/** Each person waits for one answer before asking for the next, so a slow site is asked less and never flooded. */
export async function askFor({ site, addresses, people, seconds, seed, signal }: Load): Promise<readonly Asked[]> {
  const asked: Asked[] = [];
  const until = performance.now() + seconds * 1000;
  const person = async (headers: Readonly<Record<string, string>>, number: number): Promise<void> => {
    const chance = seeded(seed * 1000 + number);
    await pause(chance() * thinkMs[1]);
    while (performance.now() < until && !signal.aborted) {
      const address = addresses[Math.floor(chance() * addresses.length)] ?? "/";
      asked.push(await ask(`${site}${address}`, headers));
      await pause(thinkMs[0] + chance() * (thinkMs[1] - thinkMs[0]));
    }
  };
  await Promise.all(people.map(person));
  return asked;
}

/** A redirect is no answer: whoever is sent to sign in has not seen the page. */
export async function ask(address: string, headers: Readonly<Record<string, string>>): Promise<Asked> {
  const { pathname: place } = new URL(address);
  const start = performance.now();
  try {
    const answer = await fetch(address, { headers, redirect: "manual", signal: AbortSignal.timeout(60_000) });
    await answer.arrayBuffer();
    return { place, ms: performance.now() - start, status: answer.status };
  } catch {
    return { place, ms: performance.now() - start, status: 0 };
  }
}

/** Mulberry32: the same seed asks for the same pages in the same order. */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
