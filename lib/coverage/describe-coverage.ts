import { dayInWords } from "@/lib/calendar/day-words";
import { type PayItem, payItems } from "@/lib/domain/pay-item";
import {
  type Boundary,
  type CoverageAnswer,
  type CoverSource,
  type ItemDecision,
  proofDocuments,
} from "./coverage-decision";
import { windowOf } from "./decide-item";
import { describeWindow } from "./describe-window";
import { evidenceWords, notCoveredWords, problemWords } from "./reason-words";

export interface CoverageWords {
  /** One line a pay item: "Parts: covered by Maker, Maker's standard cover." */
  readonly items: readonly { readonly item: PayItem; readonly sentence: string }[];
  /** The sums behind them, each once. */
  readonly arithmetic: readonly string[];
  /** Where the wording decides, what the other way of counting would give. */
  readonly boundary: readonly string[];
  readonly others: readonly string[];
  readonly statutory: readonly string[];
  /** Said beside every decision. */
  readonly defer: string;
}

/** A decision in words. What it does not know it does not say; it never says that somebody has no rights. */
export function describeCoverage(decision: CoverageAnswer): CoverageWords {
  const { items, decisive, statutory, lost } = decision;
  const windows = payItems.map((item) => windowOf(items[item])).filter((window) => window !== undefined);
  return {
    items: payItems.map((item) => ({ item, sentence: `${itemNames[item]}: ${describeItem(items[item])}.` })),
    arithmetic: unique(windows.map((window) => describeWindow(window, decisive))),
    boundary: unique(payItems.flatMap((item) => boundaryWords(items[item]))),
    others: lost.map(({ source, reason }) => `${source.campaignName ?? source.policyName}: ${lostWords(reason)}.`),
    statutory: [
      statutory.sentence,
      ...statutory.periods.map(({ name, meaning, cite }) => `${name}: ${meaning} (${cite})`),
    ],
    defer: "Policy wording and local law decide; this is no legal advice.",
  };
}

export function describeItem(decision: ItemDecision): string {
  switch (decision.verdict) {
    case "covered":
      return `covered by ${decision.by.payerName}, ${decision.by.campaignName ?? decision.by.policyName}`;
    case "not_covered":
      return `not covered: ${notCoveredWords[decision.reason]}`;
    case "needs_evidence":
      return `needs evidence${ofContract(decision.by)} (${proofDocuments[decision.document].toLowerCase()}): ${evidenceWords[decision.reason]}`;
    case "needs_local_law":
      return `local law decides: ${decision.reason}`;
    case "invalid_data":
      return `cannot be decided: ${problemWords[decision.problem]}`;
  }
}

/** Which of several contracts is meant, where its terms are what is missing. */
function ofContract(by: CoverSource | undefined): string {
  return by?.version === 0 && by.contract !== undefined ? ` on contract ${by.contract}` : "";
}

export const itemNames: Readonly<Record<PayItem, string>> = {
  parts: "Parts",
  labour: "Labour",
  trip: "Trip",
  diagnosis: "Diagnosis",
};

function boundaryWords(decision: ItemDecision): readonly string[] {
  if (!("boundary" in decision)) return [];
  const { boundary } = decision;
  return boundary.kind === "none" ? [] : [boundarySentence(boundary)];
}

function boundarySentence(boundary: Exclude<Boundary, { readonly kind: "none" }>): string {
  const where = boundary.kind === "last_day" ? "the last covered day" : "the day after the last covered day";
  if (boundary.underOtherCounting === boundary.lastDay) {
    return `This is ${where}, ${dayInWords(boundary.lastDay)}, as it is written: read the wording of the terms.`;
  }
  const other = dayInWords(boundary.underOtherCounting);
  return `This is ${where}, ${dayInWords(boundary.lastDay)}. Counted the other way the last day would be ${other}: read the wording of the terms.`;
}

function lostWords(reason: CoverageAnswer["lost"][number]["reason"]): string {
  if (reason === "another_payer_first") return "another payer comes first";
  return reason in notCoveredWords
    ? notCoveredWords[reason as keyof typeof notCoveredWords] // just found among its keys
    : evidenceWords[reason as keyof typeof evidenceWords]; // the only other list of reasons
}

function unique(sentences: readonly string[]): readonly string[] {
  return [...new Set(sentences)];
}
