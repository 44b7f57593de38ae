import { createHash } from "node:crypto";
import { and, eq } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { AskedClaimLine } from "@/lib/claims/life/asked-lines";
import type { AskedLine, ClaimAct } from "@/lib/claims/life/claim-act";
import { judgeAct } from "@/lib/claims/life/judge-act";
import type { SendingWay } from "@/lib/claims/life/sending-way";
import { type SendingContent, sentText } from "@/lib/claims/life/sent-content";
import type { Reader, Transaction } from "../../database-types";
import { type CheckOverride, claimSubmissions } from "../../schema/claim-life";
import { claimLines } from "../../schema/claims";
import { type ActRequest, type ActResult, recordOnce } from "./act-on-claim";
import { type Appended, appendEvent } from "./append-event";
import type { LockedClaim } from "./locked-claim";

export interface SendingRequest extends ActRequest {
  readonly sentOn: Day;
  readonly way: SendingWay;
  /** Number or name under which it was handed in; empty where there is none. */
  readonly reference: string;
  /** Reasons, by check, for sending although that check failed. */
  readonly reasons: Readonly<Record<string, string>>;
}

export type MadeContent =
  | { readonly kind: "content"; readonly content: SendingContent; readonly overrides: readonly CheckOverride[] }
  | NotSent;

/** What stands in the way, each with what to do. */
export interface NotSent {
  readonly kind: "not sent";
  readonly problems: readonly { readonly check: string | undefined; readonly sentence: string }[];
}

/**
 * Records that a claim went to its payer, and locks what went. The content is made inside the transaction from the job
 * as it stands there, so that what was checked is what is kept.
 * @param make judges the job and puts the content together; it reads and never writes
 */
export async function sendClaim(
  request: SendingRequest,
  make: (db: Reader, claim: LockedClaim, filing: number) => Promise<MadeContent>,
): Promise<ActResult | NotSent> {
  const { sentOn, way, reference, reasons } = request;
  return await recordOnce<NotSent>(request, { what: "sent", sentOn, way, reference, reasons }, async (tx, claim) => {
    const filing = (claim.row.submission ?? 0) + 1;
    const made = await make(tx, claim, filing);
    return made.kind === "not sent" ? made : await lockAndRecord(tx, claim, request, made, filing);
  });
}

async function lockAndRecord(
  tx: Transaction,
  claim: LockedClaim,
  request: SendingRequest,
  { content, overrides }: Extract<MadeContent, { kind: "content" }>,
  filing: number,
): Promise<Appended> {
  const bytes = Buffer.from(sentText(content), "utf8");
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const lines = content.lines.map(({ line, item, cents }): AskedLine => ({ line, item, cents }));
  const act: ClaimAct = { what: "sent", on: request.sentOn, sha256, lines };
  const refusal = judgeAct(claim.events, act);
  if (refusal !== undefined) return { kind: "refused", sentence: refusal.sentence };
  const { unitId, claimId } = claim.row;
  await tx.insert(claimSubmissions).values({
    unitId,
    claimId,
    submission: filing,
    sentOn: request.sentOn,
    way: request.way,
    reference: request.reference,
    content: bytes,
    contentSha256: sha256,
    manifest: content.packet.manifest,
    overrides,
    at: request.at,
  });
  await replaceLines(tx, claim, content.lines);
  return await appendEvent(tx, claim, { ...request, act });
}

/** The lines of a claim are those it was last sent with; earlier ones stay in what was sent earlier. */
async function replaceLines(tx: Transaction, { row }: LockedClaim, lines: readonly AskedClaimLine[]): Promise<void> {
  const { unitId, claimId } = row;
  await tx.delete(claimLines).where(and(eq(claimLines.unitId, unitId), eq(claimLines.claimId, claimId)));
  await tx.insert(claimLines).values(
    lines.map((line) => ({
      unitId,
      claimId,
      line: line.line,
      payItem: line.item,
      description: line.description,
      quantity: line.quantity,
      claimedCents: line.cents,
      basis: line.basis,
      partNumber: line.partNumber ?? null,
      invoiceNumber: line.invoiceNumber ?? null,
      invoiceLine: line.invoiceLine ?? null,
    })),
  );
}
