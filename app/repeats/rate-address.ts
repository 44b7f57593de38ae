import { addDays } from "@/lib/calendar/day";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { withinYear } from "@/lib/failures/exposure";
import type { GroupKey } from "@/lib/failures/groups";
import type { RateQuestion } from "@/lib/failures/rate-question";
import { type RateOrder, usualOrder } from "./read-rate-question";

/** The address's own names for what a question asks, shortest form: what stands at its usual choice is left out. */
export function rateAddress(question: RateQuestion, order: RateOrder, cutOff: number): string {
  const { where } = question;
  const values: readonly (readonly [string, string | undefined])[] = [
    ["by", question.by.join(",")],
    ["count", question.counting === "failures" ? undefined : question.counting],
    ["make", where.maker],
    ["model", where.model],
    ["type", where.productType],
    ["component", where.component],
    ["symptom", where.symptom],
    ["age", where.age],
    ["from", question.from === undefined ? undefined : dayFromNumber(question.from)],
    ["to", question.until === cutOff ? undefined : addDays(dayFromNumber(question.until), -1)],
    ["level", question.level === 0.95 ? undefined : String(100 * question.level)],
    ["order", order === usualOrder(question.by) ? undefined : order],
  ];
  const search = new URLSearchParams();
  for (const [name, value] of values) if (value !== undefined) search.set(name, value);
  return search.toString().replaceAll("%2C", ",");
}

/** Cause, payer and year have no field of that name: what is counted, what the list of jobs alone asks, a period. */
const filterNames = {
  component: "component",
  model: "model",
  maker: "make",
  type: "type",
  age: "age",
  symptom: "symptom",
} as const;

/** The jobs behind one group, on the Jobs page. */
export function jobsBehind(key: GroupKey, question: RateQuestion): string {
  const search = new URLSearchParams(rateAddress(question, "lowest", question.until));
  for (const name of ["by", "level", "order"]) search.delete(name);
  for (const { dimension, value } of key) {
    if (dimension === "cause") search.set("count", value === "component" ? "failures" : value);
    else if (dimension === "year") setYear(search, value, question);
    else if (dimension === "payer") search.set("payer", value);
    else search.set(filterNames[dimension], value);
  }
  if (question.counting === "failures") search.set("count", "failures");
  return `/jobs?${search.toString()}`;
}

function setYear(search: URLSearchParams, year: string, { from, until }: RateQuestion): void {
  const part = withinYear({ from, until }, Number(year));
  if (part.from !== undefined) search.set("from", dayFromNumber(part.from));
  search.set("to", addDays(dayFromNumber(part.until), -1));
}

/** The page about when a component fails, for a group that names one, or that narrows one named by the filter. */
export function lifeAddress(key: GroupKey, question: RateQuestion): string | undefined {
  const component = key.find((part) => part.dimension === "component")?.value ?? question.where.component;
  // That page shows all ages: an age alone narrows nothing there.
  if (component === undefined || key.every((part) => !(part.dimension in filterNames) || part.dimension === "age"))
    return undefined;
  const search = new URLSearchParams(rateAddress(question, "lowest", question.until));
  for (const name of ["by", "component", "count", "age", "order"]) search.delete(name);
  for (const { dimension, value } of key)
    if (
      dimension !== "component" &&
      dimension !== "age" &&
      dimension !== "cause" &&
      dimension !== "payer" &&
      dimension !== "year"
    )
      search.set(filterNames[dimension], value);
  const rest = search.toString();
  return `/repeats/${component}${rest === "" ? "" : `?${rest}`}`;
}
