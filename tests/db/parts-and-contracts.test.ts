import { afterAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, shopDocument, startAfresh, unit } from "./intake-files";
import { counts, problems } from "./load-outcome";
import { stateOfData } from "./state-of-data";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const part = {
  part_number: "P-100",
  description: "Drain pump",
  component: "drain_pump",
  cost: "41.50",
  list_price: "69.00",
  effective_on: "2023-01-01",
};

test("prices of a part stand beside each other by the day from which they hold, and are taken back", async () => {
  const first = await files.load(csv([part, { ...part, cost: "44.00", effective_on: "2024-01-01" }]));
  expect(counts(first)).toEqual([2, 2, 0, 0, 0]);
  const before = await stateOfData();
  const second = await files.load(
    csv([
      { ...part, part_number: "p100", cost: "45.00", effective_on: "2024-01-01" },
      { ...part, part_number: "P-100-A", effective_on: "" },
    ]),
  );
  expect(counts(second)).toEqual([2, 1, 1, 0, 0]);
  expect((await stateOfData()).parts?.filter((row) => row.includes('"cost_cents": 4500'))).toHaveLength(1);
  await takeBack(batchOf(second));
  expect(await stateOfData()).toEqual(before);
  await takeBack(batchOf(first));
  expect((await stateOfData()).parts).toEqual([]);
});

test("one part and day told twice and differently is held", async () => {
  expect(counts(await files.load(csv([part, { ...part, cost: "1.00" }]), "add and set aside"))).toEqual([
    2, 0, 0, 0, 2,
  ]);
});

const contract = {
  contract_number: "C-1",
  maker: "Hearth-Wick",
  serial: "A1",
  plan: "home",
  starts_on: "2023-01-01",
  ends_on: "2025-12-31",
  deductible: "50.00",
};

test("contracts hang on units on file, and hold them there", async () => {
  expect(problems(await files.load(csv([{ ...contract, serial: "A9" }])))).toEqual([
    "2 serial is not the serial of a unit of Hearth-Wick on file",
  ]);
  const made = batchOf(await files.load(csv([contract])));
  expect(counts(await files.load(csv([{ ...contract, cancelled_on: "2024-05-01" }])))).toEqual([1, 0, 1, 0, 0]);
  expect(await takeBack(2)).toMatchObject({
    staying: [{ noun: "unit", rows: 1, reason: `rows of load ${made} hang on it` }],
  });
  await takeBack(made);
  expect((await stateOfData()).contracts).toHaveLength(1);
});
