import type { Claim, ClaimItem } from "../claim";
import { askedCents } from "../life/asked-lines";

/** What a claim asks for each pay item, limits and the customer's share taken off. */
export function centsByItem(
  claim: Pick<Claim, "lines" | "deductions" | "totalCents">,
): Readonly<Record<ClaimItem, number>> {
  const cents = nothing();
  const asked = askedCents(claim);
  for (const [index, { item }] of claim.lines.entries()) cents[item] += asked[index] ?? 0;
  return cents;
}

export function nothing(): Record<ClaimItem, number> {
  return { parts: 0, labour: 0, trip: 0, diagnosis: 0, handling: 0 };
}
