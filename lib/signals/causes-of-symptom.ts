import { type BlockRange, type BlockSums, blockSums } from "./block-sums";
import type { ModelEvents } from "./line-events";
import { type ModelSums, type RestOfType, restOfType } from "./rest-of-type";

/** What brings a symptom about, as far as not every model has it: a gas oven cannot fail to heat for a broken element. */
export interface Cause {
  readonly rest: RestOfType;
  /** Of one model. */
  readonly sumsOf: (model: number) => ModelSums | undefined;
}

export interface Causes {
  /** By block: those that some model seems not to have. All others count among all models together. */
  readonly apartAt: readonly (readonly Cause[])[];
  /** All of the type. */
  readonly models: readonly number[];
}

/** Other models that have the same causes at a block, as far as can be seen. */
export function builtAlike(causes: Causes, models: readonly number[], block: number): number[] {
  const [first = -1] = models;
  const apart = causes.apartAt[block] ?? [];
  return causes.models.filter(
    (other) => !models.includes(other) && apart.every(({ rest }) => rest.has(other, block) === rest.has(first, block)),
  );
}

interface SymptomLine {
  readonly eventsOf: ReadonlyMap<number, ModelEvents>;
  readonly sumsOf: ReadonlyMap<number, ModelSums>;
  readonly rest: RestOfType;
}

/**
 * The jobs of a symptom in which a component was found at fault that some models seem not to have, each such component apart.
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
): Causes | undefined {
  const { failed, components } = [...eventsOf.values()][0]?.columns ?? { failed: new Int32Array(), components: [] };
  const partial = foundAtFault([...eventsOf.values()]).filter(
    (code) => code >= 0 && restOf.get(components[code] ?? "")?.allHave === false,
  );
  if (partial.length === 0) return undefined;
  const causes = partial.map((code): Cause => {
    const sums = new Map<number, ModelSums>();
    for (const [model, { exposure }] of sumsOf) {
      const events = eventsOf.get(model);
      const hasAny = events !== undefined && failed.subarray(events.from, events.until).includes(code);
      const own = hasAny ? blockSums(range, [events], room(), (at) => failed[at] === code) : undefined;
      sums.set(model, { exposure, events: own });
    }
    const component = restOf.get(components[code] ?? "");
    const has = (model: number, block: number) => rest.has(model, block) && component?.has(model, block) !== false;
    return { rest: restOfType(range, sums, has), sumsOf: (model) => sums.get(model) };
  });
  const models = [...sumsOf.keys()];
  return {
    models,
    apartAt: Array.from({ length: range.count }, (_, block) =>
      causes.filter((cause) => models.some((model) => !cause.rest.has(model, block))),
    ),
  };
}

function foundAtFault(events: readonly ModelEvents[]): number[] {
  const found = new Set<number>();
  for (const { columns, from, until } of events)
    for (let at = from; at < until; at++) found.add(columns.failed[at] ?? -1);
  return [...found];
}
