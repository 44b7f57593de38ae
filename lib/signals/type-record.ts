import type { ProductType } from "@/lib/domain/product-type";
import { type BlockRange, type BlockSums, blockSums, sumsRoom } from "./block-sums";
import type { ExposureWeeks } from "./exposure-weeks";
import { type ModelSums, type RestOfType, restOfType } from "./rest-of-type";
import type { SignalRecord, WeeklyJobs, WordKind } from "./signal-record";
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

/** @param exposureOf  a model, by position in the record's models */
export function typeRecords(
  record: SignalRecord,
  range: BlockRange,
  exposureOf: (model: number) => ExposureWeeks,
): TypeRecord[] {
  const room = sumsRoom(range);
  const types = new Map<ProductType, { models: Map<number, ExposureWeeks>; events: Events }>();
  record.models.forEach(({ productType }, model) => {
    const type = types.get(productType) ?? { models: new Map(), events: { component: new Map(), symptom: new Map() } };
    types.set(productType, type);
    type.models.set(model, exposureOf(model));
  });
  for (const jobs of record.jobs) {
    const type = types.get(record.models[jobs.model]?.productType ?? "other_equipment");
    if (type === undefined) continue;
    const event = eventOf(jobs);
    if (jobs.failed !== undefined) addEvent(type.events, "component", jobs.failed, jobs.model, event);
    if (jobs.symptom !== undefined) addEvent(type.events, "symptom", jobs.symptom, jobs.model, event);
  }
  return [...types].map(([productType, { models, events }]) => ({
    productType,
    models,
    lines: [...events.component.values(), ...events.symptom.values()]
      .toSorted((a, b) => (a.kind === b.kind ? (a.word < b.word ? -1 : 1) : a.kind < b.kind ? -1 : 1))
      .map((line) => lineOf(line, models, range, room)),
  }));
}

type GrowingLine = Pick<Line, "kind" | "word"> & { readonly eventsOf: Map<number, LineEvent[]> };
type Events = Readonly<Record<WordKind, Map<string, GrowingLine>>>;

function addEvent(events: Events, kind: WordKind, word: string, model: number, event: LineEvent): void {
  const line = events[kind].get(word) ?? { kind, word, eventsOf: new Map() };
  events[kind].set(word, line);
  const own = line.eventsOf.get(model);
  if (own === undefined) line.eventsOf.set(model, [event]);
  else own.push(event);
}

function eventOf({ failedWeek, knownWeek, inServiceWeek, madeHalf, failed, jobs }: WeeklyJobs): LineEvent {
  return {
    week: failedWeek,
    knownWeek,
    band: ageBandOfWeeks(failedWeek - inServiceWeek),
    madeHalf,
    failed,
    amount: jobs,
  };
}

function lineOf(
  line: GrowingLine,
  models: ReadonlyMap<number, ExposureWeeks>,
  range: BlockRange,
  room: () => BlockSums,
): Line {
  const sums = new Map<number, ModelSums>();
  for (const [model, { sums: exposure }] of models) {
    const own = line.eventsOf.get(model);
    sums.set(model, { exposure, events: own && sumsOfEvents(own, range, room()) });
  }
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
