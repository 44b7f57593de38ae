import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { makers, models } from "@/synthetic-data/models";
import { noDrainJobNumber } from "@/synthetic-data/no-drain-jobs";
import { scenarioOf } from "@/synthetic-data/scenario";
import { acceptable, type DemoReading, type Row, writeAndRead } from "./demo-reading";

let demo: DemoReading;
let closed: readonly Row[];
beforeAll(async () => {
  demo = await writeAndRead({ seed: 1, size: 1 });
  closed = acceptable(demo, "jobs.csv", demo.jobs).filter(({ status }) => status === "closed");
}, 120_000);

const share = (rows: readonly Row[], is: (row: Row) => boolean) => rows.filter(is).length / rows.length;

// The ranges are the trade handbook's benchmarks for synthetic data; its marks stand beside each (common practice, no
// source, unless it says otherwise).
describe("the company looks like one of four technicians over six years", () => {
  test("about 12,000 units and 15,000 jobs", () => {
    expect(demo.units.length).toBeGreaterThan(11_900);
    expect(demo.units.length).toBeLessThan(12_150);
    expect(demo.jobs.length).toBeGreaterThan(14_000);
    expect(demo.jobs.length).toBeLessThan(16_000);
    expect(new Set(closed.map(({ technician }) => technician)).size).toBe(4);
  });

  test.each<[string, number, number, (row: Row) => boolean]>([
    ["done at the first visit (surveys: 53, 60, 72 %)", 0.53, 0.72, ({ visits }) => visits === "1"],
    [
      "paid by maker, campaign or contract",
      0.3,
      0.4,
      ({ payer }) => ["maker", "campaign", "contract"].includes(payer ?? ""),
    ],
    ["callbacks", 0.03, 0.08, ({ payer }) => payer === "own_guarantee"],
    ["serial missing or not of the register", 0.02, 0.04, ({ serial }) => !serials().has(serial ?? "")],
    ["suffix of the model missing", 0.1, 0.2, ({ model }) => roots.has(model ?? "")],
  ])("closed jobs: %s between %d and %d", (_, low, high, is) => {
    expect(share(closed, is)).toBeGreaterThanOrEqual(low);
    expect(share(closed, is)).toBeLessThanOrEqual(high);
  });

  test.each<[string, number, number]>([
    ["void", 0.02, 0.04],
    ["duplicate", 0.01, 0.02],
  ])("%s rows between %d and %d of all", (status, low, high) => {
    const part = share(demo.jobs, (row) => row.status === status);
    expect(part).toBeGreaterThanOrEqual(low);
    expect(part).toBeLessThanOrEqual(high);
  });

  test("foreign objects are 20 to 40 % of calls about pumps and their path", () => {
    const pumps = closed.filter(({ component }) => component === "drain_pump" || component === "drain_path");
    const part = share(pumps, ({ cause }) => cause === "foreign_object");
    expect(part).toBeGreaterThan(0.2);
    expect(part).toBeLessThan(0.4);
  });

  test("half of the callbacks say which job they return to", () => {
    const linked = share(
      closed.filter(({ payer }) => payer === "own_guarantee"),
      ({ callback_of }) => callback_of !== "",
    );
    expect(linked).toBeGreaterThan(0.42);
    expect(linked).toBeLessThan(0.58);
  });

  test("55 to 70 % of rows use a part, 1.2 lines each", () => {
    const lines = acceptable(demo, "part-lines.csv", demo.partLines);
    const withPart = new Set(lines.map(({ job_number }) => job_number));
    expect(withPart.size / demo.jobs.length).toBeGreaterThan(0.55);
    expect(withPart.size / demo.jobs.length).toBeLessThan(0.7);
    expect(lines.length / withPart.size).toBeGreaterThan(1.1);
    expect(lines.length / withPart.size).toBeLessThan(1.3);
  });

  test("25 to 40 % of units lack the day of sale, most of these have another", () => {
    const part = share(demo.units, ({ sold_on }) => sold_on === "");
    expect(part).toBeGreaterThan(0.25);
    expect(part).toBeLessThan(0.4);
    expect(
      share(demo.units, ({ sold_on, delivered_on, installed_on }) => !sold_on && !delivered_on && !installed_on),
    ).toBeLessThan(0.08);
  });

  test("20 to 40 % of failures of washers, dryers and refrigerators carry readings", () => {
    const kinds = ["front_load_washer", "top_load_washer", "electric_dryer", "gas_dryer", "refrigerator"];
    const failures = closed.filter(
      ({ cause, product_type }) => cause === "component" && kinds.includes(product_type ?? ""),
    );
    const read = new Set(demo.readings.map(({ job_number }) => job_number));
    const part = share(failures, ({ job_number }) => read.has(job_number));
    expect(part).toBeGreaterThan(0.2);
    expect(part).toBeLessThan(0.4);
  });

  test("refrigerators call more from June to August than from December to February", () => {
    const months = (...of: string[]) =>
      closed.filter(
        ({ product_type, requested_on }) =>
          product_type === "refrigerator" && of.includes(requested_on?.slice(5, 7) ?? ""),
      ).length;
    expect(months("06", "07", "08")).toBeGreaterThan(1.5 * months("12", "01", "02"));
  });

  test("installation, use and nothing found weigh more in the first 90 days", () => {
    const installed = new Map(demo.units.map(({ serial, installed_on }) => [serial, installed_on]));
    const age = ({ serial, requested_on }: Row) =>
      (Date.parse(requested_on ?? "") - Date.parse(installed.get(serial) ?? "")) / 86_400_000;
    const soft = ({ cause }: Row) => ["installation", "education", "no_fault_found"].includes(cause ?? "");
    const aged = closed.filter((row) => age(row) >= 0);
    expect(
      share(
        aged.filter((row) => age(row) < 90),
        soft,
      ),
    ).toBeGreaterThan(
      2 *
        share(
          aged.filter((row) => age(row) >= 90),
          soft,
        ),
    );
  });
});

test("contracts show all that a paper can state: a wait, a deductible, a limit, a renewal, an end and a cancellation", () => {
  const having = (is: (row: Row) => boolean) => demo.contracts.filter(is).length;
  expect(demo.contracts.length / demo.units.length).toBeCloseTo(0.25, 1);
  expect(new Set(demo.contracts.map(({ contract_number }) => contract_number)).size).toBe(demo.contracts.length);
  for (const column of ["wait_days", "deductible", "limit", "cancelled_on"])
    expect(
      having((row) => row[column] !== ""),
      column,
    ).toBeGreaterThan(50);
  expect(having(({ ends_on }) => (ends_on ?? "") < demo.truth.until)).toBeGreaterThan(50);
  expect(having(({ ends_on }) => (ends_on ?? "") > demo.truth.until)).toBeGreaterThan(1000);
});

test("about two in a thousand rows are to be held, in every file of rows", () => {
  const rows = demo.units.length + demo.jobs.length + demo.partLines.length + demo.readings.length;
  expect(demo.truth.heldRows.length / rows).toBeGreaterThan(0.0015);
  expect(demo.truth.heldRows.length / rows).toBeLessThan(0.003);
  expect(new Set(demo.truth.heldRows.map(({ file }) => file)).size).toBe(4);
});

test("truth counts what the rows show: leaks by job number, rows of each kind of dirt", () => {
  const byNumber = new Map(demo.jobs.map((job) => [job.job_number, job]));
  expect(demo.truth.leaks.billedToCustomerThoughCovered.length).toBeGreaterThan(100);
  for (const number of demo.truth.leaks.billedToCustomerThoughCovered) {
    expect(byNumber.get(number)).toMatchObject({ payer: "customer", cause: "component", status: "closed" });
  }
  for (const row of demo.truth.acceptedDirt.serial_blank) expect(demo.jobs[row - 2]?.serial).toBe("");
  for (const row of demo.truth.acceptedDirt.suffix_missing)
    expect(roots.has(demo.jobs[row - 2]?.model ?? "")).toBe(true);
});

test("no day lies after the records end", () => {
  const days = [...demo.units, ...demo.jobs, ...demo.partLines]
    .flatMap((row) => Object.values(row))
    .filter((cell) => /^\d{4}-\d{2}-\d{2}$/.test(cell));
  expect(days.length).toBeGreaterThan(50_000);
  expect(days.filter((on) => on > demo.truth.until)).toEqual([]);
});

test("the same seed and size write the same bytes; another seed does not", async () => {
  const [first, again, other] = [
    await writeAndRead({ seed: 5, size: 0.02 }),
    await writeAndRead({ seed: 5, size: 0.02 }),
    await writeAndRead({ seed: 6, size: 0.02 }),
  ];
  const files = readdirSync(first.folder, { recursive: true, encoding: "utf8" }).filter((file) => /\.\w+$/.test(file));
  expect(files.length).toBeGreaterThan(70);
  for (const file of files)
    expect(readFileSync(join(again.folder, file)).equals(readFileSync(join(first.folder, file)))).toBe(true);
  expect(other.jobs).not.toEqual(first.jobs);
}, 60_000);

test("the ten jobs told in full keep their numbers and stories whatever seed and size", async () => {
  const small = await writeAndRead({ seed: 9, size: 0.01 });
  const numbers = Array.from({ length: 10 }, (_, index) => noDrainJobNumber(index));
  const told = (from: DemoReading) => from.jobs.filter(({ job_number }) => numbers.includes(job_number ?? ""));
  expect(told(small)).toHaveLength(10);
  expect(told(small)).toEqual(told(demo));
  expect(small.photos).toEqual(demo.photos);
}, 60_000);

test.each([
  { seed: -1, size: 1, until: "2026-10-31" },
  { seed: 1, size: 0, until: "2026-10-31" },
  { seed: 1, size: 1, until: "2031-10-31" },
  { seed: 1, size: 1, until: "2026-02-30" },
])("seed $seed, size $size, until $until is refused", (asked) => {
  expect(() => scenarioOf(asked)).toThrow(RangeError);
});

const roots = new Set(models.map(({ root }) => root));
const serials = () => (known ??= new Set(demo.units.map(({ serial }) => serial ?? "")));
let known: ReadonlySet<string> | undefined;

test("no two models share a beginning, so that a number without its suffix names one", () => {
  for (const one of models) {
    expect(models.filter(({ maker, root }) => maker === one.maker && root.startsWith(one.root))).toEqual([one]);
  }
  expect(Object.keys(makers)).toHaveLength(3);
});
