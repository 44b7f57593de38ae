import { type LooseReading, rewritten } from "./loose-reading";

const guarded = /^'[=+\-@\t\r\n\0\uFF1D\uFF0B\uFF0D\uFF20]/;

/**
 * Reads a text as it was before a file of ours put an apostrophe in front, so that no spreadsheet ran it: a report of rows
 * is corrected and comes back. Spreadsheets that read such a file keep the apostrophe as a letter.
 */
export function withoutGuard<Mark>(read: (text: string, mark: Mark) => LooseReading) {
  return (text: string, mark: Mark): LooseReading => {
    if (!guarded.test(text)) return read(text, mark);
    const reading = read(text.slice(1), mark);
    if (reading.kind !== "taken" || reading.note !== undefined) return reading;
    return rewritten(
      reading.text,
      "The apostrophe in front, which keeps a spreadsheet from running it, was taken off.",
    );
  };
}
