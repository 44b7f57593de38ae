import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadMoneyCases } from "@/db/queries/money-cases";
import { loadUnclaimedFacts, loadUnclaimedList } from "@/db/queries/money-unclaimed";
import { editJob } from "@/db/writes/edit-job";
import { judgeUnclaimed, type Yardstick } from "@/db/writes/money/judge-unclaimed";
import { loadYardstick } from "@/db/writes/money/load-yardstick";
import { rebuildUnclaimed } from "@/db/writes/money/rebuild-unclaimed";
import { day } from "@/lib/calendar/day";
import { payItems } from "@/lib/domain/pay-item";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { samplePolicy } from "../../coverage/sample-policy";
import { act, draftOf, send, startWithJobs } from "../claims/claim-files";
import { csv, fileFolder, job, unit } from "../intake-files";
import { anyWork } from "./any-work";

const files = fileFolder();
const all = { kind: "run", after: undefined, until: undefined } as const;
beforeEach(() => startWithJobs(files, 3));
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const rebuild = () => rebuildUnclaimed();
const rows = () =>
  readOnly((db) => db.rows<{ row: string }>(sql`select to_jsonb(w)::text as row from unclaimed_work w order by 1`));

test("covered work is never filed until its day has passed, and late from the day after", async () => {
  await rebuild();
  const seen = async (on: string) =>
    (await readOnly((db) => loadUnclaimedFacts(db, day(on)))).totals.map(({ leak, rows: cases }) => [leak, cases]);
  const list = await readOnly((db) => loadUnclaimedList(db, anyWork, day("2023-05-10"), { offset: 0, limit: 10 }));
  const due = list.rows[0]?.dueOn;
  if (due === undefined) throw new Error("no filing day");
  expect(list.total).toBe(3);
  expect(list.rows[0]?.reason).toContain("no claim was made");
  expect(await seen(due)).toEqual([["never filed", 3]]);
  expect(await seen("2024-05-03")).toEqual([["late", 3]]);
});

test("a draft, what follows it, and a withdrawal change the list in their own transactions", async () => {
  await rebuild();
  const claim = await draftOf("J1");
  expect(await rows()).toHaveLength(2);
  await send(claim, day("2023-05-12"));
  await act(claim, {
    what: "answered",
    on: day("2023-06-01"),
    answer: { kind: "rejected", reason: "late", payerText: "LATE" },
  });
  const [kept] = await readOnly((db) =>
    db.rows(
      sql`select leak, claim_number, due_on is not null as clock from unclaimed_work where claim_number is not null`,
    ),
  );
  expect(kept).toEqual({ leak: "not corrected", claim_number: claim, clock: true });
  const before = await rows();
  await rebuild();
  expect(await rows()).toEqual(before);
});

test("an edited job is judged anew at once, and a load of jobs too", async () => {
  await rebuild();
  await editJob({ jobNumber: "J1", column: "cause", value: "foreign_object", by: "Ana", reason: "A coin." });
  expect(await rows()).toHaveLength(2);
  await files.load(
    csv([job("J9", "A2", { requested_on: "2023-06-01", completed_on: "2023-06-02", component: "door_lock" })]),
  );
  const after = await rows();
  await rebuild();
  expect(await rows()).toEqual(after);
});

test("what is left out before judging could never have been covered", async () => {
  const days = [
    "2022-09-02",
    "2023-03-01",
    "2024-08-31",
    "2024-09-01",
    "2024-09-20",
    "2027-09-05",
    "2032-10-01",
    "2041-01-01",
  ];
  const components = ["drain_pump", "drive_motor", "control_board", "door_lock", ""];
  const causes = ["component", "foreign_object", "no_fault_found", "not_determined"];
  const serials = Array.from({ length: 20 }, (_, n) => `B${n}`);
  await files.load(
    csv(
      serials.map((serial, n) =>
        unit(serial, { sold_on: n % 3 === 0 ? "" : "2022-09-01", installed_on: n % 4 === 0 ? "" : "2022-09-02" }),
      ),
    ),
  );
  const made = days.flatMap((on, d) =>
    components.flatMap((component, c) =>
      causes.map((cause, k) =>
        job(`M${d}-${c}-${k}`, serials[(7 * d + 3 * c + k) % 20] ?? "B0", {
          requested_on: on,
          completed_on: on,
          component,
          cause,
        }),
      ),
    ),
  );
  await files.load(
    csv(
      serials.slice(0, 12).map((serial, n) => ({
        contract_number: `P${n}`,
        maker: "Hearth-Wick",
        serial,
        plan: "plan-gold",
        starts_on: days[1 + (n % 3)] ?? "",
        ends_on: n % 2 === 0 ? "2027-09-05" : "2027-09-04",
      })),
    ),
  );
  const plan = samplePolicy({
    key: "plan-gold",
    payer: { kind: "contract", name: "Plan company" },
    start: { from: { event: "contract_sale" }, fallbacks: [] },
    terms: [{ covers: { kind: "whole_unit" }, pays: payItems, term: { n: 9, unit: "year" } }],
    contract: { type: "extended" },
  });
  await files.load(JSON.stringify({ schema: "ohmsworth/policies/1", policies: [plan] }));
  const loaded = await files.load(csv(made), "add and set aside");
  expect(loaded.kind).toBe("added");
  const [some, every] = await readOnly(async (db) => {
    const yardstick = await loadYardstick(db);
    const judged = async (everyJob: boolean, by: Partial<Yardstick> = {}) =>
      judgeUnclaimed(await loadMoneyCases(db, all, yardstick.policies, { everyJob }), { ...yardstick, ...by });
    return [await judged(false), await judged(true, { checkEvidence })] as const;
  });
  const sorted = (found: readonly unknown[]) => found.map((row) => JSON.stringify(row)).sort();
  expect(sorted(some)).toEqual(sorted(every));
  expect(every.length).toBeGreaterThan(3);
  expect(every.some(({ payer }) => payer === "Plan company")).toBe(true);
});
