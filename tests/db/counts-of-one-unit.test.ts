// A change of one job counts only the units of its unit's day anew. Held against counting everything, after each of
// two dozen steps that a seed chooses.
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { editJob, liftJobEdit } from "@/db/writes/edit-job";
import { recount } from "@/db/writes/recount";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();

/** Three on one day, one a day later, one retired, one before the records, one never placed, and one that only a job names. */
const units = [
  unit("A1"),
  unit("A2"),
  unit("A3", { retired_on: "2024-12-31" }),
  unit("B1", { installed_on: "2022-03-02" }),
  unit("C1", { made: "2020-12", installed_on: "2021-01-05" }),
  unit("D1", { installed_on: "", made: "" }),
];
const serials = ["A1", "A2", "A3", "B1", "C1", "D1", "Z9"];

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify({ ...shopDocument, repeatDays: 30 }));
  batchOf(await files.load(csv(units)));
  const jobs = serials.flatMap((serial) =>
    [1, 2, 3].map((n) =>
      job(`${serial}-${n}`, serial, {
        requested_on: `2023-0${n}-10`,
        completed_on: `2023-0${n}-12`,
        component: n === 3 ? "control_board" : "drain_pump",
      }),
    ),
  );
  batchOf(await files.load(csv(jobs)));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const changes = [
  ["cause", "foreign_object"],
  ["cause", "component"],
  ["component", "control_board"],
  ["component", "drain_pump"],
  ["symptom", "leaks"],
  ["requested_on", "2023-02-20"],
  ["requested_on", "2022-05-01"],
  ["status", "void"],
  ["status", "closed"],
] as const;

/** Numbers below `below`, the same ones each time. */
function chooser(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647; // Lehmer's generator with the multiplier of C++'s minstd_rand, from memory
    return state % below;
  };
}

const differing = async () => (await recount()).filter((each) => each.differing > 0);

test("after each of two dozen changes the counts are those of the rows", async () => {
  const choose = chooser(11);
  const edits: number[] = [];
  let made = 0;
  expect(await differing()).toEqual([]);
  for (let step = 0; step < 24; step++) {
    const [column, value] = changes[choose(changes.length)] ?? changes[0];
    const jobNumber = `${serials[choose(serials.length)]}-${1 + choose(3)}`;
    const edited = await editJob({ jobNumber, column, value, by: "Robin", reason: "As the seed says." });
    if (edited.kind === "edited") {
      edits.push(edited.editId);
      made += 1;
    }
    const lifted = choose(4) === 0 ? edits.pop() : undefined;
    if (lifted !== undefined) await liftJobEdit({ editId: lifted, by: "Robin" });
    expect(await differing(), `after step ${step}: ${column} of ${jobNumber} to ${value}`).toEqual([]);
  }
  expect(made).toBeGreaterThan(10);
});

test("counts that were wrong before are put right for the day of the unit", async () => {
  await inTransaction(async (tx) => {
    await tx.execute(sql`delete from job_cells where in_service_on is not null`);
    await tx.execute(sql`delete from repeated_jobs`);
  });
  for (const jobNumber of ["A1-1", "B1-1", "C1-1"])
    await editJob({ jobNumber, column: "cause_note", value: "Seen again.", by: "Robin", reason: "A look." });
  expect(await differing()).toEqual([]);
});
