import type { PolicyVersion } from "@/db/queries/policy-versions";
import type { Day } from "@/lib/calendar/day";
import { formatPlainDay } from "@/lib/format/format-day";

/** "1 Jan 2023 on", "until 31 Dec 2022": the sales that a version governs. */
export function salesWords({ policy }: Pick<PolicyVersion, "policy">): string {
  const from = formatPlainDay(policy.effectiveFrom);
  return policy.effectiveTo === undefined ? `${from} on` : `${from} to ${formatPlainDay(policy.effectiveTo)}`;
}

export function stateWords({ policy, retired }: Pick<PolicyVersion, "policy" | "retired">, today: Day): string {
  if (retired !== undefined) return "retired";
  if (policy.effectiveFrom > today) return "governs later sales";
  if (policy.effectiveTo !== undefined && policy.effectiveTo < today) return "governs earlier sales";
  return "governs sales today";
}

export function versionPath({ key, version }: { readonly key: string; readonly version: number }): string {
  return `/shop/coverage/policy/${encodeURIComponent(key)}/${version}`;
}
