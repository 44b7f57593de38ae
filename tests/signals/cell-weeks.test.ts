import { describe, expect, test } from "vitest";
import { cellWeeks } from "@/lib/signals/cell-weeks";
import { signalRun } from "@/lib/signals/signal-run";
import { firstWeek, madeRecord } from "./made-record";

const steady = () => 0.002;

function cellOf(cells: ReturnType<typeof cellWeeks>, model: string) {
  const found = cells.find(({ key }) => key.model === model && key.madeHalf === undefined && key.kind === "component");
  if (found === undefined) throw new Error(`no cell of ${model}`);
  return found;
}

describe("expectation", () => {
  // By hand: two models of 1,000 and 2,000 units; in every week A has 2 failures and B 6, so B's rate is 0.003 a unit-week
  // at every age, and 1,000 units of A are expected to have 3 a week. The record is 2 years; rates come from the first of them.
  const record = {
    ...madeRecord(
      [
        { number: "A1", maker: "A", units: 1000, rate: steady },
        { number: "B1", maker: "B", units: 2000, rate: steady },
      ],
      130,
      1,
    ),
    jobs: Array.from({ length: 130 }, (_, week) => [
      {
        model: 0,
        madeHalf: 90,
        inServiceWeek: firstWeek,
        failedWeek: firstWeek + week,
        knownWeek: firstWeek + week,
        failed: "pump",
        symptom: undefined,
        jobs: 2,
      },
      {
        model: 1,
        madeHalf: 90,
        inServiceWeek: firstWeek,
        failedWeek: firstWeek + week,
        knownWeek: firstWeek + week,
        failed: "pump",
        symptom: undefined,
        jobs: 6,
      },
    ]).flat(),
  };

  test("comes from the other models' rates at the same age, never from the group itself", () => {
    // At the start of the second year nobody has been older than a year before, so those ages are not covered yet.
    const cell = cellOf(cellWeeks(record, 0.1), "A1");
    expect(cell.expected[64]).toBe(0);
    expect(cell.observed[64]).toBe(0);
    // A unit of a second cohort, a year younger, is at ages that B has been at.
    const younger = {
      ...record,
      cohorts: [
        ...record.cohorts,
        { model: 0, madeHalf: 92, inServiceWeek: firstWeek + 65, changes: [[firstWeek + 65, 500]] as const },
      ],
    };
    expect(cellOf(cellWeeks(younger, 0.1), "A1").expected[70]).toBeCloseTo(500 * 0.003, 9);
  });

  test("nothing is expected before there is a year and a quarter of records", () => {
    const younger = {
      ...record,
      cohorts: [
        ...record.cohorts,
        { model: 0, madeHalf: 92, inServiceWeek: firstWeek + 20, changes: [[firstWeek + 20, 500]] as const },
      ],
    };
    const cell = cellOf(cellWeeks(younger, 0.1), "A1");
    expect([...cell.expected.slice(0, 65)].every((mean) => mean === 0)).toBe(true);
    expect(cell.expected[65]).toBeGreaterThan(0);
  });

  test("a week's expectation does not change when later weeks are added", () => {
    const longer = madeRecord(
      [
        { number: "A1", maker: "A", units: 900, rate: steady },
        { number: "B1", maker: "B", units: 2000, rate: steady },
      ],
      260,
      3,
    );
    const shorter = {
      ...longer,
      lastWeek: longer.firstWeek + 199,
      jobs: longer.jobs.filter(({ failedWeek }) => failedWeek < longer.firstWeek + 200),
    };
    const [long, short] = [cellOf(cellWeeks(longer, 0.1), "A1"), cellOf(cellWeeks(shorter, 0.1), "A1")];
    expect([...long.expected.slice(0, 200)]).toEqual([...short.expected]);
    expect([...long.observed.slice(0, 200)]).toEqual([...short.observed]);
  });
});

test("a model that never had the component is not what others are measured against", () => {
  const models = [
    { number: "A1", maker: "A", units: 2000, rate: steady },
    { number: "B1", maker: "B", units: 2000, rate: steady },
    { number: "C1", maker: "C", units: 4000, rate: () => 0 },
  ];
  const record = madeRecord(models, 200, 5);
  const younger = {
    ...record,
    cohorts: [
      ...record.cohorts,
      { model: 0, madeHalf: 92, inServiceWeek: firstWeek + 110, changes: [[firstWeek + 110, 1000]] as const },
    ],
  };
  const expected = cellOf(cellWeeks(younger, 0.1), "A1").expected[120] ?? 0;
  // B alone tells 0.002 a unit-week, within what 2,000 units tell in a year; with C counted it would be a third of that.
  expect(expected).toBeGreaterThan(1000 * 0.0013);
});

describe("the run of a company", () => {
  const models = (rate: (age: number, week: number) => number) => [
    { number: "A1", maker: "A", units: 3000, rate },
    { number: "B1", maker: "B", units: 3000, rate: steady },
    { number: "C1", maker: "C", units: 3000, rate: steady },
  ];
  const staggered = (record: ReturnType<typeof madeRecord>) => ({
    ...record,
    // Earlier cohorts, so that every age has been seen before.
    cohorts: record.models.flatMap((_, model) =>
      [0, 52, 104, 156].map((older) => ({
        model,
        madeHalf: 90,
        inServiceWeek: firstWeek - older,
        changes: [[firstWeek, 750]] as const,
      })),
    ),
    jobs: record.jobs.map((job, i) => ({ ...job, inServiceWeek: firstWeek - 52 * (i % 4) })),
  });

  test("a doubled rate is found, with its onset near where it began", () => {
    const record = staggered(
      madeRecord(
        models((_, week) => (week >= firstWeek + 150 ? 0.004 : 0.002)),
        180,
        11,
      ),
    );
    const run = signalRun(record);
    expect(run.kind).toBe("followed");
    if (run.kind !== "followed") return;
    expect(run.signals.map(({ key }) => key)).toEqual(["pump~dishwasher~A"]);
    const onset = (run.signals[0]?.lead.onsetWeek ?? 0) - firstWeek;
    expect(onset).toBeGreaterThan(135);
    expect(onset).toBeLessThan(160);
  });

  test("nothing is found where nothing changed", () => {
    const run = signalRun(staggered(madeRecord(models(steady), 200, 12)));
    expect(run.kind === "followed" && run.signals).toEqual([]);
  });

  test("without units or with too short a record it says so", () => {
    const record = madeRecord(models(steady), 60, 1);
    expect(signalRun(record)).toEqual({ kind: "too-short", weeks: 60, needed: 78 });
    expect(signalRun({ ...record, cohorts: [] })).toEqual({ kind: "no-units" });
  });
});
