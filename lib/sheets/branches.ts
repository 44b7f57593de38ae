// Which checks wait for another one's result. The rows follow the table for washers that will not drain (published order
// of checks and common practice); every other branch follows from what a result rules out.
import type { Condition } from "@/lib/evidence/condition";
import { absent, any, decided, open, saw } from "@/lib/evidence/entries/make-entry";

const silentPump = absent("pump_voltage");

/** Asked only where it holds, provided that the plan has the checks that it speaks of. */
const waits: Readonly<Record<string, Branch>> = {
  pump_winding_at_board: { when: silentPump, words: "no voltage at the pump" },
  connector_reseat: { when: silentPump, words: "no voltage at the pump" },
  connector_condition: { when: silentPump, words: "no voltage at the pump" },
  board_output: { when: silentPump, words: "no voltage at the pump" },
  board_condition: { when: absent("board_output"), words: "no output from the board" },
  harness_resistance: {
    when: open("pump_winding_at_board"),
    words: "open at the board, good at the pump",
  },
  // Full flow into a bucket and a machine that does not drain: the house drain is next; no flow: the hose's bore.
  downstream: { when: decided("flow_test"), words: "the flow test is done" },
  pump_housing: {
    when: any(saw("impeller", "seized", "loose", "cracked"), saw("flow_test", "none", "slow")),
    words: "the impeller is damaged, or little or nothing flows",
  },
};

export interface Branch {
  readonly when: Condition;
  /** The result that leads to the check. */
  readonly words: string;
}

/** What must have been found before the check is asked for, on a plan with these checks; undefined where nothing must. */
export function branchOf(check: string, planned: ReadonlySet<string>): Branch | undefined {
  const branch = Object.hasOwn(waits, check) ? waits[check] : undefined;
  return branch !== undefined && checksOf(branch.when).every((key) => planned.has(key)) ? branch : undefined;
}

/** Keys of the checks that a condition speaks of. */
export function checksOf(condition: Condition): readonly string[] {
  switch (condition.is) {
    case "all":
    case "any":
      return [...new Set(condition.of.flatMap(checksOf))];
    case "not":
      return checksOf(condition.of);
    case "by_policy":
      return [];
    default:
      return [condition.check];
  }
}
