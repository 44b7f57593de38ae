// How long it takes from counts, and from rows, to a curve with limits and a fitted Weibull with profile limits.
// Processor time, which says the same on a busy machine; the engine's own work (compiling, collecting) is counted in.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { ExposureCells } from "@/lib/failures/cells";
import { componentFlows } from "@/lib/failures/component-flows";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { LifeSource } from "@/lib/statistics/survival/age-flows";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeColumns } from "@/lib/statistics/survival/life-rows";
import { countsOf, cutOff, makeRegister, rawLives } from "./made-register";

const component = 3;
const question = { component: `part_${component}`, from: undefined, until: cutOff, where: {}, level: 0.95 };
const wanted = 50;

type Say = (what: string, value: string) => void;

export function benchLives(say: Say): void {
  const large = makeRegister(5_000_000, 1_000_000);
  const medians = [3, 5].map((having) => {
    const cells = countsOf(large, component, having);
    const { cold, median } = timed(() => lifeOf(cells));
    say(
      `curve with limits and Weibull with profile limits, 5,000,000 units, 1,000,000 jobs`,
      `${median.toFixed(0)} ms`,
    );
    say(
      `  component in ${having} types of 5: ${cells.windows.length} windows, ${cells.jobs.length} failures; wanted ${wanted} ms; first run`,
      `${cold.toFixed(0)} ms`,
    );
    return median;
  });
  const small = makeRegister(500_000, 100_000);
  const cells = countsOf(small, component, 5);
  const fromCounts = timed(() => lifeOf(cells)).median;
  say("  ten times the units and jobs cost", `${((medians[1] ?? Number.NaN) / fromCounts).toFixed(1)} x`);
  againstR(say, rawLives(small, component), fromCounts);
}

function lifeOf(cells: ExposureCells): void {
  estimate(componentFlows(cells, question));
}

function estimate(source: LifeSource): void {
  const curve = kaplanMeier(source, { confidence: 0.95, interval: "log-log" });
  const fit = fitWeibull(source, { confidence: 0.95, minimumEvents: 5, failedAtZero: { within: 0.5 } });
  if (curve.kind !== "curve" || fit.kind !== "fitted") throw new Error("the made register has a curve and a fit");
}

/** Processor time in milliseconds of the first run, and the median of fifteen that follow it. */
function timed(work: () => void): { cold: number; median: number } {
  const times = Array.from({ length: 16 }, () => {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  const [cold = Number.NaN, ...others] = times;
  return { cold, median: others.sort((a, b) => a - b)[7] ?? Number.NaN };
}

function againstR(say: Say, rows: LifeColumns, fromCounts: number): void {
  const fromRows = timed(() => estimate(rows)).median;
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bench-"));
  try {
    const path = join(folder, "lives.csv");
    const lines = Array.from(rows.exit, (exit, i) => `${rows.entry[i]},${exit},${rows.event[i]}`);
    writeFileSync(path, `entry,exit,event\n${lines.join("\n")}\n`);
    const script = fileURLToPath(new URL("survival.R", import.meta.url));
    const run = spawnSync("Rscript", [script, path], { encoding: "utf8" });
    if (run.status !== 0) {
      say("R with survival is not here: nothing to compare with", "left out");
      return;
    }
    const [seconds = "", version = ""] = run.stdout.trim().split("\n");
    const inR = 1000 * Number(seconds);
    say(`${rows.exit.length} rows: survfit and survreg, ${version.trim()}`, `${inR.toFixed(0)} ms`);
    say(
      "  from counts, with profile limits that R does not give (wanted: 50)",
      `${(inR / fromCounts).toFixed(0)} x as fast`,
    );
    say("  from the same rows without counts (wanted: 1)", `${(inR / fromRows).toFixed(1)} x as fast`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
