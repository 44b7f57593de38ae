import { requireWholeNumber } from "../require";

/**
 * Distribution of the delay from event to report, from reports alone. A recent event shows up only if its delay was
 * short (right truncation), so the plain histogram of delays is biased towards short ones; this estimate is not.
 * @param reports  how many reports had a given delay, among events old enough that a delay of up to `longestSeen`
 *   would have been seen; whole numbers, delay at most longestSeen
 * @returns for each delay from 0 to the longest seen, the chance of being reported within it, *given* that it is
 *   reported within the longest delay ever seen (nothing can be known beyond), and its standard error
 * @throws RangeError for an argument outside its range
 * Source: Kalbfleisch & Lawless (1991), Statistica Sinica 1, 19-32; Kalbfleisch, Lawless & Robinson (1991),
 *   Technometrics 33, 273-285.
 * Checked: tests/statistics/delay.test.ts, by definition and against the chain ladder, which is the same estimate.
 */
export function reportingDelay(reports: readonly DelayCount[]): ReportingDelay {
  requireReports(reports);
  if (!reports.some(({ count }) => count > 0)) return { kind: "no-reports" };
  const longest = Math.max(...reports.map(({ longestSeen }) => longestSeen));
  const steps: DelayStep[] = [];
  let within = 1;
  let relativeVariance = 0;
  // From the longest delay down: the chance of exactly d, given at most d, is measured on events old enough for d.
  for (let delay = longest; delay >= 0; delay--) {
    steps.push({ delay, within, standardError: within * Math.sqrt(relativeVariance) });
    const seen = reports.filter((report) => report.longestSeen >= delay && report.delay <= delay);
    const atMost = seen.reduce((sum, { count }) => sum + count, 0);
    const exactly = seen.reduce((sum, report) => sum + (report.delay === delay ? report.count : 0), 0);
    if (exactly === 0) continue;
    within *= 1 - exactly / atMost;
    if (exactly < atMost) relativeVariance += exactly / (atMost * (atMost - exactly));
  }
  return { kind: "estimated", steps: steps.reverse() };
}

export interface DelayCount {
  readonly delay: number;
  readonly longestSeen: number;
  readonly count: number;
}

export type ReportingDelay =
  | { readonly kind: "estimated"; readonly steps: readonly DelayStep[] }
  | { readonly kind: "no-reports" };

export interface DelayStep {
  readonly delay: number;
  readonly within: number;
  readonly standardError: number;
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
