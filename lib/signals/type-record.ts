import type { ProductType } from "@/lib/domain/product-type";
import { type BlockRange, type BlockSums, blockSums } from "./block-sums";
import { type ExposureWeeks, exposureWeeks } from "./exposure-weeks";
import { type ModelSums, type RestOfType, restOfType } from "./rest-of-type";
import type { Cohort, SignalRecord, WeeklyJobs, WordKind } from "./signal-record";
import { ageBandOfWeeks } from "./weeks";

/** Machines of one product type: what one model suffers is measured against the others. */
export interface TypeRecord {
  readonly productType: ProductType;
  /** By position in the record's models. */
  readonly models: ReadonlyMap<number, ExposureWeeks>;
  readonly lines: readonly Line[];
}

/** One word of one product type with all that happened under it. */
export interface Line {
  readonly kind: WordKind;
  readonly word: string;
  readonly eventsOf: ReadonlyMap<number, readonly LineEvent[]>;
  /** Of one model of the type. */
  readonly sumsOf: (model: number) => ModelSums | undefined;
  readonly rest: RestOfType;
}

export interface LineEvent {
  readonly week: number;
  readonly knownWeek: number;
  readonly band: number;
  readonly madeHalf: number | undefined;
  /** Component that was found at fault, whatever word the event stands under. */
  readonly failed: string | undefined;
  /** How many jobs. */
  readonly amount: number;
}

export function typeRecords(
  record: SignalRecord,
  range: BlockRange,
  cohortsOf: ReadonlyMap<number, readonly Cohort[]>,
): TypeRecord[] {
  const types = new Map<ProductType, { models: Map<number, ExposureWeeks>; events: Events }>();
  record.models.forEach(({ productType }, model) => {
    const type = types.get(productType) ?? { models: new Map(), events: new Map() };
    types.set(productType, type);
    type.models.set(model, exposureWeeks(record, range, cohortsOf.get(model) ?? []));
  });
  for (const jobs of record.jobs) {
    const type = types.get(record.models[jobs.model]?.productType ?? "other_equipment");
    if (type === undefined) continue;
    if (jobs.failed !== undefined) addEvent(type.events, "component", jobs.failed, jobs);
    if (jobs.symptom !== undefined) addEvent(type.events, "symptom", jobs.symptom, jobs);
  }
  return [...types].map(([productType, { models, events }]) => ({
    productType,
    models,
    lines: [...events.values()]
      .toSorted((a, b) => (a.kind === b.kind ? (a.word < b.word ? -1 : 1) : a.kind < b.kind ? -1 : 1))
      .map((line) => lineOf(line, models, range)),
  }));
}

type GrowingLine = Pick<Line, "kind" | "word"> & { readonly eventsOf: Map<number, LineEvent[]> };
type Events = Map<string, GrowingLine>;

function addEvent(events: Events, kind: WordKind, word: string, jobs: WeeklyJobs): void {
  const key = `${kind} ${word}`;
  const line = events.get(key) ?? { kind, word, eventsOf: new Map() };
  events.set(key, line);
  const own = line.eventsOf.get(jobs.model) ?? [];
  line.eventsOf.set(jobs.model, own);
  own.push({
    week: jobs.failedWeek,
    knownWeek: jobs.knownWeek,
    band: ageBandOfWeeks(jobs.failedWeek - jobs.inServiceWeek),
    madeHalf: jobs.madeHalf,
    failed: jobs.failed,
    amount: jobs.jobs,
  });
}

function lineOf(line: GrowingLine, models: ReadonlyMap<number, ExposureWeeks>, range: BlockRange): Line {
  const events = new Map([...line.eventsOf].map(([model, own]) => [model, sumsOfEvents(own, range)]));
  const sums = new Map(
    [...models].map(([model, { sums: exposure }]) => [model, { exposure, events: events.get(model) }]),
  );
  return {
    ...line,
    rest: restOfType(range, sums),
    sumsOf: (model) => sums.get(model),
  };
}

/** @param into  sums that are needed no more, to be written over */
export function sumsOfEvents(events: readonly LineEvent[], range: BlockRange, into?: BlockSums): BlockSums {
  return blockSums(range, events, into);
}
