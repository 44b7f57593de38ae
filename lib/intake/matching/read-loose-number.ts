import { asItStands, held, type LooseReading, leftBlank, rewritten, takenWithNote } from "./loose-reading";
import { formulaError, standsForUnknown } from "./stand-ins";

export interface LooseNumber {
  readonly reading: LooseReading;
  /** What stood before or behind the digits, in lower case; blank where nothing did. */
  readonly unit: string;
  /** Currency sign or code, where there was one. */
  readonly currency: string;
}

/** A number with the marks of people and spreadsheets around it, as plain digits with a decimal point. */
export function readLooseNumber(text: string, decimalMark: "." | ","): LooseNumber {
  const plain = text.trim();
  if (/^\d{1,12}$/.test(plain) || (decimalMark === "." && /^\d{1,12}\.\d{1,9}$/.test(plain)))
    return only(asItStands(plain));
  if (plain === "") return only(asItStands(""));
  if (standsForUnknown(plain)) return only(leftBlank(`"${plain}" stands for unknown.`));
  if (formulaError(plain) !== undefined) return only(leftBlank(`${plain} is a spreadsheet's error, not a value.`));
  const { digits, negative, unit, currency } = taken(plain);
  const whole = joined(digits, decimalMark);
  if (whole === undefined) return { reading: unreadable(digits, decimalMark), unit, currency };
  const value = `${negative && !/^[0.]*$/.test(whole) ? "-" : ""}${whole}`;
  return {
    reading: value === plain ? asItStands(value) : rewritten(value, "Written as plain digits."),
    unit,
    currency,
  };
}

function only(reading: LooseReading): LooseNumber {
  return { reading, unit: "", currency: "" };
}

const currencies = /US ?\$|CA ?\$|C\$|AU? ?\$|USD|CAD|EUR|GBP|AUD|[$€£]/i;

interface Taken {
  readonly digits: string;
  readonly negative: boolean;
  readonly unit: string;
  readonly currency: string;
}

/** Takes off what is not digits: brackets or a minus for negative, a currency, a unit behind. */
function taken(plain: string): Taken {
  let rest = plain;
  const currency = (currencies.exec(rest)?.[0] ?? "").toUpperCase().replace(" ", "");
  if (currency !== "") rest = rest.replace(currencies, "").trim();
  const bracketed = /^\((.*)\)$/.exec(rest);
  if (bracketed !== null) rest = (bracketed[1] ?? "").trim();
  const credit = /^(.*\d)\s*CR$/i.exec(rest);
  if (credit !== null) rest = credit[1] ?? "";
  rest = rest.replace(/[.,][-–—]{1,2}$/, ""); // 25,- is 25 and no cents
  const minus = /^[-−–]|[-−]$/.test(rest);
  rest = rest.replace(/^[-−–+]\s*|\s*[-−]$/g, "");
  const unit = /^(.*?\d[.,]?)\s*([\p{L}%°µΩ"'][\p{L}%°µΩ"'./ ]{0,15})$/u.exec(rest);
  if (unit !== null && !/^e\d/i.test(unit[2] ?? "")) rest = unit[1] ?? rest;
  return {
    digits: rest.trim(),
    negative: minus || bracketed !== null || credit !== null,
    unit: (unit?.[2] ?? "").trim().toLowerCase(),
    currency,
  };
}

/** The digits with a decimal point; undefined where the marks are not those of the file. Spaces and apostrophes part thousands too. */
function joined(digits: string, decimalMark: "." | ","): string | undefined {
  const [first = "", second = ""] = decimalMark === "." ? [".", ","] : [",", "."];
  const plain = digits.replace(/\s/g, " ");
  const [whole = "", fraction, more] = plain.split(first);
  if (more !== undefined || (fraction !== undefined && !/^\d*$/.test(fraction))) return scientific(plain, first);
  const groups = whole.split(/[ '’]/).join(second).split(second);
  const [head = "", ...rest] = groups;
  if (groups.length > 1 && (head === "" || head.length > 3 || rest.some((group) => group.length !== 3)))
    return undefined;
  const all = groups.join("");
  if (!/^\d*$/.test(all) || (all === "" && (fraction ?? "") === "")) return scientific(plain, first);
  const before = all.replace(/^0+(?=\d)/, "") || "0";
  return fraction === undefined || fraction === "" ? before : `${before}.${fraction}`;
}

/** 1.2E+3 is a number with all its digits as long as it is whole and small. */
function scientific(plain: string, mark: string): string | undefined {
  const found = /^\d(?:[.,]\d{1,12})?E[+-]?\d{1,2}$/i.test(plain) ? Number(plain.replace(mark, ".")) : Number.NaN;
  return Number.isSafeInteger(found) ? String(found) : undefined;
}

function unreadable(digits: string, decimalMark: "." | ","): LooseReading {
  const other = decimalMark === "." ? "comma" : "point";
  if (joined(digits, decimalMark === "." ? "," : ".") !== undefined)
    return held(
      `has a ${other} where a number of this file with decimal ${decimalMark === "." ? "point" : "comma"} cannot have one`,
      "Look it up in the source and write it with digits and a decimal point, such as 129.50.",
    );
  return held("cannot be read as a number", "Write digits with a decimal point and nothing else, such as 129.50.");
}

/** For columns that hold plain numbers: what was cut off is said. */
export function readPlainNumber(text: string, decimalMark: "." | ","): LooseReading {
  const { reading, unit, currency } = readLooseNumber(text, decimalMark);
  const cut = `${currency}${unit}`;
  if (reading.kind !== "taken" || reading.text === "" || cut === "") return reading;
  return takenWithNote(reading.text, `"${cut}" was left out.`);
}
