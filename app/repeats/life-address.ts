import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import type { CatalogueWords } from "@/db/queries/known-words";
import type { Day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { rateAddress } from "./rate-address";
import { readRateQuestion, usualOrder } from "./read-rate-question";

/** What narrows a page about one component, by the names that the list of rates uses too. */
const lifeNames = ["make", "model", "type", "symptom", "from", "to", "level"];

export interface LifeAddress {
  readonly question: LifeQuestion;
  readonly notices: readonly string[];
}

/** @param own names of the page itself, read by its own reader */
export function readLifeAddress(
  component: string,
  values: AddressValues,
  { words, cutOff, own }: { readonly words: CatalogueWords; readonly cutOff: Day; readonly own: readonly string[] },
): LifeAddress {
  const unknown = new AddressReader(values, [...lifeNames, ...own]).notices;
  const filters = Object.fromEntries(Object.entries(values).filter(([name]) => lifeNames.includes(name)));
  const { question, notices } = readRateQuestion(filters, {
    makers: words.makers,
    models: words.models.map((model) => model.number),
    components: [],
    symptoms: words.symptoms.map((symptom) => symptom.key),
    cutOff,
  });
  const { from, until, where, level } = question;
  return { question: { component, from, until, where, level }, notices: [...unknown, ...notices] };
}

/** The query string that asks a life question again, with what else the page has in its address. */
export function lifeQuery(
  question: LifeQuestion,
  cutOff: Day,
  more: Readonly<Record<string, string | undefined>> = {},
): string {
  const by = ["component"] as const;
  const whole = { ...question, by, counting: "failures" as const };
  const search = new URLSearchParams(rateAddress(whole, usualOrder(by), dayNumber(cutOff)));
  for (const name of ["by", "component", "age"]) search.delete(name);
  for (const [name, value] of Object.entries(more)) if (value !== undefined) search.set(name, value);
  const text = search.toString();
  return text === "" ? "" : `?${text}`;
}
