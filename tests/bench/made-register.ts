import type { ExposureCells, JobCell, RepeatedJob, UnitWindow } from "@/lib/failures/cells";
import type { LifeColumns } from "@/lib/statistics/survival/life-rows";
import { minimalStandard } from "../minimal-standard";

/** Twelve years in days; records begin in the fifth, so that a third of the units enter late. */
export const cutOff = 4383;
const recordsFrom = 1461;
const models = 300;
/** A model is sold for three years. */
const soldFor = 1096;
const types = ["dishwasher", "refrigerator", "range_oven", "gas_dryer", "electric_dryer"] as const;
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
  const next = minimalStandard(20260311);
  const inServiceOn = Int32Array.from({ length: units }, (_, unit) =>
    Math.floor(((unit % models) / models) * (cutOff - 30 - soldFor) + next() * soldFor),
  );
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
 * The counts that a database would keep of the register for one component.
 * @param having  in how many of the five types the component is built, from 1 to 5; the units of the others are not counted
 */
export function countsOf(register: MadeRegister, component: number, having: number): ExposureCells {
  const windows: UnitWindow[] = [];
  for (let model = 0; model < models; model++) {
    if (model % types.length >= having) continue;
    const counts = new Map<number, number>();
    for (let unit = model; unit < register.inServiceOn.length; unit += models) {
      const key = (register.inServiceOn[unit] ?? 0) * 2 * never + (register.retiredOn[unit] ?? 0);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    // In the order in which the database writes them.
    for (const [key, units] of [...counts].sort(([a], [b]) => a - b)) {
      windows.push({ modelId: model, units, ...placeOf(Math.floor(key / (2 * never)), key % (2 * never)) });
    }
  }
  const jobs = jobCells(register, component).filter(({ modelId }) => modelId % types.length < having);
  return {
    models: Array.from({ length: models }, (_, modelId) => ({
      modelId,
      number: `M${modelId}`,
      maker: "One",
      productType: types[modelId % types.length] ?? "dishwasher",
    })),
    components: Array.from({ length: components }, (_, index) => ({
      key: `part_${index}`,
      name: `Part ${index}`,
      productTypes: types.slice(0, having),
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
