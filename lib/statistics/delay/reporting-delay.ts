import { requireWholeNumber } from "../require";

/**
 * Distribution of the delay from event to report, from reports alone. A recent event shows up only if its delay was
 * short (right truncation), so the plain histogram of delays is biased towards short ones; this estimate is not.
 * @param reports  how many reports had a given delay, among events old enough that a delay of up to `longestSeen`
 *   would have been seen; whole numbers, delay at most longestSeen; in any order, the same pair as often as it comes
 * @returns for each delay from 0 to the longest seen, the chance of being reported within it, *given* that it is
 *   reported within the longest delay ever seen (nothing can be known beyond), and its standard error
 * @throws RangeError for an argument outside its range
 * Source: Kalbfleisch & Lawless (1991), Statistica Sinica 1, 19-32; Kalbfleisch, Lawless & Robinson (1991),
 *   Technometrics 33, 273-285.
 * Checked: tests/statistics/delay.test.ts, by definition and against the chain ladder, which is the same estimate.
 */
export function reportingDelay(reports: readonly DelayCount[]): ReportingDelay {
  requireReports(reports);
  const delays = countedBy(reports, ({ delay }) => delay);
  if (delays.length === 0) return { kind: "no-reports" };
  const windows = countedBy(reports, ({ longestSeen }) => longestSeen);
  const longest = windows.length - 1;
  // Reports of at most d days among events old enough for d: all with at most d, less those of younger events.
  let atMost = sumOf(delays) - sumOf(windows.slice(0, longest));
  const steps: DelayStep[] = [];
  let within = 1;
  let relativeVariance = 0;
  // From the longest delay down: the chance of exactly d, given at most d, is measured on events old enough for d.
  for (let delay = longest; delay >= 0; delay--) {
    steps.push({ delay, within, standardError: within * Math.sqrt(relativeVariance) });
    const exactly = delays[delay] ?? 0;
    if (exactly > 0) {
      within *= 1 - exactly / atMost;
      if (exactly < atMost) relativeVariance += exactly / (atMost * (atMost - exactly));
    }
    atMost += (windows[delay - 1] ?? 0) - exactly;
  }
  return { kind: "estimated", steps: steps.reverse() };
}

export interface DelayCount {
  readonly delay: number;
  readonly longestSeen: number;
  readonly count: number;
}

export type ReportingDelay = EstimatedDelay | { readonly kind: "no-reports" };

export interface EstimatedDelay {
  readonly kind: "estimated";
  /** By delay: entry d is that of delay d, from 0 on without a gap. */
  readonly steps: readonly DelayStep[];
}

export interface DelayStep {
  readonly delay: number;
  readonly within: number;
  readonly standardError: number;
}

/** Counts by a whole number, from 0 on; empty where nothing was counted. */
function countedBy(reports: readonly DelayCount[], numberOf: (report: DelayCount) => number): number[] {
  const counts: number[] = [];
  for (const report of reports) {
    if (report.count === 0) continue;
    const at = numberOf(report);
    while (counts.length <= at) counts.push(0);
    counts[at] = (counts[at] ?? 0) + report.count;
  }
  return counts;
}

function sumOf(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

function requireReports(reports: readonly DelayCount[]): void {
  reports.forEach(({ delay, longestSeen, count }, i) => {
    requireWholeNumber(`reports[${i}].delay`, delay);
    requireWholeNumber(`reports[${i}].longestSeen`, longestSeen);
    requireWholeNumber(`reports[${i}].count`, count);
    if (delay > longestSeen) {
      throw new RangeError(`reports[${i}].delay must not exceed longestSeen (${longestSeen}); it is ${delay}`);
    }
  });
}
