import { doubtOf, expectedInformation } from "@/lib/statistics/choice/expected-information";
import { type Hypothesis, hypothesesOf, outcomeOf } from "./hypotheses";
import type { SheetBasis } from "./sheet-basis";
import type { PlanStep, VisitPlan } from "./visit-plan";
import type { Walk } from "./walk";

export type Proposal =
  /** Nothing is left that is worth asking. */
  | { readonly kind: "done" }
  | {
      readonly kind: "next";
      readonly step: PlanStep;
      readonly reason: ProposalReason;
      /** What may be done instead: all of the same tier of safety. */
      readonly others: readonly PlanStep[];
    };

export type ProposalReason =
  | {
      readonly kind: "sheet order";
      readonly because: "few jobs" | "first" | "shown" | "nothing to weigh";
      readonly jobs: number;
    }
  | {
      readonly kind: "most per minute";
      /** Share of the doubt that is left which the step is expected to settle. */
      readonly settles: number;
      readonly minutes: number;
      readonly jobs: number;
      /** The likeliest as things stand. */
      readonly leading: readonly { readonly name: string; readonly chance: number }[];
    };

/** Fewer closed jobs of a symptom than this say too little to reorder a sheet. Own choice. */
export const fewestJobs = 30;
/** A step that is expected to settle less than this share of the doubt is not weighed against others. Own choice. */
const leastShare = 0.005;

/** The check to do next: of the safest that are open the one expected to settle most per minute. */
export function nextCheck(plan: VisitPlan, walked: Walk, basis: SheetBasis | undefined): Proposal {
  const [first] = walked.open;
  if (first === undefined) return { kind: "done" };
  const safest = walked.open.filter(({ tier }) => tier === first.tier);
  const jobs = basis?.jobs ?? 0;
  const inOrder = (because: "few jobs" | "first" | "shown" | "nothing to weigh"): Proposal => ({
    kind: "next",
    step: first,
    reason: { kind: "sheet order", because, jobs },
    others: safest.slice(1),
  });
  if (first.tier === 0) return inOrder("first");
  if (walked.verdict.kind !== "open") return inOrder("shown");
  if (basis === undefined || jobs < fewestJobs) return inOrder("few jobs");
  const likely = likelyNow(plan, walked, basis);
  if (likely === undefined) return inOrder("nothing to weigh");
  const doubt = doubtOf(classesOf(likely).map(({ weight }) => weight));
  const weighed = safest
    .map((step) => ({ step, bits: bitsOf(step, likely) }))
    .filter(({ bits }) => doubt > 0 && bits / doubt >= leastShare)
    .sort((a, b) => b.bits / b.step.minutes - a.bits / a.step.minutes);
  const [best] = weighed;
  if (best === undefined) return inOrder("nothing to weigh");
  return {
    kind: "next",
    step: best.step,
    reason: {
      kind: "most per minute",
      settles: best.bits / doubt,
      minutes: best.step.minutes,
      jobs,
      leading: leadingOf(likely),
    },
    others: safest.filter((step) => step !== best.step),
  };
}

interface Likely {
  readonly hypotheses: readonly Hypothesis[];
  readonly weights: readonly number[];
}

/** The shares of the closed jobs, updated by every finding so far; undefined where none of the classes is among the hypotheses. */
export function likelyNow(plan: VisitPlan, { current }: Walk, basis: SheetBasis): Likely | undefined {
  const hypotheses = hypothesesOf(plan);
  const share = new Map(basis.shares.map((each) => [each.of, each.share]));
  const weights = hypotheses.map((hypothesis) =>
    plan.steps.reduce(
      (weight, step) => {
        const outcome = outcomeOf(step, current);
        return outcome === undefined ? weight : weight * (hypothesis.outcomes(step)[outcome] ?? 0);
      },
      (share.get(hypothesis.of) ?? 0) * hypothesis.part,
    ),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total > 0 ? { hypotheses, weights: weights.map((weight) => weight / total) } : undefined;
}

/** Bits about which component or cause it is; how a component failed is not asked yet. */
function bitsOf(step: PlanStep, likely: Likely): number {
  const classes = classesOf(likely);
  const likelihoods = classes.map(({ members, weight }) =>
    members
      .map(({ hypothesis, weight: own }) => hypothesis.outcomes(step).map((chance) => (chance * own) / weight))
      .reduce((sum, row) => sum.map((value, place) => value + (row[place] ?? 0))),
  );
  return expectedInformation({ weights: classes.map(({ weight }) => weight), likelihoods });
}

/** Hypotheses of one component or cause together, those that are ruled out left away. */
function classesOf({ hypotheses, weights }: Likely) {
  return [...new Set(hypotheses.map(({ of }) => of))]
    .map((of) => {
      const members = hypotheses.flatMap((hypothesis, h) =>
        hypothesis.of === of ? [{ hypothesis, weight: weights[h] ?? 0 }] : [],
      );
      return { members, weight: members.reduce((sum, { weight }) => sum + weight, 0) };
    })
    .filter(({ weight }) => weight > 0);
}

function leadingOf({ hypotheses, weights }: Likely): readonly { readonly name: string; readonly chance: number }[] {
  const byName = new Map<string, number>();
  for (const [h, { name }] of hypotheses.entries()) byName.set(name, (byName.get(name) ?? 0) + (weights[h] ?? 0));
  return [...byName]
    .map(([name, chance]) => ({ name, chance }))
    .sort((a, b) => b.chance - a.chance)
    .slice(0, 3);
}
