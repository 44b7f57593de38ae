import type { Day } from "@/lib/calendar/day";
import { guessDateOrder } from "../matching/guess-date-order";
import { guessDecimalMark } from "../matching/guess-decimal-mark";
import type { SourceRow } from "../tables/source-row";
import {
  type RemittanceColumns,
  type RemittanceField,
  remittanceFieldKeys,
  remittanceFields,
} from "./remittance-columns";

export interface GuessedColumns {
  readonly columns: RemittanceColumns;
  /** What only a person can say. */
  readonly questions: readonly string[];
}

/**
 * What each column of a payer's list may hold, by its heading and then by what stands in it: one column for each field,
 * the best heading first. Every guess says why; somebody confirms them before a line is read.
 */
export function guessRemittanceColumns(
  header: readonly string[],
  sample: readonly SourceRow[],
  today: Day,
): GuessedColumns {
  const cellsOf = (place: number) => sample.flatMap(({ cells }) => (cells[place]?.trim() ? [cells[place] ?? ""] : []));
  const fits = header.flatMap((heading, place) =>
    remittanceFieldKeys.map((field) => ({ place, field, fit: fitOf(field, heading, cellsOf(place)) })),
  );
  const fields: (RemittanceField | null)[] = header.map(() => null);
  const reasons: string[] = header.map(() => "No heading or value that we know; it is kept with its line.");
  for (const { place, field, fit } of fits.sort((a, b) => b.fit - a.fit || a.place - b.place)) {
    if (fit <= 0 || fields[place] !== null || fields.includes(field)) continue;
    fields[place] = field;
    reasons[place] = `“${header[place]}” reads as ${remittanceFields[field].toLowerCase()}.`;
  }
  const cellsFor = (field: RemittanceField) => (fields.includes(field) ? cellsOf(fields.indexOf(field)) : []);
  const mark = guessDecimalMark(cellsFor("paid"));
  const order = guessDateOrder(cellsFor("completedOn"), today);
  return {
    columns: {
      fields,
      reasons,
      decimalMark: "value" in mark ? mark.value : ".",
      dateOrder: "value" in order ? order.value : "year first",
    },
    questions: [
      ...("question" in mark ? [`${mark.question} ${mark.reason}`] : []),
      ...("question" in order ? [`${order.question} ${order.reason}`] : []),
      ...(fields.includes("paid") ? [] : ["Which column says what was paid?"]),
    ],
  };
}

/** Words that headings of payers' lists use, those that say most first. Common practice, no source. */
const headings: Readonly<Record<RemittanceField, readonly RegExp[]>> = {
  claim: [/^(our|dealer|servicer|your)?claim(no|nr|number|id|ref|reference)?$/, /claim/],
  payerReference: [
    /^(payer|maker|manufacturer|their|document|voucher)(ref|reference|no|number|claim|id)$/,
    /voucher|document/,
  ],
  job: [/^(job|workorder|wo|order|ro|repairorder|invoice|ticket)(no|nr|number|id|ref)?$/, /job|workorder/],
  serial: [/^serial(no|nr|number)?$/, /serial|^sn$/],
  completedOn: [
    /^(completed|completion|repair|service|closed)(on|date|day)?$/,
    /complet|repairdate|servicedate|closed/,
  ],
  item: [/^(item|line|payitem|linetype|paytype|type|category|component|kind)$/, /item|type/],
  paid: [/^(paid|amountpaid|paidamount|credited|creditamount|net|netpaid|payment)$/, /paid|credit|net|amount/],
  currency: [/^(currency|curr|ccy)$/, /currency/],
  text: [
    /^(text|reason|remark|remarks|comment|message|explanation|note|notes|payertext)$/,
    /reason|remark|comment|text|note/,
  ],
};

/** 0 where heading or values speak against it; an exact heading counts twice a heading that holds the word. */
function fitOf(field: RemittanceField, heading: string, cells: readonly string[]): number {
  const plain = heading.toLowerCase().replace(/[^a-z0-9]/g, "");
  const [exact, loose] = headings[field];
  const byHeading = exact?.test(plain) === true ? 2 : loose?.test(plain) === true ? 1 : 0;
  if (byHeading === 0 || cells.length === 0) return byHeading;
  const share = cells.filter((cell) => looksLike(field, cell)).length / cells.length;
  return share < 0.5 ? 0 : byHeading + share;
}

function looksLike(field: RemittanceField, cell: string): boolean {
  switch (field) {
    case "paid":
      return /\d/.test(cell) && !/[a-z]{4,}/i.test(cell);
    case "completedOn":
      return /\d/.test(cell);
    case "currency":
      return /^[A-Za-z]{3}$|[$€£]/.test(cell.trim());
    case "item":
      return !/^\W*\d[\d.,]*$/.test(cell.trim());
    default:
      return true;
  }
}
