// The catalogue of checks: what a technician looks at or measures. Readings name a check by its key and, where it is an
// observation, one of its words; both are stable. Values and procedures are examples: the model sheet decides.
import type { Check } from "./check";
import { dishwasherChecks } from "./checks/dishwasher";
import { drainChecks } from "./checks/drain";
import { dryerChecks } from "./checks/dryer";
import { rangeChecks } from "./checks/range";
import { refrigeratorChecks } from "./checks/refrigerator";
import { washerChecks } from "./checks/washer";

export const checks: readonly Check[] = [
  ...drainChecks,
  ...washerChecks,
  ...dryerChecks,
  ...dishwasherChecks,
  ...refrigeratorChecks,
  ...rangeChecks,
];

const byKey: ReadonlyMap<string, Check> = new Map(checks.map((check) => [check.key, check]));

/** The check of that key, or undefined where the catalogue has none. */
export function checkOf(key: string): Check | undefined {
  return byKey.get(key);
}

/** The words that an observation of this check may use; empty for a pure measurement or an unknown key. */
export function findingWords(key: string): readonly string[] {
  return Object.keys(byKey.get(key)?.findings ?? {});
}
