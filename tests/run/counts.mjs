import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Sums the reports of the stages that ran. A test that passed only when tried again counts as failed. */
export function countsIn(folder) {
  const counts = ["unit", "database"].map((name) => vitestCounts(reportOf(folder, name)));
  counts.push(playwrightCounts(reportOf(folder, "browser")));
  const sum = (kind) => counts.reduce((total, count) => total + count[kind], 0);
  return { passed: sum("passed"), failed: sum("failed"), skipped: sum("skipped") };
}

function vitestCounts(report) {
  const { numPassedTests = 0, numFailedTests = 0, numPendingTests = 0, numTodoTests = 0 } = report;
  return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests };
}

function playwrightCounts({ stats = {} }) {
  const { expected = 0, unexpected = 0, flaky = 0, skipped = 0 } = stats;
  return { passed: expected, failed: unexpected + flaky, skipped };
}

function reportOf(folder, name) {
  const file = join(folder, `${name}.json`);
  return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
}
