import type { CellMark } from "../tables/source-row";
import { asItStands, held, type LooseReading, leftBlank, rewritten, takenWithNote } from "./loose-reading";
import { monthNumber } from "./month-names";
import { formulaError, isFillerNumber, standsForUnknown } from "./stand-ins";

/**
 * A serial, model, job or part number. A spreadsheet takes such text for a number, a day or a formula; what it did is
 * named, and taken back only where the cell itself still stores what stood there.
 * Sources for the damage: Zeeberg et al. 2004, BMC Bioinformatics 5:80; Ziemann et al. 2016, Genome Biology 17:177.
 */
export function readLooseIdentifier(
  text: string,
  mark: CellMark | undefined,
  {
    noun,
    usualLength,
    fillers,
  }: { readonly noun: string; readonly usualLength: number | undefined; readonly fillers: boolean },
): LooseReading {
  const plain = text.trim();
  if (mark === undefined && ordinary.test(plain)) return asItStands(plain);
  if (plain === "") return asItStands("");
  if (mark !== undefined) {
    const marked = fromMark(plain, mark, noun);
    if (marked !== undefined) return marked;
  }
  if (/^\d(?:[.,]\d+)?E[+-]?\d+$/i.test(plain)) return lostDigits(plain, noun);
  const error = formulaError(plain);
  if (error !== undefined)
    return held(
      `${error} is a spreadsheet's error, not a ${noun}`,
      "Correct the formula in the spreadsheet and export it anew, or leave the cell blank.",
    );
  if (standsForUnknown(plain)) return leftBlank(`"${plain}" stands for unknown.`);
  if (fillers && isFillerNumber(plain)) return leftBlank(`"${plain}" only fills the field.`);
  if (becameDay(plain)) return turnedIntoDay(plain, noun);
  const shielded = /^="([^"]*)"$/.exec(plain) ?? /^'(.+)$/.exec(plain);
  if (shielded !== null)
    return rewritten((shielded[1] ?? "").trim(), "The marks around it only keep a spreadsheet from changing it.");
  if (plain.startsWith("="))
    return held(`is a formula, not a ${noun}`, "Replace it by its value in the spreadsheet and export it anew.");
  if (/^\d+\.0+$/.test(plain))
    return takenWithNote(plain.replace(/\.0+$/, ""), "A spreadsheet took it for a number and added decimals.");
  if (usualLength !== undefined && /^\d+$/.test(plain) && plain.length < usualLength)
    return takenWithNote(
      plain,
      `It has ${plain.length} digits, the others ${usualLength}: a spreadsheet may have lost zeros in front (${plain.padStart(usualLength, "0")}). Taken as it stands.`,
    );
  return asItStands(plain);
}

/** Letters and then digits, three where there may be a name of a month: nothing that a spreadsheet makes of anything looks like this, and most numbers do. */
const ordinary = /^(?:[A-Z]{1,2}-?\d|[A-Z]{3,}-?\d{3})[A-Z\d-]*$/i;

function fromMark(plain: string, mark: CellMark, noun: string): LooseReading | undefined {
  if (mark.kind === "day") return turnedIntoDay(mark.shown ?? plain, noun);
  if (mark.kind === "error")
    return held(
      `${plain} is a spreadsheet's error, not a ${noun}`,
      "Correct the formula in the spreadsheet, or leave the cell blank.",
    );
  if (/^\d{1,15}$/.test(mark.stored))
    return mark.stored === plain
      ? undefined
      : takenWithNote(mark.stored, `Shown as ${plain}; the cell stores all its digits.`);
  return /^\d+$|E\+?\d+$/i.test(mark.stored) ? lostDigits(plain, noun) : undefined;
}

function lostDigits(plain: string, noun: string): LooseReading {
  return held(
    `lost its digits in the spreadsheet; the ${noun} behind ${plain} cannot be recovered from this file`,
    "Export it anew with the column formatted as text, or look it up in the source.",
  );
}

/** 1-MAR, Mar-01, 01. Mrz, 3/1/2024, 2024-03-01: what a spreadsheet makes of MAR1, 3-1 or 1/3. */
function becameDay(plain: string): boolean {
  if (/^\d{1,2}\/\d{1,2}\/(?:\d{4}|\d{2})$|^(?:19|20)\d{2}-\d{2}-\d{2}(?: 00:00(?::00)?)?$/.test(plain)) return true;
  const named =
    /^(?:\d{1,2}[-. ]{1,2}(\p{L}{3,4})\.?|(\p{L}{3,4})\.?[-. ]\d{2}|\d{1,2}[-. ](\p{L}{3,4})\.?[-. ]\d{2,4})$/u.exec(
      plain,
    );
  const name = named?.slice(1).find((part) => part !== undefined);
  return name !== undefined && isMonth(name);
}

/** A whole short name of a month: MARK is none. */
function isMonth(name: string): boolean {
  const lower = name.toLowerCase();
  return (
    monthNumber(lower) !== undefined &&
    (lower.length === 3 || /^(?:sept|juil|juin|mars|märz|mrz|june|july)$/.test(lower))
  );
}

function turnedIntoDay(plain: string, noun: string): LooseReading {
  return held(
    `is a day: a spreadsheet turned a ${noun} such as MAR1 or 3-1 into ${plain}`,
    "Look it up in the source; it cannot be told from this file what stood there.",
  );
}
