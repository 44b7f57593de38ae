import type { CatalogueWords } from "@/db/queries/known-words";
import { addDays } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { productTypes } from "@/lib/domain/product-type";
import type { RateFilter } from "@/lib/failures/rate-question";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { formatPlainDay } from "@/lib/format/format-day";

/** Which units a filter leaves: "Veltrane, dishwasher"; "all units" where it leaves all. */
export function groupWords({ maker, model, productType, symptom }: RateFilter, words: CatalogueWords): string {
  const makerOfModel = words.models.find(({ number }) => number === model)?.maker;
  const parts = [
    model === undefined ? maker : `${makerOfModel ?? ""} ${model}`.trim(),
    productType && productTypes[productType].toLowerCase(),
    symptom && `symptom “${words.symptoms.find(({ key }) => key === symptom)?.name ?? symptom}”`,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? "all units" : parts.join(", ");
}

/** "1 Jan 2024 to 31 Oct 2026", or "up to 31 Oct 2026". */
export function periodWords({ from, until }: Pick<LifeQuestion, "from" | "until">): string {
  const last = formatPlainDay(addDays(dayFromNumber(until), -1));
  return from === undefined ? `up to ${last}` : `${formatPlainDay(dayFromNumber(from))} to ${last}`;
}
