import { requireNonNegative, requirePositive } from "@/lib/statistics/require";

export interface SeasonQuestion {
  /** Events of each calendar month, January first, over all years. */
  readonly events: readonly number[];
  /** What time in service alone would share out among those months; above 0, in any unit. */
  readonly exposure: readonly number[];
  /** Variance over mean of the events: 1 for single failures, more where they come in bunches. */
  readonly dispersion: number;
  /** Chance of finding a season where there is none, in (0, 1). */
  readonly level: number;
}

export type TestedSeason =
  | {
      readonly kind: "season";
      /** Each month's share over an even one, January first: a wave of one year. */
      readonly factors: readonly number[];
      readonly p: number;
    }
  | { readonly kind: "no-season"; readonly p: number }
  | { readonly kind: "too-few"; readonly events: number; readonly needed: number };

/** Events under which a wave could not be told from chance even if it were strong. Own choice, no source. */
const fewestEvents = 40;

/**
 * Whether events follow the year, as one wave with a high and a low; and how strongly, drawn in by the doubt about it.
 * @throws RangeError for lists that are not of twelve, or an argument outside its range
 * Source: Edwards (1961), British Journal of Preventive and Social Medicine 15, 83-86, with the exposure of each month;
 *   drawn in by James & Stein's positive part.
 * Checked: tests/forecast/tested-season.test.ts, by how often it finds what is not there, and a known wave.
 */
export function testedSeason({ events, exposure, dispersion, level }: SeasonQuestion): TestedSeason {
  if (events.length !== 12 || exposure.length !== 12)
    throw new RangeError("events and exposure must hold twelve months");
  for (const [i, count] of events.entries()) requireNonNegative(`events[${i}]`, count);
  for (const [i, time] of exposure.entries()) requirePositive(`exposure[${i}]`, time);
  requirePositive("dispersion", dispersion);
  if (!(level > 0 && level < 1)) throw new RangeError(`level must lie strictly between 0 and 1; it is ${level}`);
  const total = events.reduce((sum, count) => sum + count, 0);
  if (total < fewestEvents * dispersion)
    return { kind: "too-few", events: total, needed: Math.ceil(fewestEvents * dispersion) };
  const lived = exposure.reduce((sum, time) => sum + time, 0);
  const along = (wave: (angle: number) => number) =>
    events.reduce((sum, count, m) => sum + (count - (total * (exposure[m] ?? 0)) / lived) * wave(angleOf(m)), 0);
  const [cosine, sine] = [along(Math.cos), along(Math.sin)];
  // Each is near normal with variance dispersion · total / 2, so this is near chi-square with two degrees.
  const square = (2 * (cosine ** 2 + sine ** 2)) / (dispersion * total);
  const p = Math.exp(-square / 2);
  if (p >= level) return { kind: "no-season", p };
  const kept = Math.max(0, 1 - 2 / square);
  const factors = events.map((_, m) => {
    const wave = (2 * kept * (cosine * Math.cos(angleOf(m)) + sine * Math.sin(angleOf(m)))) / total;
    return Math.max(0.05, 1 + wave);
  });
  return { kind: "season", factors, p };
}

function angleOf(month: number): number {
  return (2 * Math.PI * (month + 0.5)) / 12;
}
