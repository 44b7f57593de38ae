import type { Estimate } from "@/lib/statistics/estimate";
import { observedExpectedEstimate } from "@/lib/statistics/ratio-estimate";
import type { ExposureCells } from "./cells";
import type { ModelExposure } from "./exposure";
import { type Grouping, type GroupKey, groupsWithExposure, keyText } from "./groups";
import type { Dimension, RateQuestion } from "./rate-question";
import { tallyJobs } from "./tally-jobs";

/** How many times what its ages predict a group had. */
export type AgainstAges =
  | { readonly kind: "ratio"; readonly estimate: Estimate }
  /** The question sets no machines apart, so that there are no others to predict from. */
  | { readonly kind: "nothing-beside-it" }
  /** No other machine of the kind was watched at these ages, or none of them had any. */
  | { readonly kind: "nothing-expected" };

const machineDimensions: readonly Dimension[] = ["model", "maker", "type"];

/**
 * Each group against what all other machines of the same type had at the same ages under the same words: indirect
 * standardisation by age and type, the group itself left out; by age alone where types are what is compared. Ages at
 * which no other was watched are left out on both sides.
 * @param exposure  of the question's grouping, as `exposureOf` gives it
 * Source: Breslow & Day (1987), Statistical Methods in Cancer Research, volume II, section 2.3; exact Poisson limits.
 * Checked: tests/failures/against-ages.test.ts, by separate code that walks unit by unit.
 */
export function againstAges(
  cells: ExposureCells,
  question: RateQuestion,
  exposure: ReadonlyMap<string, ModelExposure>,
): (key: GroupKey) => AgainstAges {
  if (!question.by.some((dimension) => machineDimensions.includes(dimension)))
    return () => ({ kind: "nothing-beside-it" });
  const strata = new Map<string, Counts>();
  const groups = new Map<string, { stratum: string; counts: Counts }[]>();
  for (const { key, counts } of fineGroups(cells, question, exposure)) {
    const own = keyText(key.filter(({ dimension }) => question.by.some((asked) => asked === dimension)));
    const stratum = keyText(key.filter(({ dimension }) => isStratum(dimension, question)));
    strata.set(stratum, sumOf(strata.get(stratum) ?? none, counts));
    const known = groups.get(own);
    if (known === undefined) groups.set(own, [{ stratum, counts }]);
    else known.push({ stratum, counts });
  }
  return (key) => ratioOf(groups.get(keyText(key)) ?? [], strata, question.level);
}

interface Counts {
  readonly events: number;
  readonly unitDays: number;
}

const none: Counts = { events: 0, unitDays: 0 };

/** What others must share to be held against a group: all but maker and model, and their type unless types alone are compared. */
function isStratum(dimension: Dimension, { by }: RateQuestion): boolean {
  if (dimension === "model" || dimension === "maker") return false;
  return dimension !== "type" || by.some((asked) => asked === "model" || asked === "maker");
}

function fineGroups(
  cells: ExposureCells,
  question: RateQuestion,
  exposure: ReadonlyMap<string, ModelExposure>,
): { key: GroupKey; counts: Counts }[] {
  const more = (["type", "age"] as const).filter((dimension) => !question.by.some((asked) => asked === dimension));
  const fine: Grouping = { ...question, by: [...question.by, ...more] };
  const tallies = tallyJobs(cells, fine, "events only").groups;
  return [...groupsWithExposure(cells, fine, exposure).values()].map(({ key, exposure: { unitDays } }) => ({
    key,
    counts: { events: tallies.get(keyText(key))?.tally.events ?? 0, unitDays },
  }));
}

function ratioOf(
  parts: readonly { readonly stratum: string; readonly counts: Counts }[],
  strata: ReadonlyMap<string, Counts>,
  level: number,
): AgainstAges {
  const own = new Map<string, Counts>();
  for (const { stratum, counts } of parts) own.set(stratum, sumOf(own.get(stratum) ?? none, counts));
  let [observed, expected] = [0, 0];
  for (const [stratum, counts] of own) {
    const all = strata.get(stratum) ?? none;
    const others = all.unitDays - counts.unitDays;
    if (others <= 0) continue;
    observed += counts.events;
    expected += (counts.unitDays * (all.events - counts.events)) / others;
  }
  return expected > 0
    ? { kind: "ratio", estimate: observedExpectedEstimate({ observed, expected, level }) }
    : { kind: "nothing-expected" };
}

function sumOf(a: Counts, b: Counts): Counts {
  return { events: a.events + b.events, unitDays: a.unitDays + b.unitDays };
}
