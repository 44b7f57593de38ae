import { checkOf } from "./checks";
import type { EvidenceEntry, EvidenceNeed } from "./entry";

/** What of an entry does not depend on the job that is held against it. */
export interface EntryPlan {
  readonly needs: readonly KeyedNeed[];
  /** Required checks that no need asks for by itself. */
  readonly steps: readonly PlannedStep[];
  readonly proofLabel: string;
  /** Whether any of the required checks can still be made after the repair. */
  readonly canBeProvenLater: boolean;
  readonly requiredChecks: ReadonlySet<string>;
  /** Whether one of them needs a meter; else the entry is proven by eye and hand alone. */
  readonly needsMeter: boolean;
  readonly excludedCauses: ReadonlySet<string>;
}

export interface KeyedNeed extends EvidenceNeed {
  /** Of the item that answers it. */
  readonly key: string;
}

export interface PlannedStep {
  readonly key: string;
  readonly label: string;
  readonly checks: readonly [string, ...string[]];
}

const plans = new WeakMap<EvidenceEntry, EntryPlan>();

/** Worked out once for each entry: it is asked for with every job that is judged. */
export function planOf(entry: EvidenceEntry): EntryPlan {
  const known = plans.get(entry);
  if (known !== undefined) return known;
  const plan = madePlan(entry);
  plans.set(entry, plan);
  return plan;
}

function madePlan(entry: EvidenceEntry): EntryPlan {
  const needs = entry.minimumEvidence.map(({ text, need }) => ({ text, need, key: keyOf(need) }));
  const asked = new Set(needs.map(({ key }) => key));
  const required = [...new Set(entry.steps.flat())];
  return {
    needs,
    steps: entry.steps
      .filter((checks) => !checks.some((check) => asked.has(`check:${check}`)))
      .map((checks) => ({
        key: `check:${checks[0]}`,
        label: checks.map((check) => checkOf(check)?.name ?? check).join(" or "),
        checks,
      })),
    proofLabel: `Shown: ${entry.failure}`,
    canBeProvenLater: required.some((check) => checkOf(check)?.laterToo === true),
    requiredChecks: new Set(required),
    needsMeter: required.some(needsMeter),
    excludedCauses: new Set(entry.notCoveredIf.map(({ cause }) => cause)),
  };
}

function keyOf(need: EvidenceNeed["need"]): string {
  switch (need.kind) {
    case "photo":
    case "photos":
      return `photo:${need.subjects.join("+")}`;
    case "reading":
      return `check:${need.check}`;
    default:
      return need.kind;
  }
}

function needsMeter(check: string): boolean {
  const [mode] = checkOf(check)?.modes ?? ["observation"];
  return mode !== "observation" && mode !== "fault_code";
}
