// What a step will rule out, said before it is done: the entries that a good result speaks against, and those that any other does.
import type { Check } from "@/lib/evidence/check";
import { type Condition, holds } from "@/lib/evidence/condition";
import type { JudgedReading } from "@/lib/evidence/current-readings";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { isExternal, liveEntries } from "./verdict";
import type { PlanStep, VisitPlan } from "./visit-plan";

export interface Settles {
  /** How parts fail, in the rules' words, that the result rules out. */
  readonly good: readonly string[];
  readonly notGood: readonly string[];
  /** Something that may be behind it stays possible whatever comes out. */
  readonly leavesOpen: boolean;
}

/** @param current  what was found so far; what it has ruled out already is not said again */
export function whatItSettles(
  { check }: Pick<PlanStep, "check">,
  plan: VisitPlan,
  current: readonly JudgedReading[],
): Settles {
  const live = liveEntries(plan, current).filter((entry) => !isExternal(entry));
  const ruledOut = (came: Came) => live.filter((entry) => speaksAgainst(entry, { check, came, current }));
  const [good, notGood] = [ruledOut("good"), ruledOut("not good")];
  const words = (entries: readonly EvidenceEntry[]) => [...new Set(entries.map(({ failure }) => failure))];
  return {
    good: words(good),
    notGood: words(notGood),
    leavesOpen: live.some((entry) => !good.includes(entry) && !notGood.includes(entry)),
  };
}

type Came = "good" | "not good";

interface Result {
  readonly check: Check;
  readonly came: Came;
  readonly current: readonly JudgedReading[];
}

function speaksAgainst({ contradictedBy }: EvidenceEntry, result: Result): boolean {
  return contradictedBy.some(({ when, onlyFor }) => onlyFor === undefined && saysAlone(when, result));
}

/** What one result of this check says by itself, as long as what must not be so beside it is not. */
function saysAlone(when: Condition, result: Result): boolean {
  const { check, came, current } = result;
  switch (when.is) {
    case "any":
      return when.of.some((one) => saysAlone(one, result));
    case "all":
      return when.of.every((one) => (one.is === "not" ? holds(one, current) !== undefined : saysAlone(one, result)));
    case "good":
      return when.check === check.key && came === "good";
    case "bad":
    case "absent":
      return when.check === check.key && came === "not good";
    case "word": {
      const words = Object.entries(check.findings).filter(([, { state }]) => (state === "good") === (came === "good"));
      return when.check === check.key && words.length > 0 && words.every(([word]) => when.words.includes(word));
    }
    default:
      return false;
  }
}
