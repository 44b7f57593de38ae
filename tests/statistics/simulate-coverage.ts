/**
 * Writes tests/reference/coverage.csv: how often each interval holds the truth, over 20,000 seeded draws each.
 * Run from the repository: node --import tsx tests/statistics/simulate-coverage.ts
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { coverageCases } from "./coverage-cases";
import { randomSource } from "./random-source";

const seed = 20_250_301;
const draws = 20_000;

const lines = coverageCases(0.95).map(({ method, setting, guaranteed, draw }, i) => {
  const random = randomSource(seed + i);
  const runs = method === "poisson-robust" ? draws / 5 : draws;
  let covered = 0;
  for (let run = 0; run < runs; run++) if (draw(random)) covered += 1;
  return `${method},"${setting}",${guaranteed ? "yes" : "no"},${runs},${(covered / runs).toFixed(4)}`;
});

const header = [
  `# Share of draws in which the nominal 95 % interval holds the truth; written by tests/statistics/simulate-coverage.ts`,
  `# Seed ${seed}; with 20000 draws the standard error is 0.0015 at most, with 4000 it is 0.0035`,
  "method,setting,guaranteed,draws,covered",
];
const path = fileURLToPath(new URL("../reference/coverage.csv", import.meta.url));
writeFileSync(path, `${[...header, ...lines].join("\n")}\n`);
