import { describeItem, itemNames } from "@/lib/coverage/describe-coverage";
import { formatMoney } from "@/lib/format/format-money";
import type { AlteredDecision, PolicyImpact } from "./load-policy-impact";

/** "Labour: not covered: the term has ended → covered by Maker, Household warranty". */
export function changeWords({ changed }: Pick<AlteredDecision, "changed">): readonly string[] {
  if (changed.length === 0) return ["Only the amount changes."];
  return changed.map(
    ({ item, before, after }) => `${itemNames[item]}: ${describeItem(before)} → ${describeItem(after)}`,
  );
}

/** What could be asked for, all altered decisions together. */
export function alteredSum({ altered }: PolicyImpact): string {
  const sums = new Map<AlteredDecision["currency"], readonly [before: number, after: number]>();
  for (const { currency, beforeCents, afterCents } of altered) {
    const [before, after] = sums.get(currency) ?? [0, 0];
    sums.set(currency, [before + beforeCents, after + afterCents]);
  }
  return [...sums]
    .map(
      ([currency, [before, after]]) =>
        `${formatMoney({ cents: before, currency })} → ${formatMoney({ cents: after, currency })}`,
    )
    .join(", ");
}
