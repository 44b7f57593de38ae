import type { CellMark } from "../source-row";
import { isElapsed, shownDay, showsDay } from "./day-format";
import { unescaped } from "./read-parts";

/** One cell as its sheet stores it. */
export interface StoredCell {
  /** The attribute t; a number where there is none. */
  readonly type: string;
  /** The format of its style, where that changes what the number says. */
  readonly format: string | undefined;
  readonly value: string;
  /** Undefined for a cell without a formula. */
  readonly formula: string | undefined;
}

export interface CellText {
  readonly text: string;
  readonly mark?: CellMark;
}

/** The text that a cell stands for, and what it stores where that is something else. Texts of the shared list come ready. */
export function cellText({ type, format, value, formula }: StoredCell, dateBase: 1900 | 1904): CellText {
  switch (type) {
    case "inlineStr":
    case "s":
      return { text: value };
    case "str":
      return { text: unescaped(value) };
    case "b":
      return { text: value === "1" ? "TRUE" : "FALSE" };
    case "e":
      return { text: value, mark: { kind: "error", stored: value } };
    case "d":
      return { text: value.replace(/T00:00:00(\.0+)?Z?$/, ""), mark: { kind: "day", stored: value, shown: undefined } };
    default:
      return value === "" ? notCalculated(formula) : numberText(value, format, dateBase);
  }
}

/** A program that does not calculate writes formulas without their results. */
function notCalculated(formula: string | undefined): CellText {
  if (formula === undefined) return { text: "" };
  const stored = `=${formula}`;
  return { text: stored, mark: { kind: "error", stored } };
}

const lastSerial = 2_958_466; // the day after 9999-12-31

function numberText(stored: string, format: string | undefined, dateBase: 1900 | 1904): CellText {
  const value = Number(stored);
  if (!Number.isFinite(value)) return { text: stored, mark: { kind: "error", stored } };
  const mark: CellMark = { kind: "number", stored };
  const text = /^-?\d{1,40}$/.test(stored) ? stored : decimalText(value);
  if (format === undefined || value < 0) return { text, mark };
  if (/^0+$/.test(format)) return { text: Number.isInteger(value) ? text.padStart(format.length, "0") : text, mark };
  if (value >= lastSerial) return { text, mark };
  const seconds = Math.round(value * secondsOfDay);
  if (isElapsed(format)) return { text: clockText(seconds), mark };
  const shown = shownDay(format, momentOf(seconds, dateBase));
  if (seconds < secondsOfDay && !showsDay(format))
    return { text: clockText(seconds).padStart(8, "0"), mark: { kind: "day", stored, shown } };
  if (dateBase === 1900 && seconds < secondsOfDay) return { text, mark }; // day 0 is no day
  if (dateBase === 1900 && Math.floor(seconds / secondsOfDay) === 60) return { text, mark }; // 1900-02-29 never was
  return { text: dayText(momentOf(seconds, dateBase)), mark: { kind: "day", stored, shown } };
}

const secondsOfDay = 86_400;

/** In the base of 1900 the days before March stand one later, because that base takes 1900 for a leap year. */
function momentOf(seconds: number, dateBase: 1900 | 1904): Date {
  if (dateBase === 1904) return new Date(Date.UTC(1904, 0, 1) + seconds * 1000);
  const late = seconds < 60 * secondsOfDay ? 1 : 0;
  return new Date(Date.UTC(1899, 11, 30 + late) + seconds * 1000);
}

function dayText(moment: Date): string {
  const text = moment.toISOString();
  return text.slice(11, 19) === "00:00:00" ? text.slice(0, 10) : text.slice(0, 19);
}

function clockText(seconds: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/** The shortest digits that mean this number, never with an exponent. */
function decimalText(value: number): string {
  const text = String(value);
  const found = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text);
  if (found === null) return text;
  const [, sign = "", whole = "", decimals = "", power = "0"] = found;
  const digits = whole + decimals;
  const point = 1 + Number(power);
  return sign + (point <= 0 ? `0.${"0".repeat(-point)}${digits}` : digits.padEnd(point, "0"));
}
