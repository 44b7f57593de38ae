import type { Day } from "@/lib/calendar/day";
import { addTerm } from "@/lib/calendar/term";
import type { RepeatRule } from "@/lib/domain/policy";

/** What is compared between a job and the one before it on the same unit. */
export interface TroubleFacts {
  readonly component: string | undefined;
  readonly symptom: string | undefined;
}

export interface RepeatQuestion {
  readonly rule: RepeatRule;
  readonly previousCompletedOn: Day;
  readonly reportedOn: Day;
  readonly previous: TroubleFacts;
  readonly now: TroubleFacts;
}

export type RepeatDecision =
  | { readonly kind: "outside_window"; readonly windowLastDay: Day }
  /** Payable, yet the payer's automatic check will stop it: the cause line must say why the two are unrelated. */
  | { readonly kind: "unrelated"; readonly windowLastDay: Day }
  | { readonly kind: "repeat_within_window"; readonly windowLastDay: Day; readonly costBearer: "servicer" }
  /** Neither component nor complaint is known on one of the two, so nobody can tell. */
  | { readonly kind: "cannot_compare"; readonly windowLastDay: Day };

/** Whether a second visit counts as the same repair. Source: a published rejection list, "second repair within 30 days". */
export function decideRepeat(question: RepeatQuestion): RepeatDecision {
  const windowLastDay = addTerm(question.previousCompletedOn, question.rule.within);
  if (question.reportedOn > windowLastDay) return { kind: "outside_window", windowLastDay };
  switch (sameTrouble(question)) {
    case "same":
      return { kind: "repeat_within_window", windowLastDay, costBearer: "servicer" };
    case "different":
      return { kind: "unrelated", windowLastDay };
    case "unknown":
      return { kind: "cannot_compare", windowLastDay };
  }
}

type Sameness = "same" | "different" | "unknown";

function sameTrouble({ rule, previous, now }: RepeatQuestion): Sameness {
  const component = compare(previous.component, now.component);
  const complaint = compare(previous.symptom, now.symptom);
  if (rule.same === "component") return component;
  if (rule.same === "complaint") return complaint;
  if (component === "same" || complaint === "same") return "same";
  return component === "unknown" && complaint === "unknown" ? "unknown" : "different";
}

function compare(one: string | undefined, other: string | undefined): Sameness {
  if (one === undefined || other === undefined) return "unknown";
  return one === other ? "same" : "different";
}
