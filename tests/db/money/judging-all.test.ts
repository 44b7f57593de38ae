import { sql } from "drizzle-orm";
import sharp from "sharp";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadUnclaimedFacts } from "@/db/queries/money-unclaimed";
import { retirePolicy } from "@/db/writes/coverage/publish-policy";
import { dropRepairSpan, saveRepairSpan, saveUnitFacts } from "@/db/writes/coverage/unit-facts";
import { judgeAllInto } from "@/db/writes/money/judge-all";
import { beginJudgingAll } from "@/db/writes/money/judging-locks";
import { judgeWhatWaits } from "@/db/writes/money/left-to-judge";
import { rebuildUnclaimed, withJudgingTable } from "@/db/writes/money/rebuild-unclaimed";
import { markAllUnits, settleUnclaimed } from "@/db/writes/money/units-to-judge";
import { addAttachment } from "@/db/writes/photos/add-attachment";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { bringBack, removeAttachment } from "@/db/writes/photos/remove-attachment";
import { day } from "@/lib/calendar/day";
import { policy, startWithJobs } from "../claims/claim-files";
import { fileFolder } from "../intake-files";

const files = fileFolder();
beforeEach(async () => {
  await startWithJobs(files, 3);
  await rebuildUnclaimed();
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const rowsIn = (table: string) =>
  readOnly((db) =>
    db.rows<{ row: string }>(sql.raw(`select (to_jsonb(w) - 'missing')::text as row from ${table} w order by 1`)),
  ).then((rows) => rows.map(({ row }) => row));
const unitOf = async (jobNumber: string) => {
  const [row] = await readOnly((db) =>
    db.rows<{ id: string }>(sql`select unit_id::text as id from jobs where job_number = ${jobNumber}`),
  );
  return row?.id ?? "";
};
const noFacts = {
  firstUsedOn: undefined,
  acquiredOn: undefined,
  transferRegisteredOn: undefined,
  exchangedOn: undefined,
  exchangedSerial: undefined,
  serialRemoved: false,
};

// By definition: what a rebuild of everything says is what the change itself should have left.
test("whatever is changed by hand leaves what judging everything anew would say, and is told apart from before", async () => {
  const unitId = await unitOf("J1");
  const receipt = await sharp({ create: { width: 60, height: 40, channels: 3, background: "#fff" } })
    .jpeg()
    .toBuffer();
  const read = await reencodePhoto(receipt);
  if (!read.ok) throw new Error(read.problem);
  const photo = { jobNumber: "J1", subject: "receipt", caption: "Receipt", file: read.photo } as const;
  let id = "";
  const addReceipt = async () => {
    const added = await addAttachment(photo);
    if (added.kind !== "added") throw new Error(added.kind);
    id = added.id;
  };
  const by = { by: "Ana", reason: "Seen on the machine" };
  const changes: readonly (readonly [string, () => Promise<unknown>])[] = [
    ["a receipt more", addReceipt],
    ["taken off", () => removeAttachment({ jobNumber: "J1", id }, "Ana")],
    ["put back", () => bringBack({ jobNumber: "J1", id })],
    ["no serial", () => saveUnitFacts({ unitId, facts: { ...noFacts, serialRemoved: true }, ...by })],
    ["a serial after all", () => saveUnitFacts({ unitId, facts: noFacts, ...by })],
    ["terms retired", () => retirePolicy({ key: policy.key, version: policy.version, ...by })],
  ];
  let before = await rowsIn("unclaimed_work");
  for (const [what, change] of changes) {
    await change();
    const after = await rowsIn("unclaimed_work");
    expect(after, what).not.toEqual(before);
    await rebuildUnclaimed();
    expect(after, what).toEqual(await rowsIn("unclaimed_work"));
    before = after;
  }
  expect(before).toEqual([]);
});

test("a span out for repair is judged with its unit, and so is its end", async () => {
  const unitId = await unitOf("J2");
  const span = { unitId, fromOn: day("2023-01-01"), untilOn: day("2023-02-01"), source: "Ticket", by: "Ana" };
  await saveRepairSpan(span);
  const after = await rowsIn("unclaimed_work");
  await rebuildUnclaimed();
  expect(await rowsIn("unclaimed_work")).toEqual(after);
  await dropRepairSpan(unitId, span.fromOn);
  const dropped = await rowsIn("unclaimed_work");
  await rebuildUnclaimed();
  expect(await rowsIn("unclaimed_work")).toEqual(dropped);
});

test("units judged on threads come out as units judged here", async () => {
  const judged = async (threads: number) =>
    await withJudgingTable(async (table) => {
      expect(await judgeAllInto(table, { threads })).toBe(3);
      return await rowsIn(table);
    });
  const here = await judged(0);
  expect(await judged(2)).toEqual(here);
  expect(here).toEqual(await rowsIn("unclaimed_work"));
});

test("a unit that changes while all are judged waits for nobody, and is judged once more", async () => {
  const unitId = await unitOf("J1");
  await inTransaction(async (tx) => {
    await beginJudgingAll(tx);
    await saveUnitFacts({ unitId, facts: { ...noFacts, serialRemoved: true }, by: "Ana", reason: "Plate is gone" });
  });
  const facts = () => readOnly((db) => loadUnclaimedFacts(db, day("2023-05-10")));
  expect((await facts()).unitsToJudge).toBe(1);
  await settleUnclaimed();
  expect((await facts()).unitsToJudge).toBe(0);
});

test("what a process that ended has left to be judged is judged at the second look, not at the first", async () => {
  const before = await rowsIn("unclaimed_work");
  await inTransaction(async (tx) => {
    await tx.rows(sql`delete from unclaimed_work`);
    await markAllUnits(tx);
  });
  const seen = await judgeWhatWaits(undefined);
  expect(seen).toMatch(/^\d+$/);
  expect(await rowsIn("unclaimed_work")).toEqual([]);
  expect(await judgeWhatWaits(seen)).toBeUndefined();
  expect(await rowsIn("unclaimed_work")).toEqual(before);
});
