import { type BlockRange, type BlockSums, blockSums } from "./block-sums";
import { type ModelSums, type RestOfType, restOfType } from "./rest-of-type";
import type { LineEvent } from "./signal-record";

/** What brings a symptom about, as far as not every model has it: a gas oven cannot fail to heat for a broken element. */
export interface Cause {
  readonly rest: RestOfType;
  /** Of one model. */
  readonly sumsOf: (model: number) => ModelSums | undefined;
  /** All of the type, whether they have it or not. */
  readonly models: readonly number[];
}

/** Other models that have the same causes at a block, as far as can be seen. */
export function builtAlike(causes: readonly Cause[], models: readonly number[], block: number): number[] {
  const [first = -1] = models;
  return (causes[0]?.models ?? []).filter(
    (other) => !models.includes(other) && causes.every(({ rest }) => rest.has(other, block) === rest.has(first, block)),
  );
}

interface SymptomLine {
  readonly eventsOf: ReadonlyMap<number, readonly LineEvent[]>;
  readonly sumsOf: ReadonlyMap<number, ModelSums>;
  readonly rest: RestOfType;
}

/**
 * The jobs of a symptom apart by the components found at fault that some models seem not to have, and all others together.
 * A model is then expected to show the symptom as often as its own components bring it about elsewhere; without that, models
 * of one type that are built differently would be held against each other, and one of them would always stand out.
 * @param restOf  components of the type
 * @returns undefined where every model has whatever was found at fault: then nothing needs to be taken apart
 * Checked: tests/signals/built-differently.test.ts, by hand and over seeds.
 */
export function causesOfSymptom(
  { eventsOf, sumsOf, rest }: SymptomLine,
  restOf: ReadonlyMap<string, RestOfType>,
  range: BlockRange,
  room: () => BlockSums,
): readonly Cause[] | undefined {
  const partial = [...new Set([...eventsOf.values()].flatMap((events) => events.map(({ failed }) => failed)))].filter(
    (failed) => failed !== undefined && restOf.get(failed)?.allHave === false,
  );
  if (partial.length === 0) return undefined;
  const causeOf = (counts: (event: LineEvent) => boolean, component: RestOfType | undefined): Cause => {
    const sums = new Map<number, ModelSums>();
    for (const [model, { exposure }] of sumsOf) {
      const events = eventsOf.get(model)?.filter(counts) ?? [];
      sums.set(model, { exposure, events: events.length === 0 ? undefined : blockSums(range, events, room()) });
    }
    const has = (model: number, block: number) => rest.has(model, block) && component?.has(model, block) !== false;
    return { rest: restOfType(range, sums, has), sumsOf: (model) => sums.get(model), models: [...sums.keys()] };
  };
  const apart = new Set(partial);
  return [
    causeOf(({ failed }) => !apart.has(failed), undefined),
    ...partial.map((component) => causeOf(({ failed }) => failed === component, restOf.get(component ?? ""))),
  ];
}
