import type { Day } from "@/lib/calendar/day";
import type { IntakeSetting } from "../intake-setting";
import type { CellMark } from "../tables/source-row";
import { knownWords } from "./known-words";
import { asItStands, type LooseReading, leftBlank, rewritten, takenWithNote } from "./loose-reading";
import type { Matching } from "./matching";
import { type DaySetting, readLooseDay } from "./read-loose-day";
import { readLooseIdentifier } from "./read-loose-identifier";
import { readLooseLabour } from "./read-loose-labour";
import { readLooseMade } from "./read-loose-made";
import { readLooseNumber, readPlainNumber } from "./read-loose-number";
import { wordReader } from "./read-loose-word";
import { remembering } from "./remembering";
import { formulaError, standsForUnknown } from "./stand-ins";
import type { TargetField } from "./target-fields";
import { withoutGuard } from "./without-guard";

/** A reading, with the currency that stood beside an amount. */
export type ColumnReading = LooseReading & { readonly currency?: string };

/** What a reader has to know beside the cell. */
export type ReadingRules = Pick<
  Matching,
  "dateOrder" | "decimalMark" | "labourUnit" | "words" | "dayNumbersFrom" | "usualLengths"
>;

/** Words and today's day: what is needed of the setting to read single cells. */
export type CellSetting = Pick<IntakeSetting, "catalogue" | "today">;

/** How the cells of one matched column are read. */
export function columnReader(
  field: TargetField,
  rules: ReadingRules,
  setting: CellSetting,
): (text: string, mark: CellMark | undefined) => ColumnReading {
  const words = knownWords(field, setting.catalogue);
  if (words !== undefined) {
    const blankSaysUnknown = field.column !== "status"; // a blank status means closed, which nobody said of an unknown one
    return remembering(wordReader(rules.words[field.target], words, { blankSaysUnknown }));
  }
  const { decimalMark } = rules;
  const days = daySetting(field, rules, setting);
  switch (field.sort) {
    case "day":
      return remembering((text) => readLooseDay(text, days));
    case "made":
      return remembering((text) => readLooseMade(text, days));
    case "money":
      return plainAmountsApart(
        remembering((text) => readMoney(text, decimalMark)),
        decimalMark,
      );
    case "number":
      return remembering((text) => readPlainNumber(text, decimalMark));
    case "count":
      return remembering((text) => readCount(text, field, rules));
    case "territory":
      return remembering(readTerritory);
    case "identifier":
      return withoutGuard(identifierReader(field, rules));
    default:
      return withoutGuard(numberLike.has(field.column) ? identifierReader(field, rules) : textReader(field));
  }
}

/** Days that may lie ahead, so that a reading in the future is none the less possible. */
export const mayLieAhead: ReadonlySet<string> = new Set(["starts_on", "ends_on", "effective_on", "cancelled_on"]);

/** Where days may lie ahead, none is ruled out by today. */
export const noLimit = "9999-12-31" as Day; // a real day

function daySetting(
  field: TargetField,
  { dateOrder, dayNumbersFrom }: ReadingRules,
  { today }: CellSetting,
): DaySetting {
  return { dateOrder, dayNumbersFrom, today: mayLieAhead.has(field.column) ? noLimit : today };
}

/** Text columns that hold numbers of papers, which a spreadsheet damages like any other. */
const numberLike: ReadonlySet<string> = new Set(["authorization_number", "holder"]);

/** Columns of long text, which is kept whatever it says. */
const prose: ReadonlySet<string> = new Set([
  "complaint",
  "cause_note",
  "correction",
  "description",
  "note",
  "caption",
  "maker",
  "name",
]);

function identifierReader(field: TargetField, { usualLengths }: ReadingRules) {
  const rules = {
    noun: field.column.replaceAll("_", " "),
    usualLength: usualLengths?.[field.target],
    fillers: field.column === "serial" || field.column === "model",
  };
  const read = (text: string, mark: CellMark | undefined) => readLooseIdentifier(text, mark, rules);
  if (field.column !== "callback_of") return read;
  return (text: string, mark: CellMark | undefined): LooseReading => {
    const plain = text.trim();
    if (/^(?:n|no|false|0|nein|non|nee)$/i.test(plain)) return rewritten("", "No callback.");
    if (/^(?:y|yes|true|x|callback|call back|redo|recall|ja|oui|si|sí|sim)$/i.test(plain))
      return leftBlank(
        "Said to be a callback, without the number of the earlier job; it is found by the repeat rule, if at all.",
      );
    return read(text, mark);
  };
}

function readMoney(text: string, decimalMark: "." | ","): ColumnReading {
  const { reading, currency } = readLooseNumber(text, decimalMark);
  if (reading.kind !== "taken" || reading.text === "") return reading;
  const [whole = "", fraction = ""] = reading.text.split(".");
  const long = fraction.length > 2 && /^0*$/.test(fraction.slice(2));
  const cut = long ? rewritten(`${whole}.${fraction.slice(0, 2)}`, "Written with two decimals.") : reading;
  return currency === "" ? cut : { ...cut, currency };
}

/** Amounts are many, and those that need no reading are not worth remembering. */
function plainAmountsApart(read: (text: string) => ColumnReading, decimalMark: "." | ",") {
  const plain = decimalMark === "." ? /^\d{1,12}(?:\.\d{1,2})?$/ : /^\d{1,12}$/;
  return (text: string): ColumnReading => (plain.test(text) ? asItStands(text) : read(text));
}

function readCount(text: string, field: TargetField, { decimalMark, labourUnit }: ReadingRules): LooseReading {
  if (field.column === "labour_minutes")
    return readLooseLabour(text, labourUnit === "hours" ? "hours" : "minutes", decimalMark);
  const reading = readPlainNumber(text, decimalMark);
  if (reading.kind !== "taken" || !/\.0+$/.test(reading.text)) return reading;
  return rewritten(reading.text.replace(/\.0+$/, ""), "Written as a whole number.");
}

function readTerritory(text: string): LooseReading {
  const plain = text.trim();
  if (standsForUnknown(plain)) return leftBlank(`"${plain}" stands for unknown.`);
  const upper = plain.toUpperCase().replace(/[_ ]/g, "-");
  return upper === plain ? asItStands(plain) : rewritten(upper, "Written in capitals.");
}

function textReader(field: TargetField): (text: string) => LooseReading {
  const free = prose.has(field.column);
  const single = field.column === "maker";
  return (text) => {
    if (text.length > 40 && free && !single) return asItStands(text);
    const plain = text.trim();
    const error = formulaError(plain);
    if (error !== undefined) return leftBlank(`${error} is a spreadsheet's error, not a value.`);
    if (!free && standsForUnknown(plain)) return leftBlank(`"${plain}" stands for unknown.`);
    return single ? oneLine(text) : asItStands(text);
  };
}

function oneLine(text: string): LooseReading {
  return /[\r\n\t]/.test(text)
    ? takenWithNote(text.trim().replace(/\s+/g, " "), "Line ends and tabs became blanks.")
    : asItStands(text);
}
