// Facts about a unit reach the decision of its jobs from where they are stored.
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadUnitFacts } from "@/db/queries/unit-facts";
import { saveRepairSpan, saveUnitFacts } from "@/db/writes/coverage/unit-facts";
import { day } from "@/lib/calendar/day";
import { decideCoverage } from "@/lib/coverage/decide-coverage";
import { jobCoverageFacts } from "@/lib/coverage/job-coverage-facts";
import { payItems } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import { samplePolicy } from "../coverage/sample-policy";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const sold = { sold_on: "2022-03-01", territory: "US-CA", owner_number: 1 };

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const unitId = async (serial: string) => {
  const [row] = await readOnly((db) =>
    db.rows<{ id: string }>(sql`select unit_id::text as id from units where serial = ${serial}`),
  );
  return row?.id ?? "";
};
const nothing = {
  firstUsedOn: undefined,
  acquiredOn: undefined,
  transferRegisteredOn: undefined,
  exchangedOn: undefined,
  exchangedSerial: undefined,
  serialRemoved: false,
};
const told = { by: "Robin", reason: "Letter of the owner" };

async function partsOf(number: string, policy: Partial<Policy> = {}): Promise<string> {
  const stored = await readOnly((db) => loadJobRecord(db, number));
  if (stored === undefined) throw new Error(`no job ${number}`);
  const { parts } = decideCoverage(jobCoverageFacts(stored.record, stored.file), [
    samplePolicy({ maker: "Hearth-Wick", ...policy }),
  ]).items;
  return "reason" in parts ? parts.reason : parts.verdict;
}

/** Reported 5 March 2023, four days after the year from 1 March 2022 has ended. */
const late = { requested_on: "2023-03-05", completed_on: "2023-03-08" };

test("a service contract pays by its own paper", async () => {
  await files.load(csv([unit("A1", sold)]));
  await files.load(csv([job("J1", "A1")]));
  const plan: Partial<Policy> = {
    key: "plan-gold",
    payer: { kind: "contract", name: "Plan company" },
    start: { from: { event: "contract_sale" }, fallbacks: [] },
    contract: { type: "extended" },
  };
  expect(await partsOf("J1", plan)).toBe("no_policy");
  const paper = {
    contract_number: "C-1",
    maker: "Hearth-Wick",
    serial: "A1",
    plan: "plan-gold",
    starts_on: "2023-03-02",
    ends_on: "2026-03-01",
  };
  await files.load(csv([paper]));
  expect(await partsOf("J1", plan)).toBe("covered");
  await files.load(csv([{ ...paper, cancelled_on: "2023-04-30" }]));
  expect(await partsOf("J1", plan)).toBe("contract_cancelled");
});

test("a transfer is asked for, refused or passed by the days that were entered", async () => {
  await files.load(csv([unit("A1", { ...sold, owner_number: 2 })]));
  await files.load(csv([job("J1", "A1", { requested_on: "2022-12-01", completed_on: "2022-12-03" })]));
  const policy: Partial<Policy> = { transfer: { kind: "register_within", within: { n: 90, unit: "day" } } };
  expect(await partsOf("J1", policy)).toBe("transfer_date_unknown");
  const id = await unitId("A1");
  // 1 June 2022 + 90 days is 30 August.
  const days = { ...nothing, acquiredOn: day("2022-06-01"), transferRegisteredOn: day("2022-08-31") };
  expect(await saveUnitFacts({ unitId: id, facts: days, ...told })).toBe(2);
  expect(await partsOf("J1", policy)).toBe("transfer_excluded");
  const mended = { ...days, transferRegisteredOn: day("2022-08-30") };
  expect(await saveUnitFacts({ unitId: id, facts: mended, by: "Kim", reason: "Card of the maker" })).toBe(1);
  expect(await partsOf("J1", policy)).toBe("covered");
  const { edits } = await readOnly((db) => loadUnitFacts(db, id));
  expect(
    edits.map(({ columnName, valueBefore, value, by, reason }) => [columnName, valueBefore, value, by, reason]),
  ).toEqual([
    ["transfer_registered_on", "2022-08-31", "2022-08-30", "Kim", "Card of the maker"],
    ["transfer_registered_on", null, "2022-08-31", "Robin", "Letter of the owner"],
    ["acquired_on", null, "2022-06-01", "Robin", "Letter of the owner"],
  ]);
});

test("a unit in exchange carries the dates of the one that was handed back", async () => {
  await files.load(
    csv([
      unit("A1", sold),
      unit("B1", { ...sold, made: "2022-09", sold_on: "2022-10-01", installed_on: "2022-10-01" }),
    ]),
  );
  await files.load(csv([job("J1", "B1", late)]));
  expect(await partsOf("J1")).toBe("covered");
  const facts = { ...nothing, exchangedOn: day("2022-10-01"), exchangedSerial: "a-1" };
  await saveUnitFacts({ unitId: await unitId("B1"), facts, ...told });
  expect(await partsOf("J1")).toBe("term_ended");
  expect(await partsOf("J1", { replacementUnit: "new_term" })).toBe("covered");
});

test("a serial that was removed decides nothing", async () => {
  await files.load(csv([unit("A1", sold)]));
  await files.load(csv([job("J1", "A1")]));
  await saveUnitFacts({ unitId: await unitId("A1"), facts: { ...nothing, serialRemoved: true }, ...told });
  expect(await partsOf("J1")).toBe("invalid_data");
});

test("time out for repair counts, whether it was entered or an earlier job on the maker's account shows it", async () => {
  await files.load(csv([unit("A1", sold)]));
  await files.load(csv([job("J9", "A1", { ...late, component: "inlet_valve", symptom: "will_not_fill" })]));
  expect(await partsOf("J9")).toBe("term_ended");
  const span = {
    unitId: await unitId("A1"),
    fromOn: day("2022-06-01"),
    untilOn: day("2022-06-04"),
    source: "Hand-over note",
    by: "Robin",
  };
  expect(await saveRepairSpan(span)).toBe(true);
  expect(await partsOf("J9")).toBe("covered");
  expect(await saveRepairSpan({ ...span, untilOn: day("2022-06-03") })).toBe(true);
  expect(await partsOf("J9")).toBe("term_ended");
  await files.load(csv([job("J1", "A1", { requested_on: "2022-08-10", completed_on: "2022-08-10", payer: "maker" })]));
  expect(await partsOf("J9")).toBe("covered");
});

test("a repair that did not help keeps a Californian term alive", async () => {
  await files.load(csv([unit("A1", sold)]));
  await files.load(
    csv([
      job("J1", "A1", { requested_on: "2023-02-20", completed_on: "2023-02-22", payer: "maker" }),
      job("J2", "A1", { requested_on: "2023-04-01", completed_on: "2023-04-02", payer: "maker" }),
    ]),
  );
  expect(await partsOf("J2")).toBe("covered");
});

test("a part that an earlier job fitted on the maker's account has its own term", async () => {
  await files.load(csv([unit("A1", { ...sold, territory: "US-NV" })]));
  const filed = (payer: string) => [
    job("J1", "A1", { requested_on: "2023-02-01", completed_on: "2023-02-02", payer }),
    job("J2", "A1", { ...late, payer }),
  ];
  const policy: Partial<Policy> = {
    replacementPart: {
      kind: "own_term",
      term: { n: 90, unit: "day" },
      pays: payItems,
      combine: "later_of_with_remainder",
    },
  };
  await files.load(csv(filed("maker")));
  expect(await partsOf("J2", policy)).toBe("term_ended");
  await files.load(csv([partLine("J1", 1)]));
  expect(await partsOf("J2", policy)).toBe("covered");
  await files.load(csv(filed("customer")));
  expect(await partsOf("J2", policy)).toBe("term_ended");
});

test.each([
  ["nobody who enters it", { by: " " }],
  ["no paper", { reason: "" }],
])("%s is refused", async (_name, changes) => {
  await expect(saveUnitFacts({ unitId: "1", facts: nothing, ...told, ...changes })).rejects.toThrow(RangeError);
});
