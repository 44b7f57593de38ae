import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import type { ExposureCells, JobPlace } from "./cells";
import { inFleet } from "./groups";
import { placeJob } from "./observation";
import type { LifeQuestion } from "./visit-spells";

/**
 * What happened to each unit, in whole days of the unit's age, for the mean number of failures per unit.
 * Units without failures come by their windows, units that failed once by the job cells, the others one by one.
 * Checked: tests/failures/component-spells.test.ts and tests/db/counts-equal-rows.test.ts, against histories built unit by unit.
 */
export function unitHistories(cells: ExposureCells, question: LifeQuestion): UnitHistory[] {
  const asked = new Map(
    cells.models.map((model) => [
      model.modelId,
      inFleet(cells, model, { where: { ...question.where, component: question.component } }),
    ]),
  );
  const counts = (job: AskedJob) => asked.get(job.modelId) === true && isCounted(job, question);

  const again = new Map<string, { place: JobPlace; failedOn: number[] }>();
  for (const job of cells.repeated.filter(counts)) {
    const unit = again.get(job.unitId) ?? { place: job.place, failedOn: [] };
    unit.failedOn.push(job.failedOn);
    again.set(job.unitId, unit);
  }
  const once = new Tally<{ place: JobPlace; failedOn: number }>();
  for (const cell of cells.jobs.filter(counts)) {
    if (cell.place !== undefined)
      once.add(failureKey(cell.place, cell.failedOn), { place: cell.place, failedOn: cell.failedOn }, cell.jobs);
  }
  for (const { place, failedOn } of again.values()) {
    for (const on of failedOn) once.add(failureKey(place, on), { place, failedOn: on }, -1);
  }
  const sound = new Tally<JobPlace>();
  for (const window of cells.windows) {
    if (asked.get(window.modelId)) sound.add(placeKey(window), window, window.units);
  }
  for (const { item, count } of once.entries()) sound.add(placeKey(item.place), item.place, -count);
  for (const { place } of again.values()) sound.add(placeKey(place), place, -1);

  return [
    ...sound.entries().flatMap(({ item, count }) => history(item, [], count, question)),
    ...once.entries().flatMap(({ item, count }) => history(item.place, [item.failedOn], count, question)),
    ...[...again.values()].flatMap((unit) => history(unit.place, unit.failedOn, 1, question)),
  ];
}

interface AskedJob {
  readonly modelId: number;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
  readonly countedAs: "failure" | "call";
  readonly place: JobPlace | undefined;
  readonly failedOn: number;
}

function isCounted(job: AskedJob, question: LifeQuestion): boolean {
  const { symptom } = question.where;
  return (
    job.component === question.component &&
    job.countedAs === "failure" &&
    (symptom === undefined || symptom === job.symptom) &&
    placeJob(job.place, job.failedOn, question) === "counted"
  );
}

/** Half a day before the first watched day where that comes after the start, so that a failure on that day is seen. */
function history(place: JobPlace, failedOn: readonly number[], count: number, question: LifeQuestion): UnitHistory[] {
  const from = Math.max(place.observedFrom, question.from ?? Number.NEGATIVE_INFINITY);
  const end = Math.min(place.retiredOn ?? Number.POSITIVE_INFINITY, question.until);
  if (count <= 0 || end < from) return [];
  const entry = from > place.inServiceOn ? from - place.inServiceOn - 0.5 : 0;
  const events = failedOn.map((on) => ({ age: on - place.inServiceOn, size: 1 }));
  return [{ entry, exit: end - place.inServiceOn, count, events }];
}

class Tally<Item> {
  private readonly counts = new Map<string, { item: Item; count: number }>();

  add(key: string, item: Item, count: number): void {
    this.counts.set(key, { item, count: (this.counts.get(key)?.count ?? 0) + count });
  }

  entries(): { item: Item; count: number }[] {
    return [...this.counts.values()].filter(({ count }) => count > 0);
  }
}

function placeKey(place: JobPlace): string {
  return `${place.inServiceOn} ${place.observedFrom} ${place.retiredOn}`;
}

function failureKey(place: JobPlace, failedOn: number): string {
  return `${placeKey(place)} ${failedOn}`;
}
