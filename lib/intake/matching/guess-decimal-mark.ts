import type { Decision } from "./guess-date-order";

/** Decimal point or comma, from every number of the file; asked where the file cannot tell. */
export function guessDecimalMark(cells: Iterable<string>): Decision<"." | ","> {
  const seen = { numbers: 0, point: 0, comma: 0, either: 0, example: "" };
  for (const cell of cells) {
    const digits = /\d[\d.,'’ \u00a0\u202f]*\d|\d/.exec(cell)?.[0];
    if (digits === undefined) continue;
    seen.numbers++;
    const mark = markOf(digits);
    if (mark === "either") seen.example = cell.trim();
    if (mark !== undefined) seen[mark]++;
  }
  const { numbers, point, comma, either, example } = seen;
  if (point > 0 && comma === 0)
    return { value: ".", reason: `Decimal point: ${point} of ${numbers} numbers have one, none a decimal comma.` };
  if (comma > 0 && point === 0)
    return { value: ",", reason: `Decimal comma: ${comma} of ${numbers} numbers have one, none a decimal point.` };
  if (point > 0)
    return {
      question: "Is the decimal mark a point or a comma?",
      reason: `${point} numbers have a decimal point and ${comma} a decimal comma.`,
    };
  if (either > 0)
    return {
      question: "Is the decimal mark a point or a comma?",
      reason: `"${example}" can be thousands or have three decimals, and no other number of the file tells.`,
    };
  return {
    value: ".",
    reason: numbers === 0 ? "The file holds no numbers." : `None of ${numbers} numbers has a fraction.`,
  };
}

function markOf(digits: string): "point" | "comma" | "either" | undefined {
  const marks = [...digits].filter((letter) => letter === "." || letter === ",");
  const [first] = marks;
  const last = marks.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const named = last === "." ? "point" : "comma";
  if (first !== last) return named;
  if (marks.length > 1) return named === "point" ? "comma" : "point"; // the same mark twice parts thousands
  const [before = "", after = ""] = digits.split(last);
  return after.trim().length === 3 && /^[1-9]\d{0,2}$/.test(before) ? "either" : named;
}
