import { expect, test } from "vitest";
import { signalRun } from "@/lib/signals/signal-run";
import { scenarioOf } from "@/synthetic-data/scenario";
import { drawCompany } from "@/tests/bench/signals-company";
import { power } from "@/tests/bench/signals-power";
import { decoyTarget, isTrue, targets, tellsOf } from "@/tests/bench/signals-targets";

// Recovery of what was planted, in one company of those that `npm run bench -- signals` goes through week by week.
test("the list of an invented company holds planted troubles, hardly anything else, and never the decoy", {
  timeout: 120_000,
}, () => {
  const { record } = drawCompany(scenarioOf({ seed: 2, size: 1, until: "2026-10-31" }));
  const run = signalRun(record);
  if (run.kind !== "followed") throw new Error(run.kind);
  const keys = run.signals.map(({ lead }) => lead.key);
  const found = targets.filter((target) => keys.some((key) => tellsOf(target, key)));
  expect(found.length).toBeGreaterThanOrEqual(5);
  expect(keys.filter((key) => !isTrue(key)).length).toBeLessThanOrEqual(2);
  expect(keys.some((key) => tellsOf(decoyTarget, key))).toBe(false);
});

test("no rule finds more than the best one for that stretch, and the sums come near it", () => {
  const { within13, within26, best13, best26 } = power(16, 3);
  expect(within13).toBeLessThanOrEqual(best13 + 0.03);
  expect(within26).toBeLessThanOrEqual(best26 + 0.03);
  expect(within26).toBeGreaterThan(0.9);
});
