// One covered job with a draft claim on it, and what the tests of a claim's life do with it.
import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { keepDraft } from "@/app/_claims/keep-draft";
import { contentMaker } from "@/app/_claims/make-content";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { loadClaimLife } from "@/db/queries/claim-life";
import { type ActRequest, actOnClaim } from "@/db/writes/claims/act-on-claim";
import { sendClaim } from "@/db/writes/claims/send-claim";
import { type Day, day } from "@/lib/calendar/day";
import { filingCheckTitles } from "@/lib/claims/checks/filing-case";
import { samplePolicy } from "../../coverage/sample-policy";
import { csv, type fileFolder, job, partLine, shopDocument, startAfresh, unit } from "../intake-files";

export const builtOn = day("2023-05-10");
export const policy = samplePolicy({
  maker: "Hearth-Wick",
  payer: { kind: "maker", name: "Hearth-Wick" },
  effectiveFrom: day("2020-01-01"),
});

/** A company with one maker's terms and covered jobs J1, J2, …; nothing is claimed. */
export async function startWithJobs(files: ReturnType<typeof fileFolder>, count = 1): Promise<void> {
  await startAfresh();
  const numbers = Array.from({ length: count }, (_, index) => index + 1);
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv(numbers.map((n) => unit(`A${n}`, { sold_on: "2022-09-01", installed_on: "2022-09-02" }))));
  await files.load(csv(numbers.map((n) => job(`J${n}`, `A${n}`))));
  await files.load(
    csv(
      numbers.map((n) =>
        partLine(`J${n}`, 1, { distributor: "Ravel Supply", invoice_number: `INV-${n}`, invoice_line: "1" }),
      ),
    ),
  );
  await inTransaction(
    async (tx) =>
      void (await tx.execute(sql`
        insert into policies (key, maker_id, name, version, effective_from, document, document_sha256, source_document, approved_by, published_at)
        select ${policy.key}, maker_id, ${policy.name}, ${policy.version}, ${policy.effectiveFrom}, ${JSON.stringify(policy)}::jsonb, ${"0".repeat(64)}, 'terms', 'owner', now()
        from makers where name = 'Hearth-Wick'`)),
  );
}

export async function draftOf(jobNumber: string): Promise<string> {
  const kept = await keepDraft({ jobNumber, policy: { key: policy.key }, by: "Ana", today: builtOn });
  if (kept.kind !== "kept") throw new Error(kept.problems.join(" "));
  return kept.claimNumber;
}

export async function versionOf(claimNumber: string): Promise<number> {
  return (await readOnly((db) => loadClaimLife(db, claimNumber)))?.version ?? 0;
}

export async function request(claimNumber: string, more: Partial<ActRequest> = {}): Promise<ActRequest> {
  const seenVersion = more.seenVersion ?? (await versionOf(claimNumber));
  return { claimNumber, key: randomUUID(), by: "Ana", note: "", at: "2023-06-01T10:00:00Z", ...more, seenVersion };
}

/** A reason for every check, since these jobs have no papers. */
export const allReasons = Object.fromEntries(Object.keys(filingCheckTitles).map((key) => [key, "Agreed by phone"]));

export async function send(claimNumber: string, sentOn: Day, more: Partial<ActRequest> = {}, reasons = allReasons) {
  const asked = { ...(await request(claimNumber, more)), sentOn, way: "portal", reference: "UP-1", reasons } as const;
  return await sendClaim(asked, contentMaker({ today: sentOn, sentOn, reasons }));
}

export async function act(claimNumber: string, what: Parameters<typeof actOnClaim>[1], more: Partial<ActRequest> = {}) {
  return await actOnClaim(await request(claimNumber, more), what);
}

export interface ClaimRow extends Record<string, unknown> {
  readonly state: string;
  readonly version: number;
  readonly claimed_cents: string;
  readonly paid_cents: string;
  readonly open_cents: string;
  readonly submission: number | null;
  readonly resubmit_by: string | null;
}

export async function stored(claimNumber: string): Promise<ClaimRow> {
  const [row] = await readOnly((db) =>
    db.rows<ClaimRow>(sql`
      select state, version, claimed_cents::text as claimed_cents, paid_cents::text as paid_cents, open_cents::text as open_cents, submission, resubmit_by::text as resubmit_by
      from claims where claim_number = ${claimNumber}`),
  );
  if (row === undefined) throw new Error(`no claim ${claimNumber}`);
  return row;
}
