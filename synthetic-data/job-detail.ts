import type { Cause } from "@/lib/domain/cause";
import type { PayerKind } from "@/lib/domain/job";
import { symptomOf } from "@/lib/domain/symptoms";
import { technicians } from "./company";
import { profileOf } from "./component-profiles";
import { happens, pickOne } from "./draws";
import { drawPayer } from "./job-payer";
import { callWords, failureWords, type JobWords } from "./job-words";
import { type Random, randomOf } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import type { JobPlan } from "./unit-jobs";

/** What was found on a job, whatever paper about it gets lost later. */
export interface JobDetail {
  readonly random: Random;
  readonly symptom: string;
  readonly component: string | undefined;
  readonly failureMode: string | undefined;
  readonly cause: Cause;
  readonly words: JobWords;
  readonly technician: string;
  readonly payer: PayerKind;
  readonly covered: boolean;
  readonly usesPart: boolean;
  readonly minutes: number;
}

export function jobDetail(scenario: Scenario, unit: RegisterUnit, job: JobPlan): JobDetail {
  const random = randomOf(scenario.seed, unit.index, 4, job.tells);
  const technician = pickOne(random, technicians);
  const filed = drawPayer(random, unit, job);
  const common = { random, technician, ...filed };
  if (job.returnsTo !== undefined) return { ...common, ...returnVisit(random, unit, job) };
  if (job.event.kind === "call") {
    const { rate } = job.event;
    const found = { symptom: rate.symptom, component: rate.component, failureMode: undefined, cause: rate.cause };
    const words = callWords(random, rate.symptom, rate.cause);
    return {
      ...common,
      ...found,
      words,
      usesPart: happens(random, 0.12),
      minutes: 25 + Math.floor(random.share() * 30),
    };
  }
  const { component } = job.event;
  const profile = profileOf(component);
  const symptom = drawSymptom(random, unit, component);
  const failureMode = pickOne(random, profile.modes);
  const usesPart = job.status === "closed" || job.status === "duplicate" ? happens(random, 0.9) : false;
  const words = failureWords(random, symptom, component, failureMode, usesPart);
  const minutes = Math.round(profile.minutes * (0.8 + 0.5 * random.share())) + 15;
  return { ...common, symptom, component, failureMode, cause: "component", words, usesPart, minutes };
}

/**
 * A return visit that is a row of its own is never a failure of the component: the new part's own early failures are
 * in the hazard already, and a row for each would count them twice.
 */
function returnVisit(random: Random, unit: RegisterUnit, job: JobPlan) {
  const cause = pickOne(random, [
    "no_fault_found",
    "no_fault_found",
    "installation",
    "education",
    "not_determined",
  ] as const);
  const component = job.event.kind === "failure" ? job.event.component : job.event.rate.component;
  const symptom =
    job.event.kind === "failure" ? drawSymptom(random, unit, job.event.component) : job.event.rate.symptom;
  const words = callWords(random, symptom, cause);
  return { symptom, component, failureMode: undefined, cause, words, usesPart: false, minutes: 30 } as const;
}

function drawSymptom(random: Random, unit: RegisterUnit, component: string): string {
  const { productType } = unit.model;
  const fitting = profileOf(component).symptoms.filter(
    (key) => symptomOf(key)?.productTypes.includes(productType) === true,
  );
  return pickOne(random, fitting);
}
