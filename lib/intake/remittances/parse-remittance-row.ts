import { type Day, readDay } from "@/lib/calendar/day";
import { type Currency, currencies } from "@/lib/domain/money";
import type { PayItem } from "@/lib/domain/pay-item";
import { readLooseDay } from "../matching/read-loose-day";
import { readLooseNumber } from "../matching/read-loose-number";
import { type CellProblem, type Parsed, shownValue } from "../parsed";
import type { SourceRow } from "../tables/source-row";
import { type RemittanceColumns, type RemittanceField, remittanceFields } from "./remittance-columns";

/** One line of a payer's list, read; whatever the list does not say is undefined. */
export interface ReadRemittanceLine {
  readonly row: number;
  readonly references: readonly string[];
  readonly serial: string | undefined;
  readonly completedOn: Day | undefined;
  readonly item: PayItem | "handling" | undefined;
  readonly paidCents: number;
  readonly currency: Currency;
  readonly payerText: string;
}

export interface RemittanceSetting {
  readonly columns: RemittanceColumns;
  readonly currency: Currency;
  readonly today: Day;
}

/** One row in; one line, or every problem with it, out. An item that we do not know pays the claim as a whole. */
export function parseRemittanceRow(source: SourceRow, setting: RemittanceSetting): Parsed<ReadRemittanceLine> {
  const cell = (field: RemittanceField) => source.cells[setting.columns.fields.indexOf(field)]?.trim() ?? "";
  const paid = readPaid(cell("paid"), setting);
  const completedOn = readCompleted(cell("completedOn"), setting);
  const problems = [paid, completedOn].flatMap((read) => (read.ok ? [] : read.problems));
  if (!paid.ok || !completedOn.ok) return { ok: false, problems };
  const currency = readCurrency(cell("currency") || paid.value.currency, setting.currency);
  if (currency === undefined) {
    const problem = `is no currency that claims are made in: ${currencies.join(", ")}`;
    return { ok: false, problems: [problemAt("currency", cell("currency"), problem, "Post this line by hand.")] };
  }
  return {
    ok: true,
    value: {
      row: source.row,
      references: (["claim", "payerReference", "job"] as const).map(cell).filter((text) => text !== ""),
      serial: cell("serial") || undefined,
      completedOn: completedOn.value,
      item: itemOf(cell("item")),
      paidCents: paid.value.cents,
      currency,
      payerText: cell("text"),
    },
  };
}

function readPaid(
  text: string,
  { columns }: RemittanceSetting,
): Parsed<{ readonly cents: number; readonly currency: string }> {
  const { reading, currency } = readLooseNumber(text, columns.decimalMark);
  if (reading.kind === "held") return { ok: false, problems: [problemAt("paid", text, reading.problem, reading.fix)] };
  const found = /^(-?)(\d{1,10})(?:\.(\d{1,2})0*)?$/.exec(reading.text);
  if (found === null) {
    const problem = reading.text === "" ? "names no amount" : "is no amount of whole cents";
    return { ok: false, problems: [problemAt("paid", text, problem, "Write what was paid, such as 129.50, or 0.")] };
  }
  const cents = Number(found[2]) * 100 + Number((found[3] ?? "").padEnd(2, "0"));
  return { ok: true, value: { cents: found[1] === "-" ? -cents : cents, currency } };
}

function readCompleted(text: string, { columns, today }: RemittanceSetting): Parsed<Day | undefined> {
  const { dateOrder } = columns;
  const reading = readLooseDay(text, { dateOrder, dayNumbersFrom: undefined, today });
  if (reading.kind === "held")
    return { ok: false, problems: [problemAt("completedOn", text, reading.problem, reading.fix)] };
  return { ok: true, value: readDay(reading.text) };
}

const signs: Readonly<Record<string, Currency>> = {
  "€": "EUR",
  "£": "GBP",
  US$: "USD",
  CA$: "CAD",
  C$: "CAD",
  A$: "AUD",
  AU$: "AUD",
};

/** A plain dollar sign is that of the list's own currency. */
function readCurrency(text: string, otherwise: Currency): Currency | undefined {
  const plain = text.trim().toUpperCase();
  if (plain === "" || plain === "$") return otherwise;
  return signs[plain] ?? currencies.find((currency) => currency === plain);
}

/** Words of payers for what they pay. Common practice, no source. */
const itemWords: readonly (readonly [RegExp, PayItem | "handling"])[] = [
  [/handling/, "handling"],
  [/labou?r|work|time/, "labour"],
  [/part|material/, "parts"],
  [/trip|travel|mileage|drive/, "trip"],
  [/diagnos/, "diagnosis"],
];

function itemOf(text: string): ReadRemittanceLine["item"] {
  return itemWords.find(([words]) => words.test(text.toLowerCase()))?.[1];
}

function problemAt(field: RemittanceField, value: string, problem: string, fix: string): CellProblem {
  return { column: remittanceFields[field], value: shownValue(value), problem, fix };
}
