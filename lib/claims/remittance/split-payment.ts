import type { LineAmount } from "../life/claim-act";
import type { LineStanding } from "../life/claim-standing";
import type { ClaimShare, RemittanceLine } from "./remittance-line";

type Split = Pick<ClaimShare, "lines" | "split">;

/**
 * Divides a sum over the lines of one claim: to the item that the payer names; to each line in full where the sum is
 * what is still open; otherwise in proportion to what is open, by largest remainder, so that no cent is lost.
 * @returns undefined where the claim has no line for it
 */
export function splitPayment(
  { item, paidCents }: Pick<RemittanceLine, "item" | "paidCents">,
  lines: readonly LineStanding[],
): Split | undefined {
  const named = item === undefined ? lines : lines.filter((line) => line.item === item);
  const [first] = named;
  if (first === undefined) return undefined;
  const sizes = named.map((line) => (paidCents < 0 ? line.paidCents - line.clawedBackCents : openOf(line)));
  const whole = sizes.reduce((sum, size) => sum + size, 0);
  if (whole === Math.abs(paidCents))
    return { lines: amounts(named, sizes), split: item === undefined ? "pays in full" : "as stated" };
  if (named.length === 1) return { lines: [{ line: first.line, cents: Math.abs(paidCents) }], split: "as stated" };
  const weights = whole > 0 ? sizes : named.map((line) => line.askedCents);
  return { lines: amounts(named, shareOut(Math.abs(paidCents), weights)), split: "by what was asked" };
}

export function openOf({ askedCents, paidCents }: LineStanding): number {
  return Math.max(0, askedCents - paidCents);
}

/** Whole parts of a whole sum in proportion to the weights. @throws RangeError where no weight is above 0 */
export function shareOut(sum: number, weights: readonly number[]): number[] {
  const total = weights.reduce((all, weight) => all + weight, 0);
  if (!(total > 0)) throw new RangeError(`weights: at least one above 0 expected: ${weights.join(", ")}`);
  const parts = weights.map((weight) => Math.floor((sum * weight) / total));
  const left = sum - parts.reduce((all, part) => all + part, 0);
  const byRemainder = weights
    .map((weight, index) => ({ index, remainder: (sum * weight) % total }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (const { index } of byRemainder.slice(0, left)) parts[index] = (parts[index] ?? 0) + 1;
  return parts;
}

function amounts(lines: readonly LineStanding[], cents: readonly number[]): LineAmount[] {
  return lines.map(({ line }, index) => ({ line, cents: cents[index] ?? 0 }));
}
