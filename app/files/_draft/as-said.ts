import type { Matching } from "@/lib/intake/matching/matching";

type Notation = "dateOrder" | "decimalMark" | "labourUnit" | "dayNumbersFrom";

/** What a person said of the notation of a file. It overrules every guess. */
export type SaidNotation = { readonly [Name in Notation]?: Matching[Name] | undefined };

export function matchingAsSaid(matching: Matching, said: SaidNotation): Matching {
  return { ...matching, ...Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)) };
}
