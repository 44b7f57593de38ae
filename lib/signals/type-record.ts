import type { ProductType } from "@/lib/domain/product-type";
import { type BlockRange, type BlockSums, blockSums, sumsRoom } from "./block-sums";
import { type Causes, causesOfSymptom } from "./causes-of-symptom";
import type { ExposureWeeks } from "./exposure-weeks";
import { EventSorter, type ModelEvents } from "./line-events";
import { type ModelSums, type RestOfType, restOfType } from "./rest-of-type";
import type { SignalRecord, WordKind } from "./signal-record";
import { countsInTime } from "./weeks";

/** Machines that can be compared: what one model suffers is measured against the others. */
export interface MachineGroup {
  readonly productType: ProductType;
  /** By position in the record's models. */
  readonly models: ReadonlyMap<number, ExposureWeeks>;
  readonly lines: readonly Line[];
}

/** Machines of one product type, with their components and symptoms. */
export interface TypeRecord extends MachineGroup {
  /** Those of each maker by themselves, with its fault codes. */
  readonly makers: readonly MachineGroup[];
}

/** One word of a group of machines with all that happened under it. */
export interface Line {
  readonly kind: WordKind;
  readonly word: string;
  readonly eventsOf: ReadonlyMap<number, ModelEvents>;
  /** Of one model of the group. */
  readonly sumsOf: (model: number) => ModelSums | undefined;
  readonly rest: RestOfType;
  /** Of a symptom that models show for different reasons, since they are built differently; otherwise undefined. */
  readonly causes: Causes | undefined;
}

/** @param exposureOf  a model, by position in the record's models; undefined: it has no units and is left out */
export function typeRecords(
  record: SignalRecord,
  range: BlockRange,
  exposureOf: (model: number) => ExposureWeeks | undefined,
): TypeRecord[] {
  const room = sumsRoom(range);
  const linesOf = (words: readonly WordEvents[], { models }: MachineWords, components: readonly Line[]) => {
    const restOf = new Map(components.map(({ word, rest }) => [word, rest]));
    return words
      .toSorted((a, b) => (a.word < b.word ? -1 : 1))
      .map((word) => lineOf(word, { models, restOf, range, room }));
  };
  return typeWords(record, exposureOf).map((type) => {
    const components = linesOf(type.words.filter(isComponent), type, []);
    const symptoms = linesOf(
      type.words.filter((word) => !isComponent(word)),
      type,
      components,
    );
    return {
      productType: type.productType,
      models: type.models,
      lines: [...components, ...symptoms],
      makers: type.makers.map((own) => ({
        productType: type.productType,
        models: own.models,
        lines: linesOf(own.words, own, []),
      })),
    };
  });
}

function isComponent({ kind }: WordEvents): boolean {
  return kind === "component";
}

/** One word of a group of machines, by model: all that happened under it. */
export type WordEvents = Pick<Line, "kind" | "word" | "eventsOf">;

/** Machines that can be compared, with their words. */
export interface MachineWords {
  readonly models: ReadonlyMap<number, ExposureWeeks>;
  readonly words: readonly WordEvents[];
}

/** Machines of one product type with their components and symptoms, and each maker's with its fault codes. */
export interface TypeWords extends MachineWords {
  readonly productType: ProductType;
  readonly makers: readonly MachineWords[];
}

/** Puts the jobs that count to their words and models. */
export function typeWords(record: SignalRecord, exposureOf: (model: number) => ExposureWeeks | undefined): TypeWords[] {
  const types = new Map<ProductType, GrowingType>();
  record.models.forEach(({ productType, maker }, model) => {
    const exposure = exposureOf(model);
    if (exposure === undefined) return;
    const type = types.get(productType) ?? growingType();
    types.set(productType, type);
    type.models.set(model, exposure);
    const own = type.makers.get(maker) ?? { models: new Map(), words: new Map() };
    type.makers.set(maker, own);
    own.models.set(model, exposure);
  });
  const sorter = new EventSorter(record.jobs);
  record.jobs.forEach((jobs, row) => {
    const model = record.models[jobs.model];
    const type = model && types.get(model.productType);
    if (model === undefined || type === undefined || !type.models.has(jobs.model) || !countsInTime(jobs)) return;
    if (jobs.failed !== undefined) sorter.add(lineIn(type.components, "component", jobs.failed, sorter), row);
    if (jobs.symptom !== undefined) sorter.add(lineIn(type.symptoms, "symptom", jobs.symptom, sorter), row);
    if (jobs.codes === undefined) return;
    const words = type.makers.get(model.maker)?.words ?? new Map();
    for (const code of jobs.codes) sorter.add(lineIn(words, "fault_code", code, sorter), row);
  });
  const events = sorter.sorted();
  const wordsOf = (words: Words) =>
    [...words.values()].map(({ kind, word, line }) => ({ kind, word, eventsOf: events[line] ?? new Map() }));
  return [...types].map(([productType, { models, components, symptoms, makers }]) => ({
    productType,
    models,
    words: [...wordsOf(components), ...wordsOf(symptoms)],
    makers: [...makers.values()].map((own) => ({ models: own.models, words: wordsOf(own.words) })),
  }));
}

/** A word of the type with the number of its line at the sorter. */
type GrowingLine = Pick<Line, "kind" | "word"> & { readonly line: number };
type Words = Map<string, GrowingLine>;

interface GrowingType {
  readonly models: Map<number, ExposureWeeks>;
  readonly components: Words;
  readonly symptoms: Words;
  readonly makers: Map<string, { readonly models: Map<number, ExposureWeeks>; readonly words: Words }>;
}

function growingType(): GrowingType {
  return { models: new Map(), components: new Map(), symptoms: new Map(), makers: new Map() };
}

function lineIn(words: Words, kind: WordKind, word: string, sorter: EventSorter): number {
  const known = words.get(word);
  if (known !== undefined) return known.line;
  const line = sorter.line();
  words.set(word, { kind, word, line });
  return line;
}

interface LineOptions {
  readonly models: ReadonlyMap<number, ExposureWeeks>;
  /** Components of the type, for a symptom. */
  readonly restOf: ReadonlyMap<string, RestOfType>;
  readonly range: BlockRange;
  readonly room: () => BlockSums;
}

function lineOf(line: WordEvents, { models, restOf, range, room }: LineOptions): Line {
  const sums = new Map<number, ModelSums>();
  for (const [model, { sums: exposure }] of models) {
    const own = line.eventsOf.get(model);
    sums.set(model, { exposure, events: own && blockSums(range, [own], room()) });
  }
  const rest = restOfType(range, sums);
  const causes =
    restOf.size === 0
      ? undefined
      : causesOfSymptom({ eventsOf: line.eventsOf, sumsOf: sums, rest }, restOf, range, room);
  return { ...line, rest, causes, sumsOf: (model) => sums.get(model) };
}
