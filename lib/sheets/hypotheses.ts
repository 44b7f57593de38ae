// What may be behind a symptom, and how each check is expected to come out under it: what the order of checks is weighed by.
import { type Cause, causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { JudgedReading } from "@/lib/evidence/current-readings";
import { isBad, isDecided } from "@/lib/evidence/decided";
import { badWhere, causeShownWhere, causesShownBy } from "./expected-findings";
import { isExternal } from "./verdict";
import type { PlanStep, VisitPlan } from "./visit-plan";

export interface Hypothesis {
  /** The class of closed jobs that it is counted by: component:drain_pump, cause:foreign_object. */
  readonly of: string;
  readonly name: string;
  /** Its part of the class, where a component can fail in several ways. */
  readonly part: number;
  /** Chance of each outcome of the step. */
  readonly outcomes: (step: PlanStep) => readonly number[];
}

/** A finding is read wrongly this often. Own choice: nothing is ever quite ruled out. */
const misread = 0.03;

/** Whatever part fails, a test that repeats the complaint fails too. */
const repeats: Readonly<Record<string, readonly string[]>> = {
  flow_test: ["will_not_drain", "drains_slowly"],
  pump_service_test: ["will_not_drain"],
};

export function hypothesesOf(plan: VisitPlan): readonly Hypothesis[] {
  const parts = plan.entries.filter((entry) => !isExternal(entry));
  const checks = plan.steps.map(({ check }) => check);
  const outside = [...new Set(checks.flatMap(causesShownBy))];
  return [
    ...parts.map((entry): Hypothesis => {
      const bad = badWhere(entry);
      const test = (step: PlanStep) =>
        plan.symptom !== undefined && (repeats[step.check.key] ?? []).includes(plan.symptom) ? 1 : 0;
      return {
        of: `component:${entry.component}`,
        name: componentOf(entry.component)?.name ?? entry.component,
        part: 1 / parts.filter(({ component }) => component === entry.component).length,
        outcomes: (step) => chances(step, "bad", Math.max(bad.get(step.check.key) ?? 0, test(step))),
      };
    }),
    ...outside.map((cause): Hypothesis => {
      const shown = causeShownWhere(cause, checks);
      return { ...whole(cause), outcomes: (step) => chances(step, cause, shown.get(step.check.key) ?? 0) };
    }),
    { ...whole("no_fault_found"), outcomes: (step) => chances(step, "bad", 0) },
  ];
}

function whole(cause: Cause): Pick<Hypothesis, "of" | "name" | "part"> {
  return { of: `cause:${cause}`, name: causes[cause].name, part: 1 };
}

/** Outcomes of a step in the order that `outcomes` weighs them: good, bad, then the causes that it can name. */
export function outcomesOf({ check }: PlanStep): readonly string[] {
  return ["good", "bad", ...causesShownBy(check)];
}

function chances(step: PlanStep, outcome: string, chance: number): readonly number[] {
  const outcomes = outcomesOf(step);
  const at = outcomes.indexOf(outcome);
  const sure = outcomes.map((_, place) => (place === at ? chance : 0) + (place === 0 ? 1 - (at < 0 ? 0 : chance) : 0));
  return sure.map((value) => value * (1 - misread) + misread / outcomes.length);
}

/** Which outcome the readings of a step came to; undefined where they decide nothing. */
export function outcomeOf(step: PlanStep, current: readonly JudgedReading[]): number | undefined {
  const own = current.filter(({ reading, judgement }) => reading.check === step.check.key && isDecided(judgement));
  if (own.length === 0) return undefined;
  const bad = own.find(({ judgement }) => isBad(judgement));
  if (bad === undefined) return 0;
  const cause = bad.judgement.kind === "finding" ? bad.judgement.finding.cause : step.check.outsideWhenBad;
  const place = cause === undefined ? 1 : outcomesOf(step).indexOf(cause);
  return place < 0 ? 1 : place;
}
