// A batch that touches few of all units has only the days of those counted anew. Held against counting everything, after
// each of some dozens of loads and takings-back that a seed chooses.
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { minimalStandard } from "../minimal-standard";
import { batchOf, csv, fileFolder, job, type Row, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const steps = 36;

/** Eighty of the register on few days, two of them without a day, and twenty that only jobs name: batches touch fewer than one in five. */
const known = Array.from({ length: 80 }, (_, n) => `A${n}`);
const unregistered = Array.from({ length: 20 }, (_, n) => `Z${n}`);
const serials = [...known, ...unregistered];
const inService = ["2022-03-01", "2022-03-02", "2022-07-15", "2021-01-05"];
const dayOf = (n: number) => `2023-0${1 + (n % 4)}-1${n % 3}`;
const madeOf = (serial: string) => (serial === "A7" || serial === "A8" ? { installed_on: "", made: "" } : {});
const modelOf = (n: number) => (n % 3 === 0 ? "FW7700" : "FW5500");

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify({ ...shopDocument, repeatDays: 30 }));
  batchOf(await files.load(csv(known.map((serial, n) => unitRow(serial, n)))));
  batchOf(
    await files.load(
      csv(serials.flatMap((serial, n) => [1, 2].map((time) => jobRow(`${serial}-${time}`, serial, n, n + time)))),
    ),
  );
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

function unitRow(serial: string, n: number, more: Row = {}): Row {
  return unit(serial, {
    model: modelOf(n),
    made: "2020-12",
    installed_on: inService[n % 4] ?? "",
    ...madeOf(serial),
    ...more,
  });
}

function jobRow(number: string, serial: string, n: number, day: number, more: Row = {}): Row {
  const on = dayOf(day);
  const component = day % 2 === 0 ? "drain_pump" : "control_board";
  return job(number, serial, {
    model: modelOf(n),
    product_type: "front_load_washer",
    requested_on: on,
    completed_on: on,
    component,
    ...more,
  });
}

const differing = async () => (await recount()).filter((each) => each.differing > 0);

test("after each of some dozens of loads and takings-back the counts are those of the rows", async () => {
  const next = minimalStandard(20);
  const choose = (below: number) => Math.floor(next() * below);
  const loads: number[] = [];
  const done = { units: 0, jobs: 0, joined: 0, taken: 0 };
  expect(await differing()).toEqual([]);

  /** Some of the units, each with its number. */
  const some = () =>
    [...new Set(Array.from({ length: 1 + choose(6) }, () => choose(serials.length)))].map(
      (n) => [serials[n] ?? "", n] as const,
    );
  const steppers: readonly ((step: number) => Promise<string>)[] = [
    async (step) => {
      const rows = some().map(([serial, n]) => jobRow(`N${step}-${serial}`, serial, n, choose(12)));
      loads.push(batchOf(await files.load(csv([...rows, jobRow(`S${step}`, "", 1, choose(12))]), "add and set aside")));
      done.jobs += 1;
      return "new jobs, one of them without a serial";
    },
    async () => {
      const rows = some().map(([serial, n]) =>
        jobRow(`${serial}-1`, serial, n, choose(12), { cause: choose(3) === 0 ? "foreign_object" : "component" }),
      );
      loads.push(batchOf(await files.load(csv(rows), "add and set aside")));
      done.jobs += 1;
      return "jobs that are told otherwise";
    },
    async (step) => {
      const rows = some().map(([serial, n]) =>
        unitRow(
          serial,
          n,
          choose(2) === 0 ? { retired_on: "2024-05-01" } : { installed_on: inService[choose(4)] ?? "" },
        ),
      );
      loads.push(batchOf(await files.load(csv([...rows, unitRow(`New${step}`, step)]), "add and set aside")));
      done.units += 1;
      return "units";
    },
    async (step) => {
      const [[serial, n] = ["A1", 1]] = some();
      batchOf(await files.load(csv([jobRow(`L${step}`, "", n, step)])));
      loads.push(batchOf(await files.load(csv([jobRow(`L${step}`, serial, n, step)]), "add and set aside")));
      done.joined += 1;
      return "a job whose serial comes later";
    },
    async () => {
      const [batch] = loads.splice(choose(loads.length), 1);
      if (batch === undefined) return "nothing to take back";
      await takeBack(batch);
      done.taken += 1;
      return "a load taken back";
    },
  ];
  for (let step = 0; step < steps; step++) {
    const what = await steppers[choose(steppers.length)]?.(step);
    expect(await differing(), `after step ${step}: ${what}`).toEqual([]);
  }
  for (const times of Object.values(done)) expect(times).toBeGreaterThan(1);
}, 300_000);
