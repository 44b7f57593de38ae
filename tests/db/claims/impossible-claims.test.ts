import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { findClaimsThatDisagree } from "@/db/queries/claims-that-disagree";
import { day } from "@/lib/calendar/day";
import { fileFolder } from "../intake-files";
import { draftOf, send, startWithJobs } from "./claim-files";

const files = fileFolder();
beforeAll(async () => {
  await startWithJobs(files, 2);
  await send(await draftOf("J1"), day("2023-05-12"));
  await draftOf("J2");
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const draft = "claim_number like '%-0002'";
const sent = "claim_number like '%-0001'";
const event = (what: string, act: string, more: string) =>
  `insert into claim_events select unit_id, claim_id, version + 1, now(), '${what}', '', 'Ana', '${act}'::jsonb, ${more} from claims where`;

const gone = (claimId: string, fate: string, by: string) =>
  `insert into part_fates select unit_id, ${claimId}, 1, 1, '${fate}', '2023-05-12', '', '${by}', '', now() from claims where ${sent}`;

// What the database itself refuses, whoever writes to it: the name is that of the constraint.
test.each([
  [`update claims set state = 'sent' where ${draft}`, "claims_sent_has_submission"],
  [
    `update claims set state = 'sent', submission = 1, first_sent_on = '2023-05-12', last_sent_on = '2023-05-12' where ${draft}`,
    "claims_latest_submission",
  ],
  [`update claims set answered_on = '2023-05-12' where ${draft}`, "claims_answer_after_sending"],
  [`update claims set answered_on = '2023-05-01' where ${sent}`, "claims_sent_before_what_follows"],
  [`update claims set paid_cents = 1 where ${sent}`, "claims_money_has_its_day"],
  [`update claims set approved_cents = claimed_cents + 1 where ${sent}`, "claims_approved_within_asked"],
  [`update claims set clawed_back_cents = 1 where ${sent}`, "claims_taken_back_within_paid"],
  [`update claims set resubmit_by = '2023-07-01' where ${sent}`, "claims_waits_for_correction"],
  [`update claims set state = 'lost' where ${sent}`, "claims_known_state"],
  [`update claims set job_id = 1 where ${sent}`, "claims_of_a_job"],
  [
    "insert into claims select unit_id, job_id, claim_id + 1, claim_number || 'b', policy_id, payer, 'draft', currency, claimed_cents, file_by, decision, evidence, built_at, 1 from claims where claim_number like '%-0002'",
    "claims_one_open_per_job_and_policy",
  ],
  [`${event("received", '{"what":"received"}', "null, null")} ${draft}`, "claim_events_sent_before_what_follows"],
  [`${event("received", '{"what":"received"}', "1, null")} ${draft}`, "claim_events_about_a_submission"],
  [`${event("paid", '{"what":"paid","reference":" "}', "1, null")} ${sent}`, "claim_events_payment_has_reference"],
  [`${event("paid", '{"what":"paid"}', "1, null")} ${sent}`, "claim_events_payment_has_reference"],
  [`${event("written off", '{"what":"written off"}', "1, null")} ${sent}`, "claim_events_reason_where_due"],
  [`${event("received", '{"what":"paid"}', "1, null")} ${sent}`, "claim_events_act_agrees"],
  [`${event("built", '{"what":"built"}', "null, null")} ${sent}`, "claim_events_first_is_built"],
  [`${event("sent", '{"what":"sent"}', "1, null")} ${sent}`, "claim_events_sending_has_hash"],
  ["update claim_submissions set content = convert_to('{}', 'UTF8')", "claim_submissions_hashed"],
  [
    "update claim_submissions set content = convert_to('{}', 'UTF8'), content_sha256 = encode(sha256(convert_to('{}', 'UTF8')), 'hex')",
    "claim_events_hold_the_hash",
  ],
  ["delete from claim_submissions", "claim_events_about_a_submission"],
  [gone("claim_id", "lost", "Ana"), "part_fates_known_fate"],
  [gone("claim_id", "scrapped", " "), "part_fates_entered_by_somebody"],
  [gone("claim_id + 1", "scrapped", "Ana"), "part_fates_of_a_claim"],
  ["update claim_submissions set way = 'fax'", "claim_submissions_known_way"],
])("%s breaks %s", async (statement, constraint) => {
  const tried = inTransaction(async (tx) => void (await tx.execute(sql.raw(statement))));
  await expect(tried).rejects.toThrow(expect.objectContaining({ cause: expect.objectContaining({ constraint }) }));
});

test("a sum that somebody changed by hand is found", async () => {
  expect(await readOnly(findClaimsThatDisagree)).toEqual([]);
  await inTransaction((tx) => tx.execute(sql.raw(`update claims set open_cents = 0 where ${sent}`)));
  expect(await readOnly(findClaimsThatDisagree)).toEqual([expect.stringContaining("openCents is 0")]);
});
