// Forecasts of real parts, judged by months that no method saw: loss and coverage of all methods side by side.
import { readFileSync } from "node:fs";
import { backTest } from "@/lib/forecast/back-test";
import { chooseMethod } from "@/lib/forecast/choose-method";
import type { DemandMethod } from "@/lib/forecast/demand-method";
import { demandMethods, forecastDemand, learnDemand, testSettings } from "@/lib/forecast/forecast-demand";
import { judgedQuantiles, lossScale } from "@/lib/forecast/scaled-loss";
import { countBand, shareInsideCentral } from "@/lib/statistics/demand/count-band";
import { countQuantile } from "@/lib/statistics/demand/count-distribution";
import { learnLevels, type MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import { pinballLoss } from "@/lib/statistics/demand/pinball-loss";

const horizon = 6;
const origins = 6;
const fewestMonths = 24;

/**
 * Prints the table. Everything that is learnt from other parts is learnt from the months before the first judged
 * origin; the method chosen for a part is chosen on those months too.
 * @param path of a CSV with one row per part, its number first, then one column per month, empty where not recorded
 * @param held months at the end that do not exist for this run: with 11 held, the months judged are those on which
 *   settings were tuned, and the last six origins stay unseen
 */
export function benchForecast(path: string, held: number): void {
  const parts = readParts(path)
    .map((counts) => counts.slice(0, counts.length - held))
    .filter((counts) => counts.filter((count) => count !== undefined).length >= fewestMonths);
  const firstOrigin = (counts: MonthlyCounts) => counts.length - horizon - origins + 1;
  const past = parts.map((counts) => counts.slice(0, firstOrigin(counts)));
  const levels = processorSeconds(() => learnLevels(past));
  const methods = demandMethods(levels.result);
  console.log(
    `${parts.length} parts, ${origins} origins, horizons 1 to ${horizon}; learnt in ${levels.seconds.toFixed(1)} s`,
  );
  console.log(header());
  const rows = methods.map((method) => ({ method, ...judged(parts, () => method, firstOrigin) }));
  const choices = chosenMethods(past, methods);
  const chosen = judged(parts, (i) => choices[i] ?? firstOf(methods), firstOrigin);
  console.log(line("chosen per part", chosen));
  for (const row of rows.toSorted((a, b) => a.loss - b.loss)) console.log(line(row.method.key, row));
  for (const half of [0, 1]) {
    // Settings were chosen on the first of each pair of parts; the second of each pair shows what that was worth.
    const own = parts.filter((_, i) => i % 2 === half);
    const [ours, simple] = ["shared-levels", "smoothing"].map((key) => {
      const method = methods.find((one) => one.key === key) ?? firstOf(methods);
      return judged(own, () => method, firstOrigin).loss;
    });
    console.log(
      `${half === 0 ? "parts settings were chosen on" : "parts kept back from that"}: shared-levels ${ours?.toFixed(3)}, smoothing ${simple?.toFixed(3)}, ` +
        `${(100 * (1 - (ours ?? 0) / (simple ?? 1))).toFixed(1)} % less`,
    );
  }
  const counts = new Map<string, number>();
  for (const { key } of choices) counts.set(key, (counts.get(key) ?? 0) + 1);
  console.log(`chosen: ${[...counts].map(([key, times]) => `${key} ${times}`).join(", ")}`);
}

/** Time of the whole forecast with its back-test, on one core. */
export function benchForecastSpeed(path: string): void {
  const parts = readParts(path)
    .filter((counts) => counts.length >= fewestMonths)
    .slice(0, 1000);
  const learnt = processorSeconds(() => learnDemand(parts));
  const all = processorSeconds(() =>
    parts.map((history) => forecastDemand(history, { horizon: 24, knowledge: learnt.result })),
  );
  console.log(
    `${all.result.length} parts x 24 months with back-test: ${(learnt.seconds + all.seconds).toFixed(1)} s of processor time, ` +
      `of which learning ${learnt.seconds.toFixed(1)} s`,
  );
}

/** The choice that the product would make, seen from the first judged origin. */
function chosenMethods(past: readonly MonthlyCounts[], methods: readonly DemandMethod[]): readonly DemandMethod[] {
  const { beforeTest } = learnDemand(past);
  const tested = demandMethods(beforeTest);
  return past.map((history) => {
    const { key } = chooseMethod(backTest(history, { methods: tested, ...testSettings }), "shared-levels");
    return methods.find((method) => method.key === key) ?? firstOf(methods);
  });
}

function firstOf(methods: readonly DemandMethod[]): DemandMethod {
  const [first] = methods;
  if (first === undefined) throw new RangeError("methods must hold at least one");
  return first;
}

interface Judged {
  readonly loss: number;
  readonly byQuantile: readonly number[];
  readonly inside60: number;
  readonly inside90: number;
  readonly central90: number;
}

/** Each loss is divided by its part's in-sample loss first; then all are averaged. */
function judged(
  parts: readonly MonthlyCounts[],
  methodOf: (part: number) => DemandMethod,
  firstOrigin: (counts: MonthlyCounts) => number,
): Judged {
  const sums = judgedQuantiles.map(() => ({ total: 0, parts: 0 }));
  let [inside60, inside90, central90, months] = [0, 0, 0, 0];
  for (const [i, counts] of parts.entries()) {
    const prepared = methodOf(i).prepare(counts);
    for (let origin = firstOrigin(counts); origin < firstOrigin(counts) + origins; origin++) {
      const scale = lossScale(counts.slice(0, origin).filter((count) => count !== undefined));
      for (const [ahead, distribution] of prepared(origin).months(horizon).entries()) {
        const outcome = counts[origin + ahead];
        if (outcome === undefined) continue;
        for (const [q, probability] of judgedQuantiles.entries()) {
          const [sum, unit] = [sums[q], scale[q] ?? 0];
          if (sum === undefined || unit <= 0) continue;
          const quantile = countQuantile(distribution, probability);
          sum.total += pinballLoss({ quantile, probability, outcome, scale: "plain" }) / unit;
          sum.parts += 1;
        }
        const [narrow, wide] = [countBand(distribution, 0.6), countBand(distribution, 0.9)];
        months += 1;
        if (outcome >= narrow.low && outcome <= narrow.high) inside60 += 1;
        if (outcome >= wide.low && outcome <= wide.high) inside90 += 1;
        central90 += shareInsideCentral(distribution, 0.9, outcome);
      }
    }
  }
  const byQuantile = sums.map(({ total, parts: judgedParts }) => total / judgedParts);
  return {
    loss: byQuantile.reduce((sum, loss) => sum + loss, 0) / byQuantile.length,
    byQuantile,
    inside60: inside60 / months,
    inside90: inside90 / months,
    central90: central90 / months,
  };
}

function readParts(path: string): readonly MonthlyCounts[] {
  const [, ...lines] = readFileSync(path, "utf8").trim().split(/\r?\n/);
  return lines.map((text) => {
    const counts = text
      .split(",")
      .slice(1)
      .map((cell) => (cell.trim() === "" ? undefined : Number(cell)));
    return counts.slice(0, counts.findLastIndex((count) => count !== undefined) + 1);
  });
}

function processorSeconds<T>(work: () => T): { readonly result: T; readonly seconds: number } {
  const before = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(before);
  return { result, seconds: (user + system) / 1e6 };
}

function header(): string {
  const quantiles = judgedQuantiles.map((probability) => `q${probability}`.padStart(8)).join("");
  return `${"method".padEnd(26)}${"loss".padStart(8)}${quantiles}${"in 60 %".padStart(9)}${"in 90 %".padStart(9)}${"central 90 %".padStart(14)}`;
}

function line(name: string, { loss, byQuantile, inside60, inside90, central90 }: Judged): string {
  const percent = (share: number, width: number) => `${(100 * share).toFixed(1)}`.padStart(width);
  const quantiles = byQuantile.map((value) => value.toFixed(3).padStart(8)).join("");
  return `${name.padEnd(26)}${loss.toFixed(3).padStart(8)}${quantiles}${percent(inside60, 9)}${percent(inside90, 9)}${percent(central90, 14)}`;
}
