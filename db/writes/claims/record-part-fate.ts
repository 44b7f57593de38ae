import { and, desc, eq } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { type FateEntry, partFates as fateNames, fateProblem } from "@/lib/claims/recovery/part-fate";
import { partHold } from "@/lib/claims/recovery/part-hold";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { claimLines, claims } from "../../schema/claims";
import { partFates } from "../../schema/part-fates";

export interface FailedPart {
  readonly claimNumber: string;
  /** Line of the claim that asks for the part. */
  readonly line: number;
}

export type FateRecorded =
  | { readonly kind: "recorded" }
  /** It stands there already, as somebody entered it or sent the form twice. */
  | { readonly kind: "as it was" }
  | { readonly kind: "refused"; readonly sentence: string };

/** Enters that a failed part left the shelf. What was entered before is taken back first, by `putBackOnShelf`. */
export async function recordPartFate(
  part: FailedPart,
  { entry, today, at }: { readonly entry: FateEntry; readonly today: Day; readonly at: string },
): Promise<FateRecorded> {
  return await inTransaction(async (tx) => {
    const found = await lockPart(tx, part);
    if (typeof found === "string") return refuse(found);
    const { claim, last } = found;
    if (last !== undefined && last.fate !== "on shelf") {
      const isSame = last.fate === entry.fate && last.onDay === entry.on && last.tag === entry.tag;
      if (isSame) return { kind: "as it was" };
      return refuse(
        `It was entered as ${fateNames[last.fate].toLowerCase()} by ${last.by} already. Take that back first.`,
      );
    }
    const hold = partHold({ state: claim.state, keepUntil: claim.keepPartUntil ?? undefined }, today);
    const problem = fateProblem({ hold, sentOn: claim.firstSentOn, entry, today });
    if (problem !== undefined) return refuse(problem);
    const { fate, on, tag, by, reason } = entry;
    await add(tx, found, { fate, onDay: on, tag, by: by.trim(), reason, at });
    return { kind: "recorded" };
  });
}

/** Takes back what was entered by mistake; both entries stay on file. */
export async function putBackOnShelf(
  part: FailedPart,
  { by, reason, on, at }: { readonly by: string; readonly reason: string; readonly on: Day; readonly at: string },
): Promise<FateRecorded> {
  if (by.trim() === "" || reason.trim() === "") return refuse("Say who takes it back, and why.");
  return await inTransaction(async (tx) => {
    const found = await lockPart(tx, part);
    if (typeof found === "string") return refuse(found);
    if (found.last === undefined || found.last.fate === "on shelf") return { kind: "as it was" };
    await add(tx, found, { fate: "on shelf", onDay: on, tag: "", by: by.trim(), reason, at });
    return { kind: "recorded" };
  });
}

interface LockedPart {
  readonly claim: typeof claims.$inferSelect & { readonly firstSentOn: Day };
  readonly line: number;
  readonly last: typeof partFates.$inferSelect | undefined;
}

/** The claim is locked, so that two people who enter one part wait for each other. */
async function lockPart(tx: Transaction, { claimNumber, line }: FailedPart): Promise<LockedPart | string> {
  const [claim] = await tx.select().from(claims).where(eq(claims.claimNumber, claimNumber)).for("update");
  if (claim === undefined) return `${claimNumber} is no claim on file.`;
  const { firstSentOn } = claim;
  if (firstSentOn === null) return `${claimNumber} was not sent, so no payer asks for its part.`;
  const here = (table: typeof claimLines | typeof partFates) =>
    and(eq(table.unitId, claim.unitId), eq(table.claimId, claim.claimId), eq(table.line, line));
  const [asked] = await tx.select().from(claimLines).where(here(claimLines));
  if (asked?.payItem !== "parts") return `${claimNumber} asks for no part in line ${line}.`;
  const [last] = await tx.select().from(partFates).where(here(partFates)).orderBy(desc(partFates.entry)).limit(1);
  return { claim: { ...claim, firstSentOn }, line, last };
}

type NewEntry = Pick<typeof partFates.$inferInsert, "fate" | "onDay" | "tag" | "by" | "reason" | "at">;

async function add(tx: Transaction, { claim, line, last }: LockedPart, values: NewEntry): Promise<void> {
  const { unitId, claimId } = claim;
  await tx.insert(partFates).values({ unitId, claimId, line, entry: (last?.entry ?? 0) + 1, ...values });
}

function refuse(sentence: string): FateRecorded {
  return { kind: "refused", sentence };
}
