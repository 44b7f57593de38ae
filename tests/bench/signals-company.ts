// The invented company as signals see it, straight from its generator: what its files would say, without writing them.

import { type Cohort, halfOfDay, type SignalRecord, type WeeklyJobs } from "@/lib/signals/signal-record";
import { weekOf } from "@/lib/signals/weeks";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { componentProfiles } from "@/synthetic-data/component-profiles";
import { dayText } from "@/synthetic-data/day-text";
import { closedWithin } from "@/synthetic-data/delays";
import { observableShare } from "@/synthetic-data/job-dirt";
import { makers, modelNumber, models } from "@/synthetic-data/models";
import { type RegisterUnit, registerUnit } from "@/synthetic-data/register-unit";
import type { Scenario } from "@/synthetic-data/scenario";
import { unitJobs } from "@/synthetic-data/unit-jobs";

export interface CompanyUnit {
  readonly unit: RegisterUnit;
  readonly madeHalf: number | undefined;
}

export interface DrawnCompany {
  readonly record: SignalRecord;
  readonly units: readonly CompanyUnit[];
}

export function drawCompany(scenario: Scenario): DrawnCompany {
  const chance = seededDraws(scenario.seed + 77_000);
  const position = new Map(models.map((model, index) => [model.key, index]));
  const units: CompanyUnit[] = [];
  const cohorts: Cohort[] = [];
  const jobs: WeeklyJobs[] = [];
  for (let index = 0; index < scenario.units; index++) {
    const unit = registerUnit(scenario, index);
    if (!unit.placed) continue;
    const model = position.get(unit.model.key) ?? 0;
    const madeHalf = halfOf(unit.known.madeOn);
    const inServiceWeek = weekOf(unit.inServiceOn);
    units.push({ unit, madeHalf });
    const [from, until] = [weekOf(unit.observedFrom), weekOf(unit.observedTo)];
    if (until > from) {
      const changes: [number, number][] = [[from, 1]];
      if (unit.retiredOn !== undefined) changes.push([until, -1]);
      cohorts.push({ model, madeHalf, inServiceWeek, changes });
    }
    for (const { status, event, requestedOn, completedOn, returnsTo } of unitJobs(scenario, unit)) {
      if (status !== "closed" || returnsTo?.linked === true || chance.uniform() > observableShare) continue;
      const failed = event.kind === "failure" ? event.component : undefined;
      const symptom =
        event.kind === "call" ? event.rate.symptom : oneOf(componentProfiles[event.component]?.symptoms ?? [], chance);
      const failedWeek = weekOf(requestedOn);
      const knownWeek = weekOf(completedOn);
      jobs.push({ model, madeHalf, inServiceWeek, failedWeek, knownWeek, failed, symptom, jobs: 1 });
    }
  }
  const record: SignalRecord = {
    firstWeek: weekOf(scenario.recordsFromNumber) + 1,
    lastWeek: weekOf(scenario.untilNumber + 1) - 1,
    models: models.map((one, index) => ({
      modelId: index + 1,
      number: modelNumber(one),
      maker: makers[one.maker].name,
      productType: one.productType,
    })),
    cohorts,
    jobs,
    knownWithin: knownByWeek(),
  };
  return { record, units };
}

function halfOf(on: number | undefined): number | undefined {
  if (on === undefined) return undefined;
  const text = dayText(on);
  return halfOfDay(Number(text.slice(0, 4)), Number(text.slice(5, 7)));
}

function oneOf(entries: readonly string[], chance: { readonly uniform: () => number }): string | undefined {
  return entries[Math.floor(chance.uniform() * entries.length)];
}

/** Share of a week's calls that are closed by the end of a later week, from the law that delays are drawn from. */
function knownByWeek(): number[] {
  const days = closedWithin();
  const shares: number[] = [];
  for (let weeks = 0; (shares[shares.length - 1] ?? 0) < 1; weeks++) {
    const ages = [0, 1, 2, 3, 4, 5, 6].map((day) => days[Math.min(7 * weeks + day, days.length - 1)] ?? 1);
    shares.push(ages.reduce((sum, share) => sum + share, 0) / 7);
  }
  return shares;
}
