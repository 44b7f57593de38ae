import type { ExposureCells, JobCell, RepeatedJob, UnitWindow } from "@/lib/failures/cells";
import type { LifeColumns } from "@/lib/statistics/survival/life-rows";

/** Twelve years in days; records begin in the fifth, so that a third of the units enter late. */
export const cutOff = 4383;
const recordsFrom = 1461;
const models = 300;
const components = 12;
const never = 1 << 20;

/** One invented company row by row: a fifth of the units are retired, failures wear in and out by component. */
export interface MadeRegister {
  readonly inServiceOn: Int32Array;
  readonly retiredOn: Int32Array;
  /** One number per job, ascending: unit, then component, then day. */
  readonly jobs: Float64Array;
}

/** The same on every run. Units can fail more than once, also of one component. */
export function makeRegister(units: number, jobs: number): MadeRegister {
  const next = chance();
  const inServiceOn = Int32Array.from({ length: units }, () => Math.floor(next() * (cutOff - 30)));
  const retiredOn = inServiceOn.map((on) => {
    const earliest = Math.max(on, recordsFrom) + 1;
    return next() < 0.2 ? earliest + Math.floor(next() * (cutOff - earliest)) : never;
  });
  const register = { inServiceOn, retiredOn, jobs: new Float64Array(jobs) };
  for (let job = 0; job < jobs; ) {
    const unit = Math.floor(next() * units);
    const component = Math.floor(next() * components);
    const shape = 0.7 + 0.15 * component;
    const { from, end } = watched(register, unit);
    const service = inServiceOn[unit] ?? 0;
    const [low, high] = [(from - service) ** shape, (end - service) ** shape];
    // Units are drawn as often as their hazard between entry and exit asks for.
    if (next() > (high - low) / cutOff ** shape) continue;
    const on = service + Math.floor((low + next() * (high - low)) ** (1 / shape));
    register.jobs[job++] = (unit * components + component) * 8192 + on;
  }
  register.jobs.sort();
  return register;
}

/**
 * The counts of the register as the page of one component reads them from the database (db/queries/exposure-cells.ts):
 * the windows of all models of one type together, and the failures of the component.
 */
export function countsOf(register: MadeRegister, component: number): ExposureCells {
  const counts = new Map<number, number>();
  register.inServiceOn.forEach((on, unit) => {
    const key = on * 2 * never + (register.retiredOn[unit] ?? 0);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  });
  const windows: UnitWindow[] = [...counts].map(([key, units]) => ({
    modelId: 0,
    units,
    ...placeOf(Math.floor(key / (2 * never)), key % (2 * never)),
  }));
  const jobs = jobCells(register, component);
  return {
    models: Array.from({ length: models }, (_, modelId) => ({
      modelId,
      number: `M${modelId}`,
      maker: "One",
      productType: "dishwasher" as const,
    })),
    components: Array.from({ length: components }, (_, index) => ({
      key: `part_${index}`,
      name: `Part ${index}`,
      productTypes: ["dishwasher" as const],
    })),
    symptoms: [],
    windows,
    jobs: jobs.map(({ unitId: _, ...cell }) => cell),
    repeated: jobs.filter(
      ({ unitId }, index) => jobs[index - 1]?.unitId === unitId || jobs[index + 1]?.unitId === unitId,
    ),
    unplaced: [],
  };
}

/** Each life of one component as a row of its own, made from units and jobs without any count. */
export function rawLives({ inServiceOn, retiredOn, jobs }: MadeRegister, component: number): LifeColumns {
  const [entry, exit, event]: [number[], number[], number[]] = [[], [], []];
  let job = 0;
  for (let unit = 0; unit < inServiceOn.length; unit++) {
    const { from, end } = watched({ inServiceOn, retiredOn }, unit);
    let begin = inServiceOn[unit] ?? 0;
    const live = (until: number, failed: boolean) => {
      if (until < from || (until === begin && !failed)) return;
      entry.push(from > begin ? from - begin - 0.5 : 0);
      exit.push(until - begin);
      event.push(failed ? 1 : 0);
      begin = until;
    };
    for (; Math.floor((jobs[job] ?? Number.POSITIVE_INFINITY) / (8192 * components)) === unit; job++) {
      const at = jobs[job] ?? 0;
      if (Math.floor(at / 8192) % components === component) live(at % 8192, true);
    }
    live(end, false);
  }
  return {
    entry: Float64Array.from(entry),
    exit: Float64Array.from(exit),
    event: Uint8Array.from(event),
    count: new Float64Array(entry.length).fill(1),
  };
}

type OwnedCell = JobCell & RepeatedJob;

function jobCells({ jobs, inServiceOn, retiredOn }: MadeRegister, component: number): OwnedCell[] {
  const own = jobs.filter((job) => Math.floor(job / 8192) % components === component);
  return Array.from(own, (job, index) => {
    const spell = Math.floor(job / 8192);
    const before = own[index - 1] ?? -1;
    const unit = Math.floor(spell / components);
    return {
      unitId: String(unit),
      modelId: unit % models,
      component: `part_${component}`,
      symptom: undefined,
      cause: "component",
      countedAs: "failure",
      place: placeOf(inServiceOn[unit] ?? 0, retiredOn[unit] ?? never),
      failedOn: job % 8192,
      previousFailedOn: Math.floor(before / 8192) === spell ? before % 8192 : undefined,
      jobs: 1,
    };
  });
}

function placeOf(inServiceOn: number, retiredOn: number) {
  return {
    inServiceOn,
    observedFrom: Math.max(inServiceOn, recordsFrom),
    retiredOn: retiredOn === never ? undefined : retiredOn,
  };
}

function watched({ inServiceOn, retiredOn }: Omit<MadeRegister, "jobs">, unit: number) {
  return {
    from: Math.max(inServiceOn[unit] ?? 0, recordsFrom),
    end: Math.min(retiredOn[unit] ?? never, cutOff),
  };
}

/** Park and Miller's minimal standard generator. */
function chance(): () => number {
  let state = 20260311;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
