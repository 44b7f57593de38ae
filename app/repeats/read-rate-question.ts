import { AddressReader, type AddressValues, short } from "@/app/_address/address-reader";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { causeKeys } from "@/lib/domain/cause";
import { productTypeKeys } from "@/lib/domain/product-type";
import { ageBands, type Counting, type Dimension, dimensions, type RateQuestion } from "@/lib/failures/rate-question";

/** What the database knows, against which an address is read. */
export interface KnownWords {
  readonly makers: readonly string[];
  readonly models: readonly string[];
  readonly components: readonly string[];
  readonly symptoms: readonly string[];
  /** First day after the data: nothing is known from here on. */
  readonly cutOff: Day;
}

export type RateOrder = "lowest" | "name";

export interface RateAddress {
  readonly question: RateQuestion;
  readonly order: RateOrder;
  /** What the address says and cannot mean, each as a sentence with what was done instead. */
  readonly notices: readonly string[];
}

const levels = ["90", "95", "99"] as const;
const names = [
  "by",
  "and",
  "count",
  "make",
  "model",
  "type",
  "component",
  "symptom",
  "age",
  "from",
  "to",
  "level",
  "order",
] as const;

/** The question that an address asks. What cannot be read is left out with a notice; a shared link never ends in an error. */
export function readRateQuestion(values: AddressValues, known: KnownWords): RateAddress {
  const address = new AddressReader(values, names);
  const by = readGrouping([address.text("by"), address.text("and")].filter(Boolean).join(","), address);
  const counting =
    address.oneOf<Counting>("count", ["failures", "calls", ...causeKeys], "Choose failures, calls or one cause.") ??
    "failures";
  const where = {
    maker: address.oneOf("make", known.makers, "Choose one from the list."),
    model: address.oneOf("model", known.models, "Choose one from the list."),
    productType: address.oneOf("type", productTypeKeys, "Choose one from the list."),
    component: address.oneOf("component", known.components, "Choose one from the list."),
    symptom: address.oneOf("symptom", known.symptoms, "Choose one from the list."),
    age: address.oneOf(
      "age",
      ageBands.map((band) => band.key),
      "Choose one from the list.",
    ),
  };
  const level = Number(address.oneOf("level", levels, "Choose 90, 95 or 99.") ?? "95") / 100;
  const order = address.oneOf<RateOrder>("order", ["lowest", "name"], "Choose lowest or name.") ?? usualOrder(by);
  const [from, until] = readPeriod(address.dayOf("from"), address.dayOf("to"), known.cutOff, address);
  return {
    question: { by, counting, from: from && dayNumber(from), until: dayNumber(until), where, level },
    order,
    notices: address.notices,
  };
}

/** Ages are read from young to old, years as they came; everything else by what is surest to fail. */
export function usualOrder(by: readonly Dimension[]): RateOrder {
  return by.includes("age") || by.includes("year") ? "name" : "lowest";
}

/** `by=component,age`; a form, which cannot join two fields, sends the second as `and`. */
function readGrouping(text: string, address: AddressReader): RateQuestion["by"] {
  const words = text
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");
  const found = words.flatMap((word) => dimensions.filter((dimension) => dimension === word));
  for (const word of words) {
    if (!dimensions.some((dimension) => dimension === word)) {
      address.note(
        `“${short(word)}” is not something to group by; it was left out. Choose from ${dimensions.join(", ")}.`,
      );
    }
  }
  const [first, second, ...rest] = [...new Set<Dimension>(found)];
  if (rest.length > 0) address.note("Grouping goes by two things at most; the first two were taken.");
  if (first === undefined) return ["component"];
  return second === undefined ? [first] : [first, second];
}

/** `to` is the last day looked at; the question wants the day after it. */
function readPeriod(
  from: Day | undefined,
  to: Day | undefined,
  cutOff: Day,
  address: AddressReader,
): [Day | undefined, Day] {
  const asked = to === undefined ? cutOff : addDays(to, 1);
  const until = asked > cutOff ? cutOff : asked;
  if (asked > cutOff) address.note(`The data end on ${addDays(cutOff, -1)}; nothing later was counted.`);
  if (from !== undefined && from >= until) {
    address.note(`“from” ${from} is not before the end of the period; it was left out.`);
    return [undefined, until];
  }
  return [from, until];
}
