import { type CountDistribution, countAtMost, countQuantile } from "@/lib/statistics/demand/count-distribution";
import { requireProbability, requireWholeNumber } from "@/lib/statistics/require";

export type ExcessStock =
  | { readonly kind: "in-use" }
  /** More than the demand of the span needs, with the wanted chance: pieces and their cents could go back or be sold. */
  | { readonly kind: "excess"; readonly pieces: number; readonly cents: number; readonly enough: number }
  /** Most likely nobody will ask for one in the whole span. */
  | { readonly kind: "dead"; readonly pieces: number; readonly cents: number; readonly chanceOfNone: number };

/**
 * Stock beyond what a span will need.
 * @param demand of the whole span, a year or two
 * @param sure   chance with which the rest must last, in (0, 1)
 * @param chanceOfNone from which on a part counts as dead, in (0, 1); own choice of the shop, no source
 */
export function excessStock({
  onHand,
  unitCents,
  demand,
  sure,
  chanceOfNone,
}: {
  readonly onHand: number;
  readonly unitCents: number;
  readonly demand: CountDistribution;
  readonly sure: number;
  readonly chanceOfNone: number;
}): ExcessStock {
  requireWholeNumber("onHand", onHand);
  requireWholeNumber("unitCents", unitCents);
  requireProbability("sure", sure);
  requireProbability("chanceOfNone", chanceOfNone);
  const none = countAtMost(demand, 0);
  if (onHand > 0 && none >= chanceOfNone)
    return { kind: "dead", pieces: onHand, cents: onHand * unitCents, chanceOfNone: none };
  const enough = countQuantile(demand, sure);
  const pieces = onHand - enough;
  return pieces > 0 ? { kind: "excess", pieces, cents: pieces * unitCents, enough } : { kind: "in-use" };
}
