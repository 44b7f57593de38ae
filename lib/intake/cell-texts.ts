import type { CellReading, CellType } from "./cell";

const shortLength = 200;

/** One line of text: a name, a number as printed. */
export const shortText: CellType<string> = {
  json: { maxLength: shortLength },
  example: "Main Street Supply",
  read: readShort,
};

/** A serial, model, job or part number as printed. */
export const identifier: CellType<string> = {
  json: { maxLength: shortLength, pattern: "[\\p{L}\\p{N}]" },
  example: "FW5500-A2",
  read(text) {
    if (/^\s*\d([.,]\d+)?E\+?\d+\s*$/i.test(text)) {
      return {
        problem: "lost its digits in a spreadsheet",
        fix: "They cannot be recovered from this file: export it anew with the column formatted as text.",
      };
    }
    if (!/[\p{L}\p{N}]/u.test(text))
      return { problem: "has neither a letter nor a digit", fix: "Write it as printed, or leave it blank if unknown." };
    return readShort(text);
  },
};

/** What somebody wrote, kept as it is, line ends included. */
export const note: CellType<string> = {
  json: { maxLength: 20_000 },
  example: "Pump hums, impeller does not turn by hand.",
  read: (text) => ({ value: text }),
};

/** A key of the catalogue: lower case words joined by underscores. */
export const catalogueKey: CellType<string> = {
  json: { pattern: "^[a-z][a-z0-9_]{0,59}$" },
  example: "drain_pump",
  read(text) {
    const key = text.trim();
    return /^[a-z][a-z0-9_]{0,59}$/.test(key)
      ? { value: key }
      : {
          problem: "is not a key",
          fix: "Use lower case letters, digits and underscores, at most 60, such as drain_pump.",
        };
  },
};

/** Keys separated by spaces. */
export const catalogueKeys: CellType<readonly string[]> = {
  json: { pattern: "^[a-z][a-z0-9_]*( [a-z][a-z0-9_]*)*$" },
  example: "front_load_washer top_load_washer",
  read(text) {
    const keys = text.trim().split(/\s+/);
    const wrong = keys.find((key) => !/^[a-z][a-z0-9_]{0,59}$/.test(key));
    return wrong === undefined
      ? { value: [...new Set(keys)] }
      : {
          problem: `contains "${wrong}", which is not a key`,
          fix: "Write keys separated by spaces, such as front_load_washer top_load_washer.",
        };
  },
};

/** One word of a closed list. */
export function oneOf<const Word extends string>(words: readonly Word[]): CellType<Word> {
  const [example = ""] = words;
  return {
    json: { enum: words },
    example,
    read(text) {
      const found = words.find((word) => word === text.trim());
      return found === undefined
        ? { problem: "is not one of the words for this column", fix: `Write one of: ${words.join(", ")}.` }
        : { value: found };
    },
  };
}

/** Country, or country and state, by ISO 3166. */
export const territory: CellType<string> = {
  json: { pattern: "^[A-Z]{2}(-[A-Z0-9]{1,3})?$" },
  example: "US-CA",
  read(text) {
    const code = text.trim();
    return /^[A-Z]{2}(-[A-Z0-9]{1,3})?$/.test(code)
      ? { value: code }
      : { problem: "is not a country or state code", fix: "Write ISO 3166 codes, such as US or US-CA." };
  },
};

function readShort(text: string): CellReading<string> {
  const trimmed = text.trim();
  if (trimmed.length > shortLength)
    return { problem: `has ${trimmed.length} characters; the limit is ${shortLength}`, fix: "Shorten it." };
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  if (/[\u0000-\u001f\u007f]/.test(trimmed))
    return { problem: "contains a line end, a tab or another control character", fix: "Keep it to one line." };
  return { value: trimmed };
}
