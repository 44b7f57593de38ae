import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { previewRetention, removeWhatIsDue, setRetention } from "@/db/retention/run-retention";
import { asDatabaseOwner } from "../own-database";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { somebody } from "./people/signed-in";

const files = fileFolder();
const madeAt = Date.parse("2026-01-01T00:00:00Z");
/** The instant so many days after everything in these tests was made. */
const after = (days: number) => new Date(madeAt + days * 86_400_000);
const rowsOf = (due: Awaited<ReturnType<typeof previewRetention>>) =>
  Object.fromEntries(due.filter(({ rows }) => rows > 0).map(({ kind, rows }) => [kind, rows]));

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
  await files.load(csv([job("J1", "A1"), job("J2", "A2")]));
  await asDatabaseOwner("truncate retention_limits, removed_attachments, sign_ins, sessions");
  const { id: personId } = await somebody("reader");
  await inTransaction(async (tx) => {
    const at = new Date(madeAt).toISOString();
    await tx.execute(
      sql`insert into file_drafts values (gen_random_uuid(), 'x.csv', 7, ${"a".repeat(64)}, 'look', null, null, '{}', ${at}, ${at})`,
    );
    await tx.execute(
      sql`insert into idempotency_keys values ('r', 'k', 'h', 'done', gen_random_uuid(), ${at}, 200, '{}', ${at})`,
    );
    await tx.execute(sql`
      insert into held_rows (batch_id, row, cells, problems, state, reason)
      select batch_id, n, '{"name": "somebody"}', '[]', (array['held', 'left_out', 'refused'])[n], (array[null, 'said so', 'a total'])[n]
      from batches, generate_series(1, 3) n where kind = 'jobs'`);
    await tx.execute(sql`update batches set added_at = ${at}`);
    await tx.execute(sql`
      insert into sessions (id, token, person_id, expires_at, created_at, updated_at) values ('s', 's', ${personId}, ${at}, ${at}, ${at})`);
    await tx.execute(sql`
      insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, received_sha256, stored_sha256, stored_bytes, content)
      select unit_id, job_id, 1, 'meter', '', 'image/jpeg', ${"a".repeat(64)}, ${"a".repeat(64)}, 3, '\\x010203' from jobs`);
    await tx.execute(
      sql`insert into sign_ins (at, outcome, came_from, known_device) values (${at}, 'no match', '10.0.0.1', false)`,
    );
    await tx.execute(sql`update jobs set requested_on = null, completed_on = '2026-01-01'`);
    await tx.execute(sql`
      insert into removed_attachments select unit_id, job_id, 2, '{}', '\\x01', ${at}, 'Kim' from jobs where job_number = 'J1'`);
  });
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

test("each kind goes on the day after its last one, and not before; a trial removes nothing", async () => {
  expect(rowsOf(await previewRetention(after(0.9)))).toEqual({});
  expect(rowsOf(await previewRetention(after(30)))).toEqual({ answers: 1 });
  expect(rowsOf(await previewRetention(after(30.1)))).toEqual({
    answers: 1,
    drafts: 1,
    "photos taken off": 1,
    sessions: 1,
  });
  expect(rowsOf(await removeWhatIsDue(after(90.1)))).toEqual({
    answers: 1,
    drafts: 1,
    "photos taken off": 1,
    "left-out rows": 2,
    sessions: 1,
  });
  expect(rowsOf(await removeWhatIsDue(after(90.1)))).toEqual({});
  const held = await readOnly((db) => db.rows(sql`select state, cells::text as cells from held_rows order by row`));
  expect(held).toEqual([
    { state: "held", cells: '{"name": "somebody"}' }, // it still waits for somebody
    { state: "left_out", cells: "{}" },
    { state: "refused", cells: "{}" },
  ]);
  expect(rowsOf(await removeWhatIsDue(after(365)))).toEqual({});
  expect(rowsOf(await removeWhatIsDue(after(365.1)))).toEqual({ "sign-ins": 1 });
  expect(rowsOf(await removeWhatIsDue(after(2556)))).toEqual({});
  expect(rowsOf(await removeWhatIsDue(after(2558.1)))).toEqual({ photos: 2 });
});

test("a photo stays while a claim on its job is open", async () => {
  await inTransaction((tx) =>
    tx.execute(sql`
      with policy as (insert into policies (key, name, version, effective_from, document, document_sha256, source_document, approved_by, published_at)
        values ('p', 'P', 1, '2020-01-01', '{}', 'h', 's', 'Kim', now()) returning policy_id)
      insert into claims (unit_id, job_id, claim_id, claim_number, policy_id, payer, state, currency, claimed_cents, decision, evidence, built_at, version)
      select unit_id, job_id, 1, 'C-1', policy_id, 'P', 'draft', 'USD', 0, '{}', '{}', now(), 1 from jobs, policy where job_number = 'J1'`),
  );
  expect(rowsOf(await removeWhatIsDue(after(3000)))).toMatchObject({ photos: 1 });
  const left = await readOnly((db) =>
    db.rows(sql`select j.job_number as job from attachments join jobs j using (unit_id, job_id)`),
  );
  expect(left).toEqual([{ job: "J1" }]);
});

test("a company's own limit holds, for longer or for good, and is refused where it cannot be", async () => {
  await setRetention("drafts", 60, { by: "Kim", now: after(0) });
  await setRetention("photos taken off", null, { by: "Kim", now: after(0) });
  expect(rowsOf(await previewRetention(after(59)))).toEqual({ answers: 1, sessions: 1 });
  expect(rowsOf(await previewRetention(after(61)))).toEqual({ answers: 1, drafts: 1, sessions: 1 });
  await expect(setRetention("jobs", 10, { by: "Kim", now: after(0) })).rejects.toThrow(/kind: there is no “jobs”/);
  await expect(setRetention("drafts", 0, { by: "Kim", now: after(0) })).rejects.toThrow(/days: a whole number/);
  await expect(setRetention("drafts", 1.5, { by: "Kim", now: after(0) })).rejects.toThrow(RangeError);
  await expect(setRetention("drafts", 9, { by: "", now: after(0) })).rejects.toThrow(/by: is blank/);
});
