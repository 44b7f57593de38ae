import { formatDecimal } from "./format-decimal";

/** The probability of a test, to three decimals; what is smaller is only said to be smaller. */
export function formatProbability(probability: number): string {
  return probability < 0.001 ? "under 0.001" : formatDecimal(probability, 3);
}
