import type { AgeCounts } from "./cell-weeks";
import { type ProductionScan, productionScan } from "./production-scan";
import { ageBandOfWeeks, type WeekNumber } from "./weeks";

/** Units that share the week of production and those of service. */
export interface ProductionUnits {
  readonly rows: readonly {
    readonly made: WeekNumber;
    readonly service: WeekNumber;
    readonly began: WeekNumber;
    readonly ended: WeekNumber;
    readonly units: number;
    readonly failures: number;
    readonly serialFrom: string;
    readonly serialTo: string;
  }[];
  /** Made on a day that is not known closely enough. */
  readonly unknownUnits: number;
  readonly monthOnlyUnits: number;
}

export interface ProductionView {
  readonly scan: ProductionScan;
  /** The weeks that the scan points at, with what surrounds them. */
  readonly parts: readonly ProductionPart[];
  /** Of the units made in those weeks. */
  readonly serials: { readonly from: string; readonly to: string } | undefined;
  readonly weeks: { readonly from: WeekNumber; readonly to: WeekNumber } | undefined;
}

export interface ProductionPart {
  readonly which: "before" | "in" | "after";
  readonly units: number;
  readonly observed: number;
  readonly expected: number;
}

/** Longest run that is looked for: a year and a half; longer is a matter of the model. Own choice, no source. */
const longestRun = 78;
/** Chances down to 1 in 500 can be told apart; more draws would only make the page slower. Own choice, no source. */
const draws = 499;

/**
 * Where in production the failures crowd, and how the units made before, in and after those weeks did against others of
 * their ages.
 * @param ages  of the cell that leads the signal: others' failures and unit-weeks by age
 */
export function productionView({ rows }: ProductionUnits, ages: readonly AgeCounts[], seed: number): ProductionView {
  const rates = ages.map(({ others, othersUnitWeeks }) => (othersUnitWeeks > 0 ? others / othersUnitWeeks : 0));
  const upTo = cumulative(rates, 52 * 40);
  const first = rows.reduce((least, { made }) => Math.min(least, made), Number.POSITIVE_INFINITY);
  const last = rows.reduce((most, { made }) => Math.max(most, made), Number.NEGATIVE_INFINITY);
  const made = rows.map((row) => ({
    ...row,
    expected: row.units * between(upTo, row.began - row.service, row.ended - row.service + 1),
  }));
  if (!(last >= first))
    return { scan: { kind: "too-few", failures: 0 }, parts: [], serials: undefined, weeks: undefined };
  const weeks = Array.from({ length: last - first + 1 }, () => ({ failures: 0, expected: 0 }));
  for (const row of made) {
    const week = weeks[row.made - first];
    if (week === undefined) continue;
    week.failures += row.failures;
    week.expected += row.expected;
  }
  const scan = productionScan({ weeks, longest: longestRun, draws, seed });
  if (scan.kind !== "run") return { scan, parts: [], serials: undefined, weeks: undefined };
  const run = { from: first + scan.first, to: first + scan.last };
  const inside = made.filter((row) => row.made >= run.from && row.made <= run.to);
  const serials = inside.reduce<ProductionView["serials"]>(
    (range, { serialFrom, serialTo }) => ({
      from: range === undefined || serialFrom < range.from ? serialFrom : range.from,
      to: range === undefined || serialTo > range.to ? serialTo : range.to,
    }),
    undefined,
  );
  const parts = [
    part(
      "before",
      made.filter((row) => row.made < run.from),
    ),
    part("in", inside),
    part(
      "after",
      made.filter((row) => row.made > run.to),
    ),
  ].filter(({ units }) => units > 0);
  return { scan, parts, serials, weeks: run };
}

function part(
  which: ProductionPart["which"],
  rows: readonly { units: number; failures: number; expected: number }[],
): ProductionPart {
  const sum = { which, units: 0, observed: 0, expected: 0 };
  for (const { units, failures, expected } of rows) {
    sum.units += units;
    sum.observed += failures;
    sum.expected += expected;
  }
  return sum;
}

/** Expected failures of one unit up to each age in weeks. */
function cumulative(rates: readonly number[], weeks: number): Float64Array {
  const upTo = new Float64Array(weeks + 1);
  for (let age = 0; age < weeks; age++) upTo[age + 1] = (upTo[age] ?? 0) + (rates[ageBandOfWeeks(age)] ?? 0);
  return upTo;
}

function between(upTo: Float64Array, from: number, until: number): number {
  const at = (age: number) => upTo[Math.max(0, Math.min(age, upTo.length - 1))] ?? 0;
  return Math.max(0, at(until) - at(from));
}
