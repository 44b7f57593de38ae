import { type CellSetting, columnReader, type ReadingRules } from "./column-reader";
import { knownWords } from "./known-words";
import { standsForUnknown } from "./stand-ins";
import type { TargetField } from "./target-fields";
import { plainWord } from "./trade-words";

export interface ValueFit {
  /** 0 to 1; how well the values suit the field. */
  readonly fit: number;
  /** What was seen, as the end of a sentence: "194 of 200 values look like serials". */
  readonly seen: string;
  /** Share of the values that are words of ours already or in the trade's list; 0 for fields that are free. */
  readonly knownShare: number;
}

/** How well sampled cells suit a field. `values` are trimmed and none is blank. */
export function valueFit(field: TargetField, values: readonly string[], setting: CellSetting): ValueFit {
  if (values.length === 0) return { fit: 0.8, seen: "every value looked at is blank", knownShare: 0 };
  const words = knownWords(field, setting.catalogue);
  if (words !== undefined) return wordFit(field, values, words);
  const count = countFitting(field, values, setting);
  const seen = `${count} of ${values.length} values ${looks(field)}`;
  return { fit: ((count + 1) / (values.length + 1)) * distinctness(field, values), seen, knownShare: 0 };
}

function countFitting(field: TargetField, values: readonly string[], setting: CellSetting): number {
  const shape = shapes[field.column] ?? shapes[field.sort];
  if (shape !== undefined)
    return values.filter((value) => standsForUnknown(value) || damaged.test(value) || shape(value)).length;
  return Math.max(...tried.map((rules) => countReadable(field, values, rules, setting)));
}

function countReadable(
  field: TargetField,
  values: readonly string[],
  rules: ReadingRules,
  setting: CellSetting,
): number {
  const read = columnReader(field, rules, setting);
  return values.filter((value) => read(value, undefined).kind === "taken").length;
}

const bare = { labourUnit: "minutes", words: {} } as const;
/** The two common ways to write days and numbers; the better one counts. */
const tried: readonly ReadingRules[] = [
  { ...bare, dateOrder: "month first", decimalMark: ".", dayNumbersFrom: 1900 },
  { ...bare, dateOrder: "day first", decimalMark: ",", dayNumbersFrom: 1900 },
];

const damaged = /^\d(?:[.,]\d+)?E\+?\d+$|^#/i;
const hasDigit = /\d/;
const dayLike = /^\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}(?:\D|$)/;

/** What numbers and names look like, as far as that can be said at all. Common practice, no source. */
const shapes: Readonly<Record<string, (value: string) => boolean>> = {
  serial: (value) =>
    /^[A-Z0-9][A-Z0-9 ./*-]{4,24}$/i.test(value) &&
    hasDigit.test(value) &&
    !dayLike.test(value) &&
    !/\.\d{1,2}$/.test(value),
  model: (value) =>
    /^[A-Z0-9][A-Z0-9 ./*()+-]{1,29}$/i.test(value) &&
    hasDigit.test(value) &&
    !dayLike.test(value) &&
    !/^\d+\.\d{1,2}$/.test(value),
  identifier: (value) =>
    value.length <= 30 &&
    hasDigit.test(value) &&
    !dayLike.test(value) &&
    value.split(" ").length <= 2 &&
    !/^\d+[.,]\d{1,2}$/.test(value),
  maker: (value) =>
    value.length <= 40 && /\p{L}{2}/u.test(value) && value.split(" ").length <= 4 && !/\d{5}/.test(value),
  technician: (value) => value.length <= 40,
  distributor: (value) => value.length <= 60 && /\p{L}/u.test(value),
  authorization_number: (value) => value.length <= 30 && hasDigit.test(value) && !dayLike.test(value),
  holder: (value) => value.length <= 30,
  complaint: isProse,
  cause_note: isProse,
  correction: isProse,
  description: isProse,
  note: isProse,
  text: (value) => value.length <= 200,
};

function isProse(value: string): boolean {
  return /\p{L}{2}/u.test(value);
}

/** A number that names the row stands on few rows; one value on all of them names nothing. */
function distinctness(field: TargetField, values: readonly string[]): number {
  if (field.sort !== "identifier" || values.length < 10) return 1;
  const share = new Set(values).size / values.length;
  if (field.column === "job_number" || field.column === "contract_number") return share >= 0.2 ? 1 : 0.5;
  if (field.column === "serial") return share >= 0.3 ? 1 : 0.6;
  return 1;
}

function wordFit(
  field: TargetField,
  values: readonly string[],
  known: NonNullable<ReturnType<typeof knownWords>>,
): ValueFit {
  const isKnown = (value: string) => {
    const word = plainWord(value);
    return known.own.has(word) || known.trade.has(word) || standsForUnknown(value);
  };
  const count = values.filter(isKnown).length;
  const distinct = new Set(values.map(plainWord)).size;
  const wordy =
    values.filter((value) => value.length <= 60 && !/^\d+[.,]\d+$/.test(value) && !dayLike.test(value)).length /
    values.length;
  const few = distinct <= Math.max(12, values.length / 10) ? 1 : distinct <= values.length / 3 ? 0.85 : 0.55;
  const knownShare = count / values.length;
  return {
    fit: wordy * few * (0.78 + 0.22 * knownShare),
    seen:
      count === 0
        ? `${distinct} different words, none of ours yet`
        : `${count} of ${values.length} values are known words for ${field.column.replaceAll("_", " ")}`,
    knownShare,
  };
}

function looks(field: TargetField): string {
  switch (field.sort) {
    case "day":
    case "made":
      return "read as dates";
    case "money":
      return "read as amounts";
    case "count":
    case "number":
      return "read as numbers";
    case "moment":
      return "read as moments with their offset";
    case "identifier":
      return field.column.endsWith("_number") || field.column === "serial" || field.column === "model"
        ? `look like ${field.column.replaceAll("_", " ")}s`
        : "look like numbers of jobs or parts";
    default:
      return `suit ${field.column.replaceAll("_", " ")}`;
  }
}
