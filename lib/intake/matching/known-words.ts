import { causes } from "@/lib/domain/cause";
import { components } from "@/lib/domain/components";
import { failureModes } from "@/lib/domain/failure-modes";
import { productTypes } from "@/lib/domain/product-type";
import { symptoms } from "@/lib/domain/symptoms";
import type { Catalogue } from "../intake-setting";
import { notClosed } from "./left-out";
import type { TargetField } from "./target-fields";
import { plainWord, tradeWords } from "./trade-words";

/** Names by key that a company gave to entries of its own catalogue, by column. */
export type CatalogueNames = Readonly<Record<string, ReadonlyMap<string, string>>>;

export interface KnownWords {
  /** Plain word to ours: our own words and what people call them on our pages. */
  readonly own: ReadonlyMap<string, string>;
  /** Plain word to ours: what companies commonly write. */
  readonly trade: ReadonlyMap<string, string>;
  /** Our words with their names, for choosing. */
  readonly names: ReadonlyMap<string, string>;
}

/** The words that a column of ours may hold; undefined where it is free. */
export function knownWords(
  field: TargetField,
  catalogue: Catalogue,
  given: CatalogueNames = {},
): KnownWords | undefined {
  const keys = keysOf(field, catalogue);
  if (keys === undefined) return undefined;
  const names = new Map<string, string>();
  const own = new Map<string, string>();
  for (const key of keys) {
    const name = given[field.column]?.get(key) ?? namesByColumn[field.column]?.get(key) ?? key.replaceAll("_", " ");
    names.set(key, name);
    own.set(plainWord(name), key);
  }
  for (const key of keys) own.set(plainWord(key), key);
  if (field.column === "status") names.set(notClosed, "not closed yet: left out");
  const trade = new Map<string, string>();
  const listed = tradeWords[field.sort === "yes or no" ? field.sort : field.column] ?? {};
  for (const [key, words] of Object.entries(listed)) {
    if (!names.has(key)) continue;
    for (const word of words.split(", ")) if (!own.has(plainWord(word))) trade.set(plainWord(word), key);
  }
  return { own, trade, names };
}

function keysOf(field: TargetField, catalogue: Catalogue): readonly string[] | undefined {
  if (field.words.length > 0) return field.words;
  if (field.sort !== "key") return undefined;
  switch (field.column) {
    case "component":
      return field.kind === "components" ? undefined : [...catalogue.components];
    case "symptom":
      return [...catalogue.symptoms];
    case "failure_mode":
      return [...catalogue.failureModes];
    case "check":
      return [...catalogue.checks.keys()];
    default:
      return undefined;
  }
}

const byKey = (entries: readonly { readonly key: string; readonly name: string }[]) =>
  new Map(entries.map(({ key, name }) => [key, name]));

const namesByColumn: CatalogueNames = {
  component: byKey(components),
  symptom: byKey(symptoms),
  failure_mode: byKey(failureModes),
  product_type: new Map(Object.entries(productTypes)),
  cause: byKey(Object.entries(causes).map(([key, { name }]) => ({ key, name }))),
};
