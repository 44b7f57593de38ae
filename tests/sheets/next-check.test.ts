import { describe, expect, test } from "vitest";
import { hypothesesOf } from "@/lib/sheets/hypotheses";
import { fewestJobs, likelyNow, nextCheck } from "@/lib/sheets/next-check";
import type { SheetBasis } from "@/lib/sheets/sheet-basis";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import { componentsBehind, visitPlan } from "@/lib/sheets/visit-plan";
import { walk } from "@/lib/sheets/walk";
import { doubtOf } from "@/lib/statistics/choice/expected-information";
import { toldReadings } from "./told-readings";
import { walkCase } from "./walk-case";

const own = shippedSheets().filter(({ productType }) => productType === "front_load_washer");
const behind = componentsBehind("front_load_washer", "will_not_drain", own);
const plan = visitPlan({
  productType: "front_load_washer",
  symptom: "will_not_drain",
  sheets: own.filter(({ component }) => behind.includes(component)),
});
const share = (of: string, value: number) => ({ of, jobs: Math.round(value * 100), share: value, low: 0, high: 1 });
const basis = (jobs: number, ...shares: SheetBasis["shares"]): SheetBasis => ({ jobs, ownJobs: 10, shares });
const codeRead = walkCase(plan, toldReadings({ kind: "nothing" }, new Set()), {
  until: ({ path }) => path.length === 1,
});
const suds = basis(100, share("cause:suds_detergent", 0.9), share("component:drain_pump", 0.1));

describe("the check to do next", () => {
  test("the code is read first, whatever the counts say", () => {
    const proposal = nextCheck(plan, walk(plan, [], []), suds);
    expect(proposal).toMatchObject({ step: { check: { key: "fault_code" } }, reason: { because: "first" } });
  });
  test("where nine in ten were suds, suds are looked for first, and it says so", () => {
    const proposal = nextCheck(plan, codeRead.walked, suds);
    expect(proposal).toMatchObject({
      step: { check: { key: "suds" } },
      reason: { kind: "most per minute", jobs: 100 },
    });
    expect(
      proposal.kind === "next" && proposal.reason.kind === "most per minute" && proposal.reason.leading[0],
    ).toMatchObject({
      name: "Suds or wrong detergent",
    });
  });
  test("with few closed jobs it is the sheet's order, and it says that", () => {
    const few = nextCheck(plan, codeRead.walked, { ...suds, jobs: fewestJobs - 1 });
    expect(few).toMatchObject({
      step: { check: { key: "hose" } },
      reason: { because: "few jobs", jobs: fewestJobs - 1 },
    });
    expect(nextCheck(plan, codeRead.walked, undefined)).toMatchObject({ reason: { because: "few jobs", jobs: 0 } });
  });
  test("safety is never traded: no powered step is proposed or offered while one with the power off is open", () => {
    const boards = basis(1_000, share("component:control_board", 0.97), share("component:drain_pump", 0.03));
    walkCase(plan, toldReadings({ kind: "nothing" }, new Set()), {
      choose: (_, now) => {
        const proposal = nextCheck(plan, now, boards);
        if (proposal.kind !== "next") return undefined;
        const safest = Math.min(...now.open.map(({ tier }) => tier));
        for (const step of [proposal.step, ...proposal.others]) expect(step.tier).toBe(safest);
        return proposal.step;
      },
    });
  });
  // By hand: two causes, 0.9 to 0.1. The look at suds errs 3 times in 100, shared among three outcomes: 0.98 right. Under
  // suds: (0.01, 0.01, 0.98); under the pump (0.98, 0.01, 0.01). Mean of the two for the outcomes: (0.107, 0.01, 0.883).
  // Bits: 0.9·0.98·log2(0.98/0.883) + 0.9·0.01·log2(0.01/0.107) + 0.1·0.98·log2(0.98/0.107) + 0.1·0.01·log2(0.01/0.883)
  // = 0.13260 − 0.03077 + 0.31312 − 0.00646 = 0.40849, and the doubt is 0.46900: 87 in 100 of it.
  test("what it is expected to settle, worked by hand", () => {
    const proposal = nextCheck(plan, codeRead.walked, suds);
    if (proposal.kind !== "next" || proposal.reason.kind !== "most per minute") throw new Error("nothing was weighed");
    expect(doubtOf([0.9, 0.1])).toBeCloseTo(0.469, 4);
    expect(proposal.reason.settles).toBeCloseTo(0.40849 / 0.469, 2);
  });
  test("outcomes of every step add up to one under every hypothesis", () => {
    for (const { outcomes } of hypothesesOf(plan))
      for (const step of plan.steps) expect(outcomes(step).reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
  });
  test("a finding moves what is held likely towards what it speaks for", () => {
    const pumps = basis(100, share("component:drain_pump", 0.5), share("cause:foreign_object", 0.5));
    const found = walkCase(
      plan,
      toldReadings({ kind: "outside", cause: "foreign_object", shownBy: "trap" }, new Set()),
      {
        until: ({ path }) => path.some(({ answer }) => answer.check === "trap"),
      },
    );
    const likely = likelyNow(plan, found.walked, pumps);
    const at = likely?.hypotheses.findIndex(({ of }) => of === "cause:foreign_object") ?? -1;
    expect(likely?.weights[at]).toBeGreaterThan(0.9);
  });
});
