import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadEditDifferences } from "@/db/queries/edit-differences";
import { loadHandJoin } from "@/db/queries/hand-join";
import { loadJobFields } from "@/db/queries/job-fields";
import { loadJobHistory } from "@/db/queries/job-history";
import { liftJobEdit } from "@/db/writes/edit-job";
import { editableFields, editJobField } from "@/db/writes/edit-job-field";
import { joinJobToUnit } from "@/db/writes/joining/join-job-to-unit";
import { undoJobJoin } from "@/db/writes/joining/undo-job-join";
import { recount } from "@/db/writes/recount";
import { upholdJobEdit } from "@/db/writes/uphold-job-edit";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
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

const said = { jobNumber: "J1", by: "Robin", reason: "The invoice." };
const shown = async (field: string) => (await readOnly((db) => loadJobFields(db, "J1")))?.cells[field];
const differences = async () => await readOnly((db) => loadEditDifferences(db, "J1"));

test("a field is set in the notation of a file, and checked with everything else that the job says", async () => {
  await files.load(csv([job("J1", "A1", { labour: "10.00" })]));
  for (const field of editableFields)
    expect(await editJobField({ ...said, field, text: (await shown(field)) ?? "" }), field).toEqual({ kind: "same" });
  expect(await editJobField({ ...said, field: "labour", text: "129.50" })).toMatchObject({ kind: "edited" });
  expect([await shown("labour"), await shown("complaint")]).toEqual(["129.50", ""]);
  const wrong = async (field: string, text: string) => {
    const result = await editJobField({ ...said, field, text });
    return result.kind === "problems" ? result.problems.map(({ column, problem }) => `${column} ${problem}`) : result;
  };
  expect(await wrong("completed_on", "2023-04-30")).toEqual([
    "completed_on is before requested_on, which is 2023-05-01",
  ]);
  expect(await wrong("completed_on", "")).toEqual(["completed_on is blank"]);
  expect(await wrong("component", "oven_igniter")).toEqual(["component is no component of this kind of appliance"]);
  expect(await wrong("labour", "$5")).toEqual(["labour is not an amount"]);
  expect(await wrong("callback_of", "J1")).toEqual(["callback_of names this job itself"]);
  await expect(editJobField({ ...said, field: "serial", text: "A2" })).rejects.toThrow(RangeError);
});

test("an edit that was upheld against a file is asked about again only by a file that says something else", async () => {
  await files.load(csv([job("J1", "A1")]));
  const edited = await editJobField({ ...said, field: "cause", text: "foreign_object" });
  if (edited.kind !== "edited") throw new Error(edited.kind);
  await files.load(csv([job("J1", "A1", { visits: 2 })]));
  expect(await differences()).toMatchObject([{ column: "cause", value: "foreign_object", fileValue: "component" }]);
  expect(await upholdJobEdit({ editId: edited.editId, by: "Sam" })).toBe(true);
  expect(await differences()).toEqual([]);
  await files.load(csv([job("J1", "A1", { visits: 3 })]));
  expect(await differences()).toEqual([]);
  await files.load(csv([job("J1", "A1", { cause: "suds_detergent" })]));
  const [open] = await differences();
  expect(open).toMatchObject({ fileValue: "suds_detergent" });
  expect(await liftJobEdit({ editId: open?.editId ?? 0, by: "Kim" })).toBe(true);
  expect([await shown("cause"), await differences()]).toEqual(["suds_detergent", []]);
  const { fields } = await readOnly((db) => loadJobHistory(db, "J1"));
  expect(fields[0]).toMatchObject({ column: "cause", after: "suds_detergent", by: { kind: "person", name: "Kim" } });
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
});

test("a job that a person joined to its unit goes back when that is undone, with its parts and its counts", async () => {
  await files.load(csv([job("J1", "", { product_type: "front_load_washer" })]));
  await files.load(csv([partLine("J1", 1)]));
  const before = await stateOfData();
  const join = { ...said, maker: "Hearth-Wick", serial: "A1" };
  expect(await undoJobJoin("J1")).toEqual({ kind: "not joined by hand" });
  expect(await joinJobToUnit(join)).toMatchObject({ kind: "joined" });
  expect(await readOnly((db) => loadHandJoin(db, "J1"))).toMatchObject({ by: "Robin", reason: "The invoice." });
  expect(await undoJobJoin("J1")).toEqual({ kind: "undone" });
  expect(await stateOfData()).toEqual(before);
  expect(await readOnly((db) => loadHandJoin(db, "J1"))).toBeUndefined();
  expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  expect(await joinJobToUnit(join), "and can be joined again").toMatchObject({ kind: "joined" });
});
