import type { Day } from "@/lib/calendar/day";
import type { PayItem } from "@/lib/domain/pay-item";
import type { DecisiveEvent } from "@/lib/domain/policy-start";
import { coverGates, type Gate } from "./cover-gates";
import type { CoverSource, CoverWindow, ItemDecision, RuleLook } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import { type DatedLine, datedLines, endsLater } from "./dated-lines";
import { decideItem, lineAnswers } from "./decide-item";
import type { StartContext } from "./find-start";
import { ruleLooks } from "./rule-looks";
import type { PolicyInForce } from "./select-policies";

export interface PolicyOutcome {
  readonly source: CoverSource;
  readonly items: ItemDecisions;
  /** Put into words only where somebody reads them. */
  readonly looked: () => readonly RuleLook[];
  /** Cover of the whole unit, which a contract may follow. */
  readonly wholeUnit: CoverWindow | undefined;
}

export type ItemDecisions = Readonly<Record<PayItem, ItemDecision>>;

/** One policy version against one job, pay item by pay item. */
export function decidePolicy(
  inForce: PolicyInForce,
  facts: CoverageFacts,
  makerCoverEnd: StartContext["makerCoverEnd"],
): PolicyOutcome {
  const source = sourceOf(inForce);
  const found = datedLines(inForce, facts, makerCoverEnd);
  const gates = [...coverGates(inForce.policy, facts), contractGate(inForce, facts)];
  const gate = gates.find((entry) => entry.kind === "stopped") ?? gates.find((entry) => entry.kind === "open");
  const decisiveOn = decisiveDay(inForce.policy.decisiveEvent, facts);
  const answers = { source, lines: lineAnswers(found.lines, source, decisiveOn), gate, decisiveOn };
  const items = {
    parts: decideItem("parts", answers),
    labour: decideItem("labour", answers),
    trip: decideItem("trip", answers),
    diagnosis: decideItem("diagnosis", answers),
  };
  const looked = () => ruleLooks({ policy: inForce.policy.key, found, gates, items });
  return { source, items, looked, wholeUnit: wholeUnitWindow(found.lines) };
}

export function decisiveDay(event: DecisiveEvent, facts: CoverageFacts): Day | undefined {
  switch (event) {
    case "reported":
      return facts.reported;
    case "visit":
      return facts.firstVisit;
    case "completed":
      return facts.completed;
  }
}

export function sourceOf({ policy, contract }: PolicyInForce): CoverSource {
  const { key, version, name, payer } = policy;
  return {
    policy: key,
    version,
    policyName: name,
    payerKind: payer.kind,
    payerName: payer.name,
    campaign: undefined,
    campaignName: undefined,
    ...(contract === undefined ? {} : { contract: contract.number }),
  };
}

/** A cancelled contract covers what was reported up to the day it was cancelled. */
function contractGate({ policy, contract }: PolicyInForce, facts: CoverageFacts): Gate {
  const decisiveOn = decisiveDay(policy.decisiveEvent, facts);
  const cancelledOn = contract?.cancelledOn;
  const isOut = cancelledOn !== undefined && decisiveOn !== undefined && decisiveOn > cancelledOn;
  return isOut
    ? { step: "payer_order", kind: "stopped", reason: "contract_cancelled", deadline: cancelledOn }
    : { step: "payer_order", kind: "passed", deadline: undefined };
}

function wholeUnitWindow(lines: readonly DatedLine[]): CoverWindow | undefined {
  let longest: CoverWindow | undefined;
  for (const line of lines) {
    if (line.kind !== "dated" || !line.isWholeUnit || line.unsure !== undefined) continue;
    if (longest === undefined || endsLater(line.window.last, longest.last)) longest = line.window;
  }
  return longest;
}
