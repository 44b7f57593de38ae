import { and, asc, eq, getTableColumns } from "drizzle-orm";
import type { ClaimEvent } from "@/lib/claims/life/claim-act";
import type { Reader } from "../database-types";
import { claimEvents, claimSubmissions } from "../schema/claim-life";
import { claims } from "../schema/claims";

/** One filing as the database knows it, without its bytes. */
export type StoredSubmission = Omit<typeof claimSubmissions.$inferSelect, "content" | "unitId" | "claimId">;

export interface ClaimLife {
  readonly version: number;
  readonly events: readonly ClaimEvent[];
  readonly submissions: readonly StoredSubmission[];
}

/** Everything that happened to a claim, in order; undefined where there is no such claim. */
export async function loadClaimLife(db: Reader, claimNumber: string): Promise<ClaimLife | undefined> {
  const { unitId, claimId, version } = claims;
  const [claim] = await db.select({ unitId, claimId, version }).from(claims).where(eq(claims.claimNumber, claimNumber));
  if (claim === undefined) return undefined;
  const events = await db
    .select()
    .from(claimEvents)
    .where(and(eq(claimEvents.unitId, claim.unitId), eq(claimEvents.claimId, claim.claimId)))
    .orderBy(asc(claimEvents.event));
  const { content: _, unitId: __, claimId: ___, ...described } = getTableColumns(claimSubmissions);
  const submissions = await db
    .select(described)
    .from(claimSubmissions)
    .where(and(eq(claimSubmissions.unitId, claim.unitId), eq(claimSubmissions.claimId, claim.claimId)))
    .orderBy(asc(claimSubmissions.submission));
  return {
    version: claim.version,
    events: events.map(({ event, at, by, note, act }) => ({ number: event, at, by, note, act })),
    submissions,
  };
}

/** What was sent, byte for byte, with the hash it is held to. */
export async function loadSentBytes(
  db: Reader,
  claimNumber: string,
  submission: number,
): Promise<{ readonly content: Buffer; readonly submission: StoredSubmission } | undefined> {
  const { content, unitId: _, claimId: __, ...described } = getTableColumns(claimSubmissions);
  const [row] = await db
    .select({ content, submission: described })
    .from(claimSubmissions)
    .innerJoin(claims, and(eq(claims.unitId, claimSubmissions.unitId), eq(claims.claimId, claimSubmissions.claimId)))
    .where(and(eq(claims.claimNumber, claimNumber), eq(claimSubmissions.submission, submission)));
  return row;
}
