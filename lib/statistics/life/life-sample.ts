import { type AgeFlows, ageFlows, type LifeSource } from "../survival/age-flows";
import { type InspectionRow, requireInspectionRow } from "./inspection-rows";

/** Anything a life distribution can be fitted to. */
export type FitSource = LifeSource | readonly InspectionRow[];

/**
 * What the likelihood of a log-location-scale life needs to know, each distinct age once.
 * Log ages are taken relative to `unit`, a typical failure age, so that a fit does not depend on the unit of time
 * and no power overflows.
 */
export interface LifeSample {
  /** Age that counts as 1 inside the likelihood. */
  readonly unit: number;
  /** Lives in all, before any reduction. */
  readonly lives: number;
  /** Failures in all, exact or bounded. */
  readonly events: number;
  /** Exact failures: count, Σ y, Σ y² of their relative log ages, and the total of log `unit`. */
  readonly exact: { readonly count: number; readonly sum: number; readonly squares: number; readonly logUnits: number };
  /** Relative log ages, one per distinct age above 0. */
  readonly logAges: Float64Array;
  /** Lives lost minus lives entered at each of those ages: the weight of log survival when failures carry a density. */
  readonly lostLessEntered: Float64Array;
  /** The same with the exact failures added: the weight when a failure carries its hazard (Weibull). */
  readonly goneLessEntered: Float64Array;
  /** Failures known within bounds; `low` is −Infinity for left censoring. */
  readonly bounded: readonly { readonly low: number; readonly high: number; readonly count: number }[];
  /** Smallest exact failure age, and the largest age up to which any life was known sound or failed exactly. */
  readonly firstExact: number;
  readonly lastWatched: number;
}

/** How to count failures at age 0, where the logarithm has no value: as having happened in (0, within]. */
export interface FailedAtZero {
  readonly within: number;
}

export type SampleOrAgeZero =
  | { readonly kind: "sample"; readonly sample: LifeSample }
  | { readonly kind: "failure-at-age-zero"; readonly lives: number; readonly events: number };

/** @throws RangeError for rows that cannot be */
export function lifeSample(source: FitSource, failedAtZero: FailedAtZero | undefined): SampleOrAgeZero {
  const { flows, bounded } = isInspections(source)
    ? splitInspections(source)
    : { flows: ageFlows(source), bounded: [] };
  const atZero = flows.ages[0] === 0 ? (flows.events[0] ?? 0) : 0;
  if (atZero > 0 && failedAtZero === undefined) {
    const events = total(flows.events) + bounded.reduce((sum, row) => sum + row.count, 0);
    return { kind: "failure-at-age-zero", lives: total(flows.entered), events };
  }
  const bounds =
    atZero > 0 && failedAtZero !== undefined
      ? [...bounded, { after: 0, by: failedAtZero.within, count: atZero }]
      : bounded;
  return { kind: "sample", sample: reduce(flows, bounds) };
}

interface Bounds {
  readonly after: number;
  readonly by: number;
  readonly count: number;
}

function isInspections(source: FitSource): source is readonly InspectionRow[] {
  if (!Array.isArray(source)) return false;
  const first: unknown = source[0];
  return typeof first === "object" && first !== null && "after" in first;
}

/** Exact failures and survivors become flows; a bounded failure leaves its entry there, as one lost at age 0 would. */
function splitInspections(rows: readonly InspectionRow[]): { flows: AgeFlows; bounded: Bounds[] } {
  rows.forEach(requireInspectionRow);
  const known = rows.filter(({ after, by }) => by === after || by === Number.POSITIVE_INFINITY);
  const merged = new Map<string, Bounds>();
  const truncated = new Map<number, number>();
  for (const { entry, after, by, count } of rows) {
    if (by === after || by === Number.POSITIVE_INFINITY || count === 0) continue;
    const key = `${after} ${by}`;
    merged.set(key, { after, by, count: (merged.get(key)?.count ?? 0) + count });
    truncated.set(entry, (truncated.get(entry) ?? 0) + count);
  }
  const flows = ageFlows(
    known.map(({ entry, after, by, count }) => ({ entry, exit: after, event: by === after, count })),
  );
  return { flows: withEntries(flows, truncated), bounded: [...merged.values()] };
}

function withEntries(flows: AgeFlows, extra: ReadonlyMap<number, number>): AgeFlows {
  const ages = Float64Array.from(new Set([...flows.ages, ...extra.keys()])).sort();
  const place = new Map(Array.from(flows.ages, (age, i) => [age, i]));
  const spread = (column: Float64Array) => ages.map((age) => column[place.get(age) ?? -1] ?? 0);
  const entered = spread(flows.entered).map((count, i) => count + (extra.get(ages[i] ?? -1) ?? 0));
  return { ages, entered, events: spread(flows.events), lost: spread(flows.lost) };
}

function reduce(flows: AgeFlows, bounds: readonly Bounds[]): LifeSample {
  const unit = typicalAge(flows, bounds);
  const places = [...flows.ages.keys()].filter((i) => (flows.ages[i] ?? 0) > 0);
  const pick = (value: (i: number) => number) => Float64Array.from(places, value);
  const logAges = pick((i) => Math.log((flows.ages[i] ?? 0) / unit));
  const events = pick((i) => flows.events[i] ?? 0);
  const lostLessEntered = pick((i) => (flows.lost[i] ?? 0) - (flows.entered[i] ?? 0));
  const count = total(events);
  const boundedEvents = bounds.reduce((sum, row) => sum + row.count, 0);
  return {
    unit,
    lives: total(flows.entered),
    events: count + boundedEvents,
    exact: {
      count,
      sum: events.reduce((sum, d, i) => sum + d * (logAges[i] ?? 0), 0),
      squares: events.reduce((sum, d, i) => sum + d * (logAges[i] ?? 0) ** 2, 0),
      logUnits: count * Math.log(unit),
    },
    logAges,
    lostLessEntered,
    goneLessEntered: lostLessEntered.map((weight, i) => weight + (events[i] ?? 0)),
    bounded: bounds.map(({ after, by, count: lives }) => ({
      low: after === 0 ? Number.NEGATIVE_INFINITY : Math.log(after / unit),
      high: Math.log(by / unit),
      count: lives,
    })),
    firstExact: flows.ages.find((_, i) => (flows.events[i] ?? 0) > 0 && (flows.ages[i] ?? 0) > 0) ?? 0,
    lastWatched: Math.max(lastGone(flows), ...bounds.map((row) => row.after), 0),
  };
}

/** Geometric mean of the failure ages; of the upper bounds where none is exact; 1 where nothing failed. */
function typicalAge(flows: AgeFlows, bounds: readonly Bounds[]): number {
  let count = 0;
  let logs = 0;
  flows.ages.forEach((age, i) => {
    const failed = flows.events[i] ?? 0;
    if (age === 0 || failed === 0) return;
    count += failed;
    logs += failed * Math.log(age);
  });
  for (const row of bounds) {
    count += row.count;
    logs += row.count * Math.log(row.by);
  }
  return count === 0 ? 1 : Math.exp(logs / count);
}

function lastGone(flows: AgeFlows): number {
  for (let i = flows.ages.length - 1; i >= 0; i--) {
    if ((flows.events[i] ?? 0) + (flows.lost[i] ?? 0) > 0) return flows.ages[i] ?? 0;
  }
  return 0;
}

function total(column: Float64Array): number {
  return column.reduce((sum, count) => sum + count, 0);
}
