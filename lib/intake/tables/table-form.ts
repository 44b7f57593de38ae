// How the bytes of a file are to be read as a table. Every part of it is a guess that a person may change.

export const encodings = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
export type Encoding = (typeof encodings)[number];

export const delimiters = [",", ";", "\t", "|"] as const;
export type Delimiter = (typeof delimiters)[number];

export type TableForm =
  | {
      readonly kind: "text";
      readonly encoding: Encoding;
      readonly delimiter: Delimiter;
      /** Row number of the header as a spreadsheet shows it; whatever stands above is not data. 0: there is none. */
      readonly headerRow: number;
    }
  | {
      readonly kind: "workbook";
      readonly sheet: string;
      /** The day that the workbook counts from: 1899-12-30 or 1904-01-01. */
      readonly dateBase: 1900 | 1904;
      readonly headerRow: number;
    }
  /** JSON Lines: one object a line, its keys are the columns. */
  | { readonly kind: "lines"; readonly encoding: Encoding };
