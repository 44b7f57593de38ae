import { addDays, type Day, readDay } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { causeKeys } from "@/lib/domain/cause";
import { productTypeKeys } from "@/lib/domain/product-type";
import { ageBands, type Counting, type Dimension, dimensions, type RateQuestion } from "@/lib/failures/rate-question";

export type AddressValues = Readonly<Record<string, string | readonly string[] | undefined>>;

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
  const notices: string[] = [];
  const one = <T extends string>(name: string, allowed: readonly T[], hint: string): T | undefined => {
    const text = textOf(values[name]);
    if (text === undefined || text === "") return undefined;
    const found = allowed.find((word) => word === text);
    if (found === undefined) notices.push(`“${short(text)}” is not a ${name} that we know; it was left out. ${hint}`);
    return found;
  };
  const dayOf = (name: "from" | "to"): Day | undefined => {
    const text = textOf(values[name]);
    if (text === undefined || text === "") return undefined;
    const read = readDay(text);
    if (read === undefined)
      notices.push(`“${short(text)}” is not a day; “${name}” was left out. Write it as 2025-03-31.`);
    return read;
  };
  for (const name of Object.keys(values)) {
    if (!names.some((known) => known === name))
      notices.push(`“${short(name)}” is not one of our filters; it was left out.`);
  }

  const by = readGrouping([textOf(values.by), textOf(values.and)].filter(Boolean).join(","), notices);
  const counting =
    one<Counting>("count", ["failures", "calls", ...causeKeys], "Choose failures, calls or one cause.") ?? "failures";
  const where = {
    maker: one("make", known.makers, "Choose one from the list."),
    model: one("model", known.models, "Choose one from the list."),
    productType: one("type", productTypeKeys, "Choose one from the list."),
    component: one("component", known.components, "Choose one from the list."),
    symptom: one("symptom", known.symptoms, "Choose one from the list."),
    age: one(
      "age",
      ageBands.map((band) => band.key),
      "Choose one from the list.",
    ),
  };
  const level = Number(one("level", levels, "Choose 90, 95 or 99.") ?? "95") / 100;
  const order = one<RateOrder>("order", ["lowest", "name"], "Choose lowest or name.") ?? "lowest";
  const [from, until] = readPeriod(dayOf("from"), dayOf("to"), known.cutOff, notices);
  return {
    question: { by, counting, from: from && dayNumber(from), until: dayNumber(until), where, level },
    order,
    notices,
  };
}

/** `by=component,age`; a form, which cannot join two fields, sends the second as `and`. */
function readGrouping(text: string, notices: string[]): RateQuestion["by"] {
  const words = text
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");
  const found = words.flatMap((word) => dimensions.filter((dimension) => dimension === word));
  for (const word of words) {
    if (!dimensions.some((dimension) => dimension === word)) {
      notices.push(
        `“${short(word)}” is not something to group by; it was left out. Choose from ${dimensions.join(", ")}.`,
      );
    }
  }
  const [first, second, ...rest] = [...new Set<Dimension>(found)];
  if (rest.length > 0) notices.push("Grouping goes by two things at most; the first two were taken.");
  if (first === undefined) return ["component"];
  return second === undefined ? [first] : [first, second];
}

/** `to` is the last day looked at; the question wants the day after it. */
function readPeriod(
  from: Day | undefined,
  to: Day | undefined,
  cutOff: Day,
  notices: string[],
): [Day | undefined, Day] {
  const asked = to === undefined ? cutOff : addDays(to, 1);
  const until = asked > cutOff ? cutOff : asked;
  if (asked > cutOff) notices.push(`The data end on ${addDays(cutOff, -1)}; nothing later was counted.`);
  if (from !== undefined && from >= until) {
    notices.push(`“from” ${from} is not before the end of the period; it was left out.`);
    return [undefined, until];
  }
  return [from, until];
}

function textOf(value: AddressValues[string]): string | undefined {
  const last = typeof value === "string" ? value : value?.at(-1);
  return last?.trim();
}

function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
