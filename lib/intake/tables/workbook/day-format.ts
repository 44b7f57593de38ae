// Formats of spreadsheet cells that show a number as a day or a time. Source: ECMA-376, part 1, 18.8.30 and 18.8.31.
import { monthNames } from "@/lib/calendar/month-names";

/** Built-in formats of days and times by number. Those marked local are shown in the order of the reader's country. */
export const builtInFormats: readonly (readonly [string, string])[] = [
  ["14", "[local]yyyy-mm-dd"],
  ["15", "d-mmm-yy"],
  ["16", "d-mmm"],
  ["17", "mmm-yy"],
  ["18", "h:mm AM/PM"],
  ["19", "h:mm:ss AM/PM"],
  ["20", "h:mm"],
  ["21", "h:mm:ss"],
  ["22", "[local]yyyy-mm-dd h:mm"],
  ["45", "mm:ss"],
  ["46", "[h]:mm:ss"],
  ["47", "mmss.0"],
  // Of East Asian countries.
  ...[27, 28, 29, 30, 31, 36, 50, 51, 52, 53, 54, 57, 58].map((id) => [String(id), "[local]yyyy-mm-dd"] as const),
];

const token = /"[^"]*"|\\.|_.|\*.|\[[^\]]*\]|am\/pm|a\/p|y+|m+|d+|h+|s+(?:\.0+)?|./gi;
const elapsed = /^\[(h+|m+|s+)\]$/i;

/** Whether a format shows a number as a day, a time, or a length of time. */
export function isDayFormat(code: string): boolean {
  const tokens = tokensOf(code);
  return (
    tokens.some((each) => /^[ymdhs]/i.test(each) || elapsed.test(each)) && !tokens.some((each) => /^[0#?]$/.test(each))
  );
}

/** Whether a format shows hours beyond a day, such as [h]:mm. */
export function isElapsed(code: string): boolean {
  return tokensOf(code).some((each) => elapsed.test(each));
}

/** Whether a format shows a day, rather than a time only. */
export function showsDay(code: string): boolean {
  const tokens = tokensOf(code);
  return tokens.some((each) => /^[yd]/i.test(each)) || tokens.some((each, place) => isMonth(tokens, place, each));
}

/** What a cell with this format shows; undefined where that depends on the country. */
export function shownDay(code: string, moment: Date): string | undefined {
  const tokens = tokensOf(code);
  if (tokens.some((each) => /^\[(local|\$-)/i.test(each) && !/^\[\$-(409|809|c09|1009)/i.test(each))) return undefined;
  const halves = tokens.some((each) => /^a(m\/pm|\/p)$/i.test(each));
  return tokens.map((each, place) => piece(tokens, place, each, { moment, halves })).join("");
}

/** The first section; the others are for negative numbers and text. */
function tokensOf(code: string): readonly string[] {
  const tokens: readonly string[] = code.match(token) ?? [];
  const end = tokens.indexOf(";");
  return end === -1 ? tokens : tokens.slice(0, end);
}

function piece(
  tokens: readonly string[],
  place: number,
  each: string,
  { moment, halves }: { readonly moment: Date; readonly halves: boolean },
): string {
  const letter = each.charAt(0).toLowerCase();
  if (letter === '"') return each.slice(1, -1);
  if (letter === "\\") return each.slice(1);
  if (letter === "[" || letter === "*") return "";
  if (letter === "_") return " ";
  if (/^a(m\/pm|\/p)$/i.test(each))
    return (moment.getUTCHours() < 12 ? "AM" : "PM").slice(0, each.length === 3 ? 1 : 2);
  const two = (value: number) => (each.replace(/\..*/, "").length > 1 ? String(value).padStart(2, "0") : String(value));
  switch (letter) {
    case "y":
      return each.length > 2 ? String(moment.getUTCFullYear()) : String(moment.getUTCFullYear() % 100).padStart(2, "0");
    case "d":
      return each.length > 2 ? named(dayNames[moment.getUTCDay()], each.length) : two(moment.getUTCDate());
    case "h":
      return two(halves ? moment.getUTCHours() % 12 || 12 : moment.getUTCHours());
    case "s":
      return two(moment.getUTCSeconds()) + each.replace(/^s+/i, "");
    case "m":
      if (!isMonth(tokens, place, each)) return two(moment.getUTCMinutes());
      return each.length > 2 ? named(monthNames[moment.getUTCMonth()], each.length) : two(moment.getUTCMonth() + 1);
    default:
      return each;
  }
}

/** An m after hours or before seconds is minutes. */
function isMonth(tokens: readonly string[], place: number, each: string): boolean {
  if (!/^m/i.test(each)) return false;
  const timed = (one: string) => /^[ymdhs]/i.test(one) || elapsed.test(one);
  const before = tokens.slice(0, place).findLast(timed);
  const after = tokens.slice(place + 1).find(timed);
  return !(/^\[?h/i.test(before ?? "") || /^\[?s/i.test(after ?? ""));
}

function named(name: string | undefined, length: number): string {
  return length === 3 ? (name ?? "").slice(0, 3) : length === 5 ? (name ?? "").slice(0, 1) : (name ?? "");
}

const dayNames = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
