import type { DemoFiles } from "./demo-files";
import type { HeldRowWriter } from "./held-rows";
import { jobDetail } from "./job-detail";
import { type DirtKind, dirtShares } from "./job-dirt";
import { jobReadings } from "./job-readings";
import { jobRow } from "./job-row";
import { partLines } from "./part-lines";
import type { DemoPlan } from "./plan-demo";
import type { RegisterUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import type { PlantedLeaks } from "./truth";
import type { JobPlan } from "./unit-jobs";

export interface JobWriting {
  readonly scenario: Scenario;
  readonly files: DemoFiles;
  readonly held: HeldRowWriter;
  readonly tally: JobTally;
  readonly plan: DemoPlan;
}

/** What the truth tells about the rows written. */
export interface JobTally {
  readonly dirt: Record<DirtKind, number[]>;
  readonly add: (name: string) => void;
  readonly leak: (jobNumber: string | undefined) => void;
  readonly counts: () => Readonly<Record<string, number>>;
  readonly leaks: () => PlantedLeaks;
}

export function jobTally(): JobTally {
  const counts: Record<string, number> = {};
  const billed: string[] = [];
  let filed = 0;
  const kinds = Object.keys(dirtShares) as DirtKind[]; // Object.keys loses the key type
  return {
    dirt: Object.fromEntries(kinds.map((kind) => [kind, []])) as unknown as Record<DirtKind, number[]>, // every kind is there
    add: (name) => {
      counts[name] = (counts[name] ?? 0) + 1;
    },
    leak: (jobNumber) => {
      if (jobNumber === undefined) filed += 1;
      else billed.push(jobNumber);
    },
    counts: () => counts,
    leaks: () => ({ billedToCustomerThoughCovered: billed, filedUnderMakerNotClaimed: filed }),
  };
}

/** One job with its part lines and readings, and now and then a row that intake must hold. */
export function writeJob(
  { scenario, files, held, tally, plan }: JobWriting,
  unit: RegisterUnit,
  jobs: readonly JobPlan[],
  position: number,
): void {
  const job = jobs[position];
  if (job === undefined) throw new RangeError(`position: the unit has no job ${position}`);
  const detail = jobDetail(scenario, unit, job);
  const own = plan.numberOf(unit.index, position);
  const earlier = job.returnsTo?.linked === true ? plan.numberOf(unit.index, job.returnsTo.position) : undefined;
  const { cells, dirt } = jobRow(scenario, unit, job, detail, { own, earlier });
  const row = files.jobs.write(cells);
  for (const kind of dirt) tally.dirt[kind].push(row);
  held.afterJob(unit, cells);
  tallyJob(tally, job, own, detail, dirt);
  for (const line of partLines(unit, job, detail, own)) {
    files.partLines.write(line);
    held.afterPartLine(own);
  }
  const { rows, contradicted } = jobReadings(unit, job, detail, own);
  if (contradicted) tally.add("contradictedReadings");
  for (const reading of rows) {
    files.readings.write(reading);
    held.afterReading(own);
  }
}

function tallyJob(
  tally: JobTally,
  job: JobPlan,
  own: string,
  detail: ReturnType<typeof jobDetail>,
  dirt: ReadonlySet<DirtKind>,
): void {
  tally.add(`status_${job.status}`);
  if (job.status !== "closed") return;
  if (job.returnsTo !== undefined) tally.add(job.returnsTo.linked ? "callbacksLinked" : "callbacksUnlinked");
  if (job.event.kind !== "failure" || job.returnsTo !== undefined) return;
  tally.add("failures");
  const lost = (["serial_blank", "serial_wrong", "component_missing", "cause_unknown"] as const).some((kind) =>
    dirt.has(kind),
  );
  if (lost) tally.add("failuresHiddenByDirt");
  if (job.event.planted) tally.add("plantedFailures");
  if (!detail.covered || lost) return;
  tally.leak(detail.payer === "customer" ? own : undefined);
}
