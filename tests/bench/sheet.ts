// How many checks and minutes it takes to the right component or cause on the invented company's jobs: by the order that
// is proposed from its own counts, and by the sheet's order. Counts come from earlier jobs than those that are walked.
import { componentOf } from "@/lib/domain/components";
import { type ProductType, productTypes } from "@/lib/domain/product-type";
import { symptomOf } from "@/lib/domain/symptoms";
import { causesShownBy } from "@/lib/sheets/expected-findings";
import { nextCheck } from "@/lib/sheets/next-check";
import { ageBandOf, type SheetBasis, type SymptomCell, sheetBasis } from "@/lib/sheets/sheet-basis";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import type { Verdict } from "@/lib/sheets/verdict";
import { componentsBehind, type VisitPlan, visitPlan } from "@/lib/sheets/visit-plan";
import { jobDetail } from "@/synthetic-data/job-detail";
import { planDemo } from "@/synthetic-data/plan-demo";
import { scenarioOf } from "@/synthetic-data/scenario";
import { type Truth, toldReadings } from "../sheets/told-readings";
import { walkCase } from "../sheets/walk-case";

interface DemoJob extends SymptomCell {
  readonly symptom: string;
  readonly productType: ProductType;
  readonly failureMode: string | undefined;
  readonly on: number;
  readonly tells: number;
}

export interface OrderCost {
  readonly walked: number;
  /** Those whose sheet came to the right component or cause. */
  readonly found: number;
  readonly checks: number;
  readonly minutes: number;
}

export interface OrdersCompared {
  readonly fixed: OrderCost;
  readonly proposed: OrderCost;
  /** Symptom of a kind of machine, with the sums of its walks. */
  readonly bySymptom: ReadonlyMap<string, { readonly fixed: OrderCost; readonly proposed: OrderCost }>;
}

/** @param most  walks at most, spread evenly over the last two years' jobs */
export function compareOrders({
  seed,
  size,
  most,
}: {
  readonly seed: number;
  readonly size: number;
  readonly most: number;
}): OrdersCompared {
  const jobs = demoJobs(seed, size);
  const last = jobs.reduce((day, job) => Math.max(day, job.on), 0);
  const recent = jobs.filter(({ on }) => on > last - 730);
  const learnt = groupBy(
    jobs.filter(({ on }) => on <= last - 730),
    placeOf,
  );
  const step = Math.max(1, Math.floor(recent.length / most));
  const sums = new Map<string, { fixed: OrderCost; proposed: OrderCost }>();
  for (const job of recent.filter((_, place) => place % step === 0)) {
    const plan = planOf(job);
    const truth = plan === undefined ? undefined : truthOf(job, plan);
    if (plan === undefined || truth === undefined) continue;
    const basis = sheetBasis(learnt.get(placeOf(job)) ?? [], job);
    const before = sums.get(placeOf(job)) ?? { fixed: none, proposed: none };
    sums.set(placeOf(job), {
      fixed: add(before.fixed, walkOnce(plan, truth, undefined)),
      proposed: add(before.proposed, walkOnce(plan, truth, basis)),
    });
  }
  const total = (which: "fixed" | "proposed") => [...sums.values()].reduce((sum, each) => add(sum, each[which]), none);
  return { fixed: total("fixed"), proposed: total("proposed"), bySymptom: sums };
}

export function benchSheet(): void {
  const { fixed, proposed, bySymptom } = compareOrders({ seed: 1, size: 0.5, most: 6_000 });
  const mean = (cost: OrderCost) =>
    `${(cost.checks / cost.walked).toFixed(2)} checks, ${(cost.minutes / cost.walked).toFixed(1)} min to the right one, found in ${cost.found} of ${cost.walked}`;
  console.log(`check sheet, the sheet's order:  ${mean(fixed)}`);
  console.log(`check sheet, the proposed order: ${mean(proposed)}`);
  console.log("minutes, sheet's order → proposed, where 40 walks or more:");
  for (const [name, costs] of [...bySymptom].filter(([, { fixed: own }]) => own.walked >= 40).sort())
    console.log(
      `  ${name}: ${(costs.fixed.minutes / costs.fixed.walked).toFixed(1)} → ${(costs.proposed.minutes / costs.proposed.walked).toFixed(1)} (${costs.fixed.walked})`,
    );
}

const none: OrderCost = { walked: 0, found: 0, checks: 0, minutes: 0 };

function add(a: OrderCost, b: OrderCost): OrderCost {
  return {
    walked: a.walked + b.walked,
    found: a.found + b.found,
    checks: a.checks + b.checks,
    minutes: a.minutes + b.minutes,
  };
}

/** Until the sheet names the right one, or has nothing left to ask. */
function walkOnce(plan: VisitPlan, truth: Truth, basis: SheetBasis | undefined): OrderCost {
  const { answers, walked, minutes } = walkCase(plan, toldReadings(truth, new Set(["flow_test"])), {
    until: ({ verdict }) => isRight(verdict, truth),
    choose: (_, now) => {
      const proposal = nextCheck(plan, now, basis);
      return proposal.kind === "next" ? proposal.step : undefined;
    },
  });
  const checks = new Set(answers.map(({ check }) => check)).size;
  return { walked: 1, found: isRight(walked.verdict, truth) ? 1 : 0, checks, minutes };
}

function isRight(verdict: Verdict, truth: Truth): boolean {
  if (truth.kind === "part")
    return verdict.kind === "part" && verdict.entries.some(({ component }) => component === truth.entry.component);
  return truth.kind === "outside" && verdict.kind === "outside" && verdict.cause === truth.cause;
}

function truthOf(job: DemoJob, plan: VisitPlan): Truth | undefined {
  const [kind, key = ""] = job.of.split(":");
  if (kind === "component") {
    const of = plan.entries.filter(({ component, failureClass }) => component === key && failureClass !== "external");
    const knowing = of.filter(
      ({ failureModes }) => job.failureMode !== undefined && failureModes.includes(job.failureMode),
    );
    const [entry] = knowing.length > 0 ? knowing : of;
    return entry === undefined ? undefined : { kind: "part", entry };
  }
  const ways = plan.steps.filter(({ check }) => causesShownBy(check).some((cause) => cause === key));
  const shown = ways[job.tells % Math.max(1, ways.length)]?.check;
  const cause = shown === undefined ? undefined : causesShownBy(shown).find((each) => each === key);
  return shown === undefined || cause === undefined ? undefined : { kind: "outside", cause, shownBy: shown.key };
}

const plans = new Map<string, VisitPlan | undefined>();

function planOf(job: DemoJob): VisitPlan | undefined {
  const name = placeOf(job);
  if (!plans.has(name)) {
    const { productType, symptom } = job;
    const sheets = shippedSheets().filter((sheet) => sheet.productType === productType);
    const behind = new Set(componentsBehind(productType, symptom, sheets));
    const own = sheets.filter(({ component }) => behind.has(component));
    plans.set(name, own.length === 0 ? undefined : visitPlan({ productType, symptom, sheets: own }));
  }
  return plans.get(name);
}

function placeOf({ productType, symptom }: DemoJob): string {
  return `${productTypes[productType]}, ${symptomOf(symptom)?.name.toLowerCase() ?? symptom}`;
}

function demoJobs(seed: number, size: number): readonly DemoJob[] {
  const scenario = scenarioOf({ seed, size, until: "2026-06-30" });
  const jobs: DemoJob[] = [];
  planDemo(scenario, (unit, plans) => {
    for (const plan of plans) {
      if (plan.status !== "closed" || plan.returnsTo !== undefined) continue;
      const { symptom, component, cause, failureMode } = jobDetail(scenario, unit, plan);
      const isFailure = cause === "component" && component !== undefined && componentOf(component) !== undefined;
      jobs.push({
        modelId: modelNumber(unit.model.key),
        ageBand: ageBandOf(plan.requestedOn - unit.inServiceOn),
        of: isFailure ? `component:${component}` : `cause:${cause}`,
        jobs: 1,
        symptom,
        productType: unit.model.productType,
        failureMode,
        on: plan.completedOn,
        tells: unit.index + plan.tells,
      });
    }
  });
  return jobs;
}

const numbers = new Map<string, number>();
function modelNumber(model: string): number {
  if (!numbers.has(model)) numbers.set(model, numbers.size);
  return numbers.get(model) ?? 0;
}

function groupBy<Row>(rows: readonly Row[], name: (row: Row) => string): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(name(row));
    if (group === undefined) groups.set(name(row), [row]);
    else group.push(row);
  }
  return groups;
}
