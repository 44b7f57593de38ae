import type { Asked } from "./users";

/** Promised: 95 in 100 answers of a kind of page come within so many milliseconds. */
const promised: Readonly<Record<string, number>> = { lists: 300, repeats: 800 };
const mostGrowth = 0.1;

/** Prints times by place and kind, failures and memory. @returns true where all is as promised */
export function report(asked: readonly Asked[], memory: readonly number[]): boolean {
  const failed = asked.filter(({ status }) => status !== 200);
  for (const [place, of] of grouped(asked, ({ place }) => shape(place))) printTimes(place, of);
  const kinds = grouped(asked, ({ place }) => kindOf(place));
  let kept = failed.length === 0;
  for (const [kind, limit] of Object.entries(promised)) {
    const p95 = quantile(kinds.get(kind) ?? [], 0.95);
    kept &&= p95 <= limit;
    console.log(
      `${kind}: 95 in 100 within ${Math.round(p95)} ms; promised ${limit} ms: ${p95 <= limit ? "kept" : "NOT kept"}`,
    );
  }
  console.log(
    `${asked.length} answers, ${failed.length} failed${failed.length === 0 ? "" : `: ${[...new Set(failed.map(({ status }) => status))].join(", ")}`}`,
  );
  const growth = growthOf(memory);
  console.log(
    `memory: ${Math.round(memory[0] ?? 0)} MB at first, ${Math.round(memory.at(-1) ?? 0)} MB at the end, ${Math.round(100 * growth)} % from the second quarter to the last`,
  );
  return kept && growth <= mostGrowth;
}

/** Of the middle of the last quarter over that of the second: the first quarter fills caches. */
function growthOf(memory: readonly number[]): number {
  const quarter = Math.floor(memory.length / 4);
  if (quarter === 0) return 0;
  const middle = (of: readonly number[]) => of.toSorted((a, b) => a - b)[Math.floor((of.length - 1) / 2)] ?? 0;
  return middle(memory.slice(-quarter)) / middle(memory.slice(quarter, 2 * quarter)) - 1;
}

function printTimes(place: string, of: readonly Asked[]): void {
  const at = (share: number) => `${Math.round(quantile(of, share))}`.padStart(6);
  console.log(
    `${place.padEnd(34)} ${String(of.length).padStart(6)} answers  half ${at(0.5)}  95 in 100 ${at(0.95)}  slowest ${at(1)} ms`,
  );
}

function quantile(of: readonly Asked[], share: number): number {
  const sorted = of.map(({ ms }) => ms).toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

const shape = (place: string) => place.replace(/^\/(jobs|units|parts|symptoms|repeats)\/[^/]+$/, "/$1/…");

function kindOf(place: string): string {
  if (place.startsWith("/repeats")) return "repeats";
  return ["/jobs", "/units", "/claims", "/parts", "/claims/unclaimed"].includes(place) ? "lists" : "others";
}

function grouped(asked: readonly Asked[], by: (one: Asked) => string): Map<string, Asked[]> {
  const groups = new Map<string, Asked[]>();
  for (const one of asked) groups.set(by(one), [...(groups.get(by(one)) ?? []), one]);
  return new Map([...groups].sort(([a], [b]) => (a < b ? -1 : 1)));
}
