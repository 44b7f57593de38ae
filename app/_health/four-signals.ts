/** Upper ends of the classes in which answers are counted, in milliseconds; the last class has none. Own choice, no source. */
const edges = [10, 25, 50, 100, 200, 400, 800, 1600, 3200, 6400, 12_800] as const;
const minutesKept = 60;

interface Minute {
  readonly minute: number;
  requests: number;
  errors: number;
  readonly classes: number[];
}

export interface SignalsView {
  readonly requests: number;
  /** Answers that were the program's own failure: status 500 and above. */
  readonly errors: number;
  /** Half of the answers, and 95 in 100, took no longer than this many milliseconds; infinite above the last class. */
  readonly medianMs: number;
  readonly slowMs: number;
}

/** Traffic, errors and time to answer of the last hour, in sixty small counters: nothing of a request itself is kept. */
export class FourSignals {
  readonly #minutes: Minute[] = [];

  /** One answered request. `at` in milliseconds of a clock that never jumps, such as performance.now. */
  note({ at, ms, status }: { readonly at: number; readonly ms: number; readonly status: number }): void {
    const minute = this.#minuteOf(at);
    minute.requests += 1;
    if (status >= 500) minute.errors += 1;
    const found = edges.findIndex((edge) => ms <= edge);
    const index = found < 0 ? edges.length : found;
    minute.classes[index] = (minute.classes[index] ?? 0) + 1;
  }

  /** Undefined when nothing was asked in the hour before `at`. */
  view(at: number): SignalsView | undefined {
    const oldest = Math.floor(at / 60_000) - minutesKept;
    const recent = this.#minutes.filter(({ minute }) => minute > oldest);
    const requests = recent.reduce((sum, minute) => sum + minute.requests, 0);
    if (requests === 0) return undefined;
    const classes = Array.from({ length: edges.length + 1 }, (_, index) =>
      recent.reduce((sum, minute) => sum + (minute.classes[index] ?? 0), 0),
    );
    return {
      requests,
      errors: recent.reduce((sum, minute) => sum + minute.errors, 0),
      medianMs: upperEnd(classes, requests * 0.5),
      slowMs: upperEnd(classes, requests * 0.95),
    };
  }

  #minuteOf(at: number): Minute {
    const number = Math.floor(at / 60_000);
    const last = this.#minutes.at(-1);
    if (last?.minute === number) return last;
    const minute = { minute: number, requests: 0, errors: 0, classes: [] };
    this.#minutes.push(minute);
    if (this.#minutes.length > minutesKept + 1) this.#minutes.shift();
    return minute;
  }
}

function upperEnd(classes: readonly number[], wanted: number): number {
  let sum = 0;
  for (const [index, count] of classes.entries()) {
    sum += count;
    if (sum >= wanted) return edges[index] ?? Number.POSITIVE_INFINITY;
  }
  return Number.POSITIVE_INFINITY;
}
