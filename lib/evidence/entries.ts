// All entries, and the lookup by appliance and component.
import type { ProductType } from "@/lib/domain/product-type";
import { dishwasherEntries } from "./entries/dishwasher";
import { dryerEntries } from "./entries/dryer";
import { frontLoadWasherEntries } from "./entries/front-load-washer";
import { rangeEntries } from "./entries/range";
import { refrigeratorEntries } from "./entries/refrigerator";
import { topLoadWasherEntries } from "./entries/top-load-washer";
import type { EvidenceEntry } from "./entry";

export const entries: readonly EvidenceEntry[] = [
  ...frontLoadWasherEntries,
  ...topLoadWasherEntries,
  ...dryerEntries,
  ...dishwasherEntries,
  ...refrigeratorEntries,
  ...rangeEntries,
];

/**
 * The entries for that component. A gas dryer's drum, motor, switches and sensors are built as an electric dryer's;
 * where it has no entry of its own, the electric dryer's rules are used (common practice, no source).
 */
export function entriesFor(productType: ProductType, component: string): readonly EvidenceEntry[] {
  const own = ofComponent.get(placeOf(productType, component));
  if (own !== undefined) return own;
  return productType === "gas_dryer" ? entriesFor("electric_dryer", component) : none;
}

const none: readonly EvidenceEntry[] = [];

const placeOf = (productType: ProductType, component: string) => `${productType} ${component}`;

/** Looked up with every job that is judged. */
const ofComponent: ReadonlyMap<string, readonly EvidenceEntry[]> = entries.reduce((groups, entry) => {
  const place = placeOf(entry.productType, entry.component);
  return groups.set(place, [...(groups.get(place) ?? []), entry]);
}, new Map<string, readonly EvidenceEntry[]>());

export function entryOf(id: string): EvidenceEntry | undefined {
  return entries.find((entry) => entry.id === id);
}
