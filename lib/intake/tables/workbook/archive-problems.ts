import { shortened } from "../../shortened";
import { Unreadable } from "../../unreadable";

// A workbook is a ZIP archive of XML parts. Whatever an archive claims, it cannot make us unfold more than this.
export const mostParts = 2_000;
export const mostUnfoldedBytes = 200_000_000;

const again = "Export or copy the workbook again; if it opens in a spreadsheet program, save it there as XLSX or CSV.";

/** What the ZIP reader or the unfolding said, in words for whoever has the file. */
export function damaged(error: unknown): Unreadable {
  const said = error instanceof Error ? error.message : String(error);
  if (/relative path|absolute path|invalid characters in fileName/.test(said))
    return new Unreadable({
      problem: "The archive has a part whose name points outside of it; no workbook does that.",
      fix: "Do not open this file; ask whoever sent it for a CSV file.",
    });
  const known = sayings.find(([pattern]) => pattern.test(said));
  const problem = known?.[1] ?? `The workbook is damaged: ${shortened(said.replace(/\.$/, ""), 100)}.`;
  return new Unreadable({ problem, fix: again });
}

/** Messages of yauzl 3.4 and of zlib. */
const sayings: readonly (readonly [RegExp, string])[] = [
  [
    /End of central directory|unexpected EOF|overflows file bounds|Invalid comment length/i,
    "The workbook is cut off: its end is missing.",
  ],
  [
    /central directory|local file header|zip64|extra field|multi-disk|strong encryption/i,
    "The workbook is damaged: the list of its parts cannot be read.",
  ],
  [/too many bytes|not enough bytes/i, "The workbook is damaged: one of its parts is not as long as it says."],
  [
    /invalid (block|distance|code|stored|literal|window|bit)|incorrect (header|data)|unexpected end of file|compression method|size mismatch/i,
    "The workbook is damaged: one of its parts cannot be unfolded.",
  ],
];

export function missingPart(name: string): Unreadable {
  return new Unreadable({
    problem: `The workbook is not whole: its part ${shortened(name, 100)} is missing.`,
    fix: again,
  });
}

export function unfoldsTooFar(): Unreadable {
  return new Unreadable({
    problem: `The workbook holds more than ${mostUnfoldedBytes / 1_000_000} MB once it is unfolded.`,
    fix: "Save its sheet as CSV, which may have any length, or split it.",
  });
}

export function tooMany(most: number, things: string): Unreadable {
  return new Unreadable({
    problem: `The workbook has more than ${most / 1_000_000} million ${things}.`,
    fix: "Save its sheet as CSV, which may have any length, or split it.",
  });
}

export function tooManyParts(parts: number): Unreadable {
  return new Unreadable({
    problem: `The archive has ${parts} parts; a workbook has at most ${mostParts}.`,
    fix: "Save the sheet that holds the rows as CSV.",
  });
}

export function locked(): Unreadable {
  return new Unreadable({
    problem: "The workbook is protected by a password.",
    fix: "Open it with its password and save a copy without one, or save its sheet as CSV.",
  });
}
