import { expect, test } from "vitest";
import { baselineOf } from "@/lib/signals/block-sums";
import { type CellWeeks, cellWeeks, passCells } from "@/lib/signals/cell-weeks";
import type { CellKey, Cohort, SignalRecord, WeeklyJobs } from "@/lib/signals/signal-record";
import { ageBandOfWeeks, weeksPerBlock } from "@/lib/signals/weeks";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { firstWeek } from "./made-record";

// By definition, with separate code: every count and every unit-week is added up from the rows anew for each cell and week.

/** Short of the two years from which a season would be learnt. */
const weeks = 117;
const lastWeek = firstWeek + weeks - 1;
const models = [
  { maker: "A", number: "A1", productType: "dishwasher" },
  { maker: "A", number: "A2", productType: "dishwasher" },
  { maker: "B", number: "B1", productType: "dishwasher" },
  { maker: "B", number: "B2", productType: "refrigerator" },
  { maker: "C", number: "C1", productType: "refrigerator" },
] as const;

/** Five models whose units came in batches, left now and then, and failed at random; some jobs are closed weeks later. */
function randomRecord(seed: number): SignalRecord {
  const draws = seededDraws(seed);
  const upTo = (n: number) => Math.floor(draws.uniform() * n);
  const cohorts: Cohort[] = models.flatMap((_, model) =>
    Array.from({ length: 6 }, (__, batch): Cohort => {
      const inServiceWeek = firstWeek - 80 + 30 * batch + upTo(10);
      const began = Math.max(firstWeek, inServiceWeek);
      const changes: [number, number][] = [[began, 200 + upTo(100)]];
      if (upTo(2) === 0) changes.push([began + 10 + upTo(60), -upTo(100)]);
      return { model, madeHalf: upTo(4) === 0 ? undefined : 88 + (batch >> 1), inServiceWeek, changes };
    }),
  );
  const jobs = cohorts.flatMap(({ model, madeHalf, inServiceWeek, changes }): WeeklyJobs[] =>
    Array.from({ length: 40 }, () => {
      const failedWeek = (changes[0]?.[0] ?? firstWeek) + upTo(90);
      const failed = ["pump", "board", undefined][upTo(3)];
      const symptom = ["noise", undefined][upTo(2)];
      const codes = [[], ["E1"], ["E1", "E2"]][upTo(3)] ?? [];
      return {
        ...{ model, madeHalf, inServiceWeek, failedWeek, failed, symptom, codes },
        knownWeek: failedWeek + upTo(4),
        jobs: 1 + upTo(2),
      };
    }).filter(({ failedWeek }) => failedWeek <= lastWeek),
  );
  return {
    firstWeek,
    lastWeek,
    models: models.map((model, modelId) => ({ ...model, modelId })),
    cohorts,
    jobs,
    knownWithin: [1],
  };
}

type Place = Pick<Cohort, "model" | "madeHalf">;

function belongs({ model, madeHalf }: Place, key: CellKey): boolean {
  const own = models[model];
  return (
    own?.productType === key.productType &&
    own.maker === key.maker &&
    (key.model === undefined || own.number === key.model) &&
    (key.madeHalf === undefined || madeHalf === key.madeHalf)
  );
}

function counts(job: WeeklyJobs, { kind, word }: CellKey): boolean {
  if (kind === "fault_code") return job.codes?.includes(word) === true;
  return (kind === "component" ? job.failed : job.symptom) === word;
}

function units({ inServiceWeek, changes }: Cohort, week: number, band: number): number {
  if (ageBandOfWeeks(week - inServiceWeek) !== band) return 0;
  return changes.reduce((sum, [from, change]) => (from <= week ? sum + change : sum), 0);
}

function sumOver(from: number, until: number, of: (week: number) => number): number {
  let sum = 0;
  for (let week = from; week < until; week++) sum += of(week);
  return sum;
}

/** Events per unit-week of all others of the type, at one age over the baseline of a week; undefined where none is told. */
function rateOfOthers(record: SignalRecord, key: CellKey, week: number, band: number): number | undefined {
  const span = baselineOf(Math.floor((week - firstWeek) / weeksPerBlock));
  if (span === undefined) return undefined;
  const [from, until] = [firstWeek + span.from * weeksPerBlock, firstWeek + span.until * weeksPerBlock];
  // A fault code of another maker is another code.
  const isComparable = ({ model }: Place) =>
    models[model]?.productType === key.productType && (key.kind !== "fault_code" || models[model]?.maker === key.maker);
  const isOther = (place: Place) => isComparable(place) && !belongs(place, key);
  const others = record.cohorts.filter(isOther);
  const unitWeeks = sumOver(from, until, (at) => others.reduce((sum, cohort) => sum + units(cohort, at, band), 0));
  const events = record.jobs
    .filter((job) => isOther(job) && counts(job, key))
    .filter(({ failedWeek }) => failedWeek >= from && failedWeek < until)
    .filter(({ failedWeek, inServiceWeek }) => ageBandOfWeeks(failedWeek - inServiceWeek) === band);
  return unitWeeks < 52 ? undefined : events.reduce((sum, { jobs }) => sum + jobs, 0) / unitWeeks;
}

const bands = Array.from({ length: 19 }, (_, band) => band);

function expectedOf(record: SignalRecord, key: CellKey, week: number): number {
  const own = record.cohorts.filter((cohort) => belongs(cohort, key));
  return bands.reduce((sum, band) => {
    const atRisk = own.reduce((all, cohort) => all + units(cohort, week, band), 0);
    return atRisk === 0 ? sum : sum + atRisk * (rateOfOthers(record, key, week, band) ?? 0);
  }, 0);
}

const checkedWeeks = [64, 65, 78, 104, 116];

test.each([1, 2])("each week of each cell is what the rows say, counted one by one (seed %i)", (seed) => {
  const record = randomRecord(seed);
  const cells = cellWeeks(record, 0.01);
  expect(new Set(cells.map(({ key }) => key.kind)).size).toBe(3);
  expect(cells.some(({ key }) => key.model === undefined)).toBe(true);
  expect(cells.some(({ key }) => key.madeHalf !== undefined)).toBe(true);
  // Every third cell, others for each seed: the walk is slow.
  for (const { key, expected, observed } of cells.filter((_, i) => i % 3 === seed % 3)) {
    for (const place of checkedWeeks) {
      const week = firstWeek + place;
      expect(expected[place], `${JSON.stringify(key)} ${place}`).toBeCloseTo(expectedOf(record, key, week), 9);
      const jobs = record.jobs
        .filter((job) => belongs(job, key) && counts(job, key))
        .filter(({ failedWeek }) => failedWeek === week)
        .filter((job) => {
          const band = ageBandOfWeeks(week - job.inServiceWeek);
          return rateOfOthers(record, key, week, band) !== undefined;
        });
      expect(observed[place]).toBe(jobs.reduce((sum, one) => sum + one.jobs, 0));
    }
  }
});

test("a cell that passes by is the same as the one that is kept, whenever that is worked out", () => {
  const later: (() => CellWeeks)[] = [];
  const seen: unknown[] = [];
  const plain = ({ key, expected, observed, tolerated, expectedAhead, unknownAt }: CellWeeks) => ({
    ...{ key, expectedAhead, expected: [...expected], observed: [...observed], tolerated: [...tolerated] },
    unknown: checkedWeeks.map((place) => unknownAt(firstWeek + place, firstWeek + place + 1)),
  });
  passCells(randomRecord(3), 0.01, ({ cell, kept }) => {
    seen.push(plain(cell));
    later.push(kept);
  });
  expect(seen.length).toBeGreaterThan(20);
  expect(later.map((kept) => plain(kept()))).toEqual(seen);
});

test("a cell is followed if four quarters in a row are expected to bring enough, and only then", () => {
  const record = randomRecord(4);
  const largest = ({ expected }: CellWeeks) => {
    const quarters = Array.from({ length: weeks / weeksPerBlock }, (_, block) =>
      expected.slice(block * weeksPerBlock, (block + 1) * weeksPerBlock).reduce((sum, mean) => sum + mean, 0),
    );
    return Math.max(...quarters.map((_, i) => quarters.slice(i, i + 4).reduce((sum, mean) => sum + mean, 0)));
  };
  const all = cellWeeks(record, 0.001);
  const ascending = all.map(largest).toSorted((a, b) => a - b);
  const middle = ascending.length >> 1;
  const least = ((ascending[middle] ?? 0) + (ascending[middle + 1] ?? 0)) / 2;
  const due = all.filter((cell) => largest(cell) >= least).map(({ key }) => key);
  expect(due.length).toBeGreaterThan(3);
  expect(due.length).toBeLessThan(all.length - 3);
  expect(cellWeeks(record, least).map(({ key }) => key)).toEqual(due);
});
