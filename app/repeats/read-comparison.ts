import { AddressReader, type AddressValues, short } from "@/app/_address/address-reader";
import type { CatalogueWords } from "@/db/queries/known-words";
import { productTypeKeys } from "@/lib/domain/product-type";
import type { RateFilter } from "@/lib/failures/rate-question";
import type { LifeQuestion } from "@/lib/failures/visit-spells";

/** What the first group is set against. */
export type Against =
  | { readonly kind: "rest" }
  | { readonly kind: "make"; readonly value: string }
  | { readonly kind: "model"; readonly value: string }
  | { readonly kind: "component"; readonly value: string };

export interface AgainstAddress {
  readonly against: Against;
  /** As the address writes it: `model:BHF27-W3`. */
  readonly text: string;
  readonly notices: readonly string[];
}

/** `with=rest`, `with=make:…`, `with=model:…` or `with=component:…`; the rest where it says nothing that we know. */
export function readAgainst(values: AddressValues, words: CatalogueWords): AgainstAddress {
  const address = new AddressReader({ with: values.with }, ["with"]);
  const text = address.text("with") ?? "rest";
  const [kind, ...rest] = text.split(":");
  const value = rest.join(":");
  const found = againstOf(kind, value, words);
  if (found !== undefined) return { against: found, text, notices: address.notices };
  address.note(
    `“${short(text)}” is nothing to compare with; the rest was taken. Write rest, make:, model: or component: and a name we know.`,
  );
  return { against: { kind: "rest" }, text: "rest", notices: address.notices };
}

function againstOf(kind: string | undefined, value: string, words: CatalogueWords): Against | undefined {
  if (kind === "rest" && value === "") return { kind };
  if (kind === "make" && words.makers.includes(value)) return { kind, value };
  if (kind === "model" && words.models.some(({ number }) => number === value)) return { kind, value };
  if (kind === "component" && words.components.some(({ key }) => key === value)) return { kind, value };
  return undefined;
}

/**
 * The second group's question: the first's, with what it is set against in the place of its own maker, model or
 * component. The rest of the fleet of a model is of the model's own kind of appliance.
 */
export function secondQuestion(first: LifeQuestion, against: Against, words: CatalogueWords): LifeQuestion {
  const { productType, symptom } = first.where;
  switch (against.kind) {
    case "rest":
      return { ...first, where: { productType: restType(first.where, words), symptom } };
    case "make":
      return { ...first, where: { maker: against.value, productType, symptom } };
    case "model":
      return { ...first, where: { model: against.value, symptom } };
    case "component":
      return { ...first, component: against.value };
  }
}

function restType({ maker, model, productType }: RateFilter, words: CatalogueWords): RateFilter["productType"] {
  const typeOfModel = words.models.find(({ number }) => number === model)?.productType;
  if (model !== undefined) return productTypeKeys.find((key) => key === typeOfModel);
  return maker === undefined ? undefined : productType;
}
