import { asc } from "drizzle-orm";
import type { ClaimEvent } from "@/lib/claims/life/claim-act";
import { claimStanding } from "@/lib/claims/life/claim-standing";
import type { Reader } from "../database-types";
import { claimEvents } from "../schema/claim-life";
import { claims } from "../schema/claims";
import { storedStanding } from "../writes/claims/append-event";

/** Claims whose columns are not what follows from their events, each with what differs. Empty where all is well. */
export async function findClaimsThatDisagree(db: Reader): Promise<string[]> {
  const stored = await db.select().from(claims);
  const events = await db
    .select({ claimId: claimEvents.claimId, number: claimEvents.event, act: claimEvents.act })
    .from(claimEvents)
    .orderBy(asc(claimEvents.event));
  const byClaim = new Map<string, Pick<ClaimEvent, "number" | "act">[]>();
  for (const { claimId, number, act } of events) {
    const known = byClaim.get(claimId);
    if (known === undefined) byClaim.set(claimId, [{ number, act }]);
    else known.push({ number, act });
  }
  return stored.flatMap((row) => {
    const own = byClaim.get(row.claimId) ?? [];
    const expected = { ...storedStanding(claimStanding(own), row.claimedCents), version: own.length };
    const keys = Object.keys(expected) as readonly (keyof typeof expected)[]; // Object.keys loses the key type
    const differing = keys.filter((key) => row[key] !== expected[key]);
    return differing.map((key) => `${row.claimNumber}: ${key} is ${row[key]}, its events give ${expected[key]}`);
  });
}
