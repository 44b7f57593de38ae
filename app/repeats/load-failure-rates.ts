import type { AddressValues } from "@/app/_address/address-reader";
import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { type CatalogueWords, loadCatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import { type FailureRates, failureRates } from "@/lib/failures/failure-rates";
import { type RateAddress, readRateQuestion } from "./read-rate-question";

export type RatesView =
  | { readonly kind: "no-data"; readonly words: CatalogueWords }
  | {
      readonly kind: "rates";
      readonly words: CatalogueWords;
      readonly address: RateAddress;
      readonly rates: FailureRates;
    };

/** From an address to its answer: the one path of the page, the CSV and the command. */
export async function loadFailureRates(db: Reader, values: AddressValues, today: Day): Promise<RatesView> {
  return (await readFailureRates(db, values, today))();
}

/** Reads what the answer needs. @returns the answer, to be reckoned when no transaction waits for it */
export async function readFailureRates(db: Reader, values: AddressValues, today: Day): Promise<() => RatesView> {
  const words = await loadCatalogueWords(db, today);
  if (words.cutOff === undefined) return () => ({ kind: "no-data", words });
  const address = readRateQuestion(values, {
    makers: words.makers,
    models: words.models.map((model) => model.number),
    components: words.components.map((component) => component.key),
    symptoms: words.symptoms.map((symptom) => symptom.key),
    cutOff: words.cutOff,
  });
  const cells = await loadExposureCells(db, {
    ...address.question.where,
    withPayer: address.question.by.includes("payer"),
  });
  return () => ({ kind: "rates", words, address, rates: failureRates(cells, address.question) });
}
