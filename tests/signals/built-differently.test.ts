import { expect, test } from "vitest";
import { type CellWeeks, cellWeeks } from "@/lib/signals/cell-weeks";
import type { SignalRecord } from "@/lib/signals/signal-record";
import { signalRun } from "@/lib/signals/signal-run";
import { ageBandOfWeeks } from "@/lib/signals/weeks";
import { firstWeek, type MadeModel, madeRecord } from "./made-record";

// Ovens of one type, two with heating elements and two with burners: elements burn out three times as often, and both show
// as one symptom. Nothing is wrong with any of them.

const weeks = 260;
const heated = (number: string, maker: string, units: number, rate: number): MadeModel => ({
  number,
  maker,
  units,
  rate: () => rate,
  symptom: "will_not_heat",
});

function ovens(seed: number): SignalRecord {
  const electric = [heated("E1", "One", 500, 0.003), heated("E2", "Two", 400, 0.003)];
  const gas = [heated("G1", "Three", 600, 0.001), heated("G2", "Four", 500, 0.001)];
  const [elements, igniters] = [
    madeRecord(electric, weeks, seed, "element"),
    madeRecord(gas, weeks, seed + 1000, "igniter"),
  ];
  const moved = <Row extends { readonly model: number }>(rows: readonly Row[]) =>
    rows.map((row) => ({ ...row, model: row.model + electric.length }));
  return {
    ...elements,
    models: [...elements.models, ...igniters.models].map((model, modelId) => ({ ...model, modelId })),
    cohorts: [...elements.cohorts, ...moved(igniters.cohorts)],
    jobs: [...elements.jobs, ...moved(igniters.jobs)],
  };
}

function symptomOf(record: SignalRecord, model: string): CellWeeks {
  const cells = cellWeeks(record, 1);
  const cell = cells.find(({ key }) => key.kind === "symptom" && key.model === model && key.madeHalf === undefined);
  if (cell === undefined) throw new Error(`${model} is not followed`);
  return cell;
}

test("a symptom is expected as often as models with the same components show it, by hand", () => {
  const record = ovens(1);
  const place = weeks - 10;
  // The quarter of that week is the 20th; its baseline are the twelve quarters that end one before it.
  const block = Math.floor(place / 13);
  const span = { from: 13 * (block - 1 - 12), until: 13 * (block - 1) };
  const band = ageBandOfWeeks(place);
  const baseline = Array.from({ length: span.until - span.from }, (_, i) => span.from + i);
  const atThatAge = baseline.filter((week) => ageBandOfWeeks(week) === band);
  const failures = record.jobs
    .filter(({ model, failedWeek }) => model === 1 && atThatAge.includes(failedWeek - firstWeek))
    .reduce((sum, { jobs }) => sum + jobs, 0);
  expect(failures).toBeGreaterThan(0);
  const { expected } = symptomOf(record, "E1");
  expect(expected[place]).toBeCloseTo((500 * failures) / (400 * atThatAge.length), 10);
});

test("models that are built differently do not stand out by that", () => {
  const listed = Array.from({ length: 12 }, (_, seed) => signalRun(ovens(seed))).flatMap((run) =>
    run.kind === "followed" ? run.signals.map(({ key }) => key) : [],
  );
  expect(listed.length).toBeLessThanOrEqual(1);
});

test("a model that shows it more often without a component at fault still stands out", () => {
  const record = ovens(3);
  const more = madeRecord([heated("E1", "One", 500, 0.003)], weeks, 77, "element").jobs;
  const unexplained = more
    .filter(({ failedWeek }) => failedWeek >= firstWeek + 150)
    .map((jobs) => ({ ...jobs, failed: undefined }));
  const run = signalRun({ ...record, jobs: [...record.jobs, ...unexplained] });
  expect(run.kind === "followed" && run.signals.map(({ word, lead }) => [word, lead.key.model])).toEqual([
    ["will_not_heat", "E1"],
  ]);
});
