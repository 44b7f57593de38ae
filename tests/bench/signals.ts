// How soon signals find what is planted, and how often they cry wolf, beside two plain rules, over many invented companies.
import { median } from "./median";
import { type Judged, type JudgedCompany, judgeCompany } from "./signals-judged";
import { powerTable } from "./signals-power";
import { targets } from "./signals-targets";

const rules = [
  ["signals", "signals"],
  ["signals, no clumps", "unclumped"],
  ["ten highest raw rates", "ranking"],
  ["3 sigma on months", "threeSigma"],
] as const;

/** How many more companies are judged before the tables are printed again: a long run that is stopped has told something. */
const printedEvery = 10;

export function benchSignals(companies: number): void {
  console.log(powerTable());
  const before = process.cpuUsage();
  const judged: JudgedCompany[] = [];
  for (let seed = 1; seed <= companies; seed++) {
    judged.push(judgeCompany(seed, { unclumped: true }));
    if (seed % printedEvery !== 0 && seed !== companies) continue;
    printTables(judged, process.cpuUsage(before).user / 1e6);
  }
}

function printTables(judged: readonly JudgedCompany[], seconds: number): void {
  const years = judged.reduce((sum, company) => sum + company.years, 0);
  console.log(
    `\n${judged.length} companies, ${years.toFixed(0)} company-years, ${seconds.toFixed(0)} s of processor time`,
  );
  const of = (rule: (typeof rules)[number][1]) => judged.flatMap((company) => company[rule] ?? []);
  for (const [name, rule] of rules) console.log(ruleLine(name, of(rule), years));
  console.log(
    "\n| trouble | extra failures expected in its first half-year | rule | median weeks | within 13 | 26 | 52 | ever |\n|---|---|---|---|---|---|---|---|",
  );
  for (const { key } of targets) {
    const extra = judged.reduce((sum, { extraInHalfYear }) => sum + (extraInHalfYear.get(key) ?? 0), 0) / judged.length;
    for (const [name, rule] of rules) console.log(troubleLine(key, extra, name, of(rule)));
  }
  console.log(`\nfalse signals most often: ${mostOften(judged.flatMap(({ signals }) => signals.falseNames))}`);
}

function ruleLine(name: string, judged: readonly Judged[], years: number): string {
  const wrong = judged.reduce((sum, { falseSignals }) => sum + falseSignals, 0) / years;
  const decoys = judged.filter(({ decoyWeeks }) => decoyWeeks > 0).length;
  return `${name}: ${wrong.toFixed(2)} false a company-year; the decoy in ${decoys} of ${judged.length} companies`;
}

function troubleLine(key: string, extra: number, name: string, judged: readonly Judged[]): string {
  const weeks = judged.map(({ found }) => found.get(key)?.weeks ?? Number.POSITIVE_INFINITY);
  const within = (limit: number) =>
    `${Math.round((100 * weeks.filter((delay) => delay <= limit).length) / weeks.length)} %`;
  const middle = median(weeks);
  const words = Number.isFinite(middle) ? String(middle) : "not found";
  return `| ${key} | ${extra.toFixed(1)} | ${name} | ${words} | ${within(13)} | ${within(26)} | ${within(52)} | ${within(1e6)} |`;
}

function mostOften(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name.trim(), (counts.get(name.trim()) ?? 0) + 1);
  return [...counts]
    .toSorted((a, b) => b[1] - a[1])
    .slice(0, 5)
    .map(([name, count]) => `${name} (${count})`)
    .join("; ");
}
