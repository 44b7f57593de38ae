import type { CellReading, CellType } from "./cell";

/** A whole number from `least` up. */
export function wholeNumber({ least }: { readonly least: number }): CellType<number> {
  const most = 1_000_000;
  return {
    json: { pattern: "^\\d{1,7}$" },
    example: "1",
    read(text) {
      const trimmed = text.trim();
      if (!/^[+-]?\d{1,15}$/.test(trimmed))
        return { problem: "is not a whole number", fix: `Write a whole number, ${least} or more, without separators.` };
      const value = Number(trimmed);
      if (value < least)
        return {
          problem: value < 0 ? "is negative" : `is below ${least}`,
          fix: `Write a whole number, ${least} or more.`,
        };
      if (value > most) return { problem: "is too large", fix: `Write a whole number, ${most} or less.` };
      return { value };
    },
  };
}

/** A decimal number with a point; negative where the column allows it. */
export const decimalNumber: CellType<number> = {
  json: { pattern: "^-?\\d{1,12}(\\.\\d{1,9})?$" },
  example: "14.2",
  read(text) {
    const trimmed = text.trim();
    if (/^-?\d{1,12}(\.\d{1,9})?$/.test(trimmed)) return { value: Number(trimmed) };
    return {
      problem: "is not a number",
      fix: "Write digits with a decimal point and nothing else, such as 14.2; the unit has its own column.",
    };
  },
};

/** An amount of money in the currency's unit, read as whole cents. */
export const amount: CellType<number> = {
  json: { pattern: "^\\d{1,9}(\\.\\d{1,2})?$" },
  example: "129.50",
  read(text) {
    const trimmed = text.trim();
    const found = /^(-?)(\d{1,9})(?:\.(\d{1,2}))?$/.exec(trimmed);
    if (found === null)
      return {
        problem: "is not an amount",
        fix: "Write digits with a decimal point and at most two decimals, such as 129.50.",
      };
    const [, sign, whole = "", decimals = ""] = found;
    if (sign === "-")
      return {
        problem: "is negative",
        fix: "Write what it costs, 0 or more; a credit belongs on a line of its own kind.",
      };
    return { value: Number(whole) * 100 + Number(decimals.padEnd(2, "0")) };
  },
};

export const yesNo: CellType<boolean> = {
  json: { enum: ["yes", "no"] },
  example: "yes",
  read(text): CellReading<boolean> {
    const word = text.trim();
    if (word === "yes" || word === "no") return { value: word === "yes" };
    return { problem: "is neither yes nor no", fix: "Write yes or no, or leave it blank if nobody said." };
  },
};
