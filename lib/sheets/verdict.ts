// What the answers so far show: a part and how it failed, a cause outside it, that nothing is wrong, or not yet.
import type { Cause } from "@/lib/domain/cause";
import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import { holds } from "@/lib/evidence/condition";
import type { JudgedReading } from "@/lib/evidence/current-readings";
import { isBad } from "@/lib/evidence/decided";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { noDrainVerdict } from "@/lib/evidence/no-drain-verdict";
import { checkOfReading } from "@/lib/evidence/own-check";
import { failureWords } from "./shown-mode";
import type { VisitPlan } from "./visit-plan";

export type Verdict =
  | { readonly kind: "open" }
  /** The proof of these entries holds and nothing speaks against it. */
  | {
      readonly kind: "part";
      readonly entries: readonly EvidenceEntry[];
      readonly why: string;
      readonly by: readonly number[];
    }
  | { readonly kind: "outside"; readonly cause: Cause; readonly why: string; readonly by: readonly number[] }
  | { readonly kind: "no fault"; readonly why: string; readonly by: readonly number[] }
  /** A part is bad, and only after it is replaced can be told whether another is. */
  | { readonly kind: "part first"; readonly component: string; readonly why: string; readonly by: readonly number[] }
  /** The fault went with the connectors reseated: the connection was the cause, and no part is to be condemned. */
  | { readonly kind: "reseated"; readonly why: string; readonly by: readonly number[] }
  /** Something must be put right before the readings mean anything. */
  | { readonly kind: "put right first"; readonly why: string; readonly by: readonly number[] };

interface Seen {
  readonly current: readonly JudgedReading[];
  readonly readings: readonly Reading[];
  readonly ranges: readonly ExpectedRange[];
}

export function verdictOf(plan: VisitPlan, seen: Seen): Verdict {
  const found = stillDry(plan, seen.current) ? seen.current.filter((entry) => !isCleared(plan, entry)) : seen.current;
  const outside = outsideCause(found);
  if (outside !== undefined) return outside;
  return ofTable(plan, seen) ?? ofEntries(plan, seen.current) ?? ofConnection(seen.current) ?? { kind: "open" };
}

/** Entries that nothing found so far speaks against, and that no outside cause excludes. */
export function liveEntries(plan: VisitPlan, current: readonly JudgedReading[]): readonly EvidenceEntry[] {
  return plan.entries.filter((entry) => !isRuledOut(entry, current));
}

/** A reading that proves nothing must be taken again: it rules nothing out. What speaks against one mode only does not either. */
export function isRuledOut(entry: EvidenceEntry, current: readonly JudgedReading[]): boolean {
  return entry.contradictedBy.some(
    ({ when, onlyFor }) => onlyFor === undefined && when.is !== "worthless" && holds(when, current) !== undefined,
  );
}

export function isExternal({ failureClass }: EvidenceEntry): boolean {
  return failureClass === "external";
}

/** The first finding that puts the cause outside the part. */
function outsideCause(current: readonly JudgedReading[]): Extract<Verdict, { readonly kind: "outside" }> | undefined {
  for (const { reading, judgement } of current) {
    const by = [reading.number];
    const check = checkOfReading(reading);
    if (judgement.kind === "finding" && judgement.finding.cause !== undefined)
      return { kind: "outside", cause: judgement.finding.cause, why: judgement.finding.means, by };
    if (check?.outsideWhenBad !== undefined && isBad(judgement))
      return { kind: "outside", cause: check.outsideWhenBad, why: `${check.name.toLowerCase()} out of range`, by };
  }
  return undefined;
}

/** What an external entry asks of is put right before the drain test; a board with marks of a surge, or corroded pins, are not. */
function isCleared(plan: VisitPlan, { reading }: JudgedReading): boolean {
  const step = plan.steps.find(({ check }) => check.key === reading.check);
  return plan.entries.some((entry) => isExternal(entry) && step?.entryIds.has(entry.id) === true);
}

/** Cleared, and still nothing moves: the outside cause was not all of it, so the search goes on. */
function stillDry(plan: VisitPlan, current: readonly JudgedReading[]): boolean {
  const external = plan.entries.filter(isExternal);
  return external.length > 0 && external.every((entry) => isRuledOut(entry, current)) && !isBlockedPast(current);
}

function isBlockedPast(current: readonly JudgedReading[]): boolean {
  return holds({ is: "word", check: "downstream", words: ["blocked"] }, current) !== undefined;
}

/** The table for front-load washers that will not drain knows more than the entries one by one. */
function ofTable(plan: VisitPlan, { readings, ranges, current }: Seen): Verdict | undefined {
  if (plan.productType !== "front_load_washer" || plan.symptom !== "will_not_drain") return undefined;
  const { kind, component, why, by } = noDrainVerdict(readings, ranges);
  switch (kind) {
    case "no_fault_found":
      return { kind: "no fault", why, by };
    case "pump_first_then_board":
      return component === undefined ? undefined : { kind: "part first", component, why, by };
    case "interlocks_first":
      return { kind: "put right first", why, by };
    case "pump_electrical":
    case "pump_mechanical":
    case "board":
    case "harness": {
      const of = plan.entries.filter((entry) => entry.component === component && !isRuledOut(entry, current));
      const proven = of.filter((entry) => holds(entry.proof, current) !== undefined);
      return proven.length > 0 ? { kind: "part", entries: proven, why, by } : undefined;
    }
    default:
      return undefined;
  }
}

function ofEntries(plan: VisitPlan, current: readonly JudgedReading[]): Verdict | undefined {
  const parts = plan.entries.filter((entry) => !isExternal(entry));
  const shown = parts.filter((entry) => !isRuledOut(entry, current) && holds(entry.proof, current) !== undefined);
  const [first] = shown;
  if (first !== undefined) {
    const by = [...new Set(shown.flatMap(({ proof }) => holds(proof, current) ?? []))];
    return { kind: "part", entries: shown, why: failureWords(first, current), by };
  }
  return undefined;
}

function ofConnection(current: readonly JudgedReading[]): Verdict | undefined {
  const by = holds({ is: "word", check: "connector_reseat", words: ["cured"] }, current);
  return by === undefined
    ? undefined
    : { kind: "reseated", why: "a connection was loose: reseated, the fault is gone", by };
}
