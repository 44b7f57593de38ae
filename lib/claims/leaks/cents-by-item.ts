import type { Claim, ClaimItem } from "../claim";
import { askedLines } from "../life/asked-lines";

/** What a claim asks for each pay item, limits and the customer's share taken off. */
export function centsByItem(claim: Claim): Readonly<Record<ClaimItem, number>> {
  const cents = nothing();
  for (const line of askedLines(claim)) cents[line.item] += line.cents;
  return cents;
}

export function nothing(): Record<ClaimItem, number> {
  return { parts: 0, labour: 0, trip: 0, diagnosis: 0, handling: 0 };
}
