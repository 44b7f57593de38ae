import { z } from "zod";
import { dateOrders, labourUnits } from "@/lib/intake/matching/matching";
import type { FormWishes } from "@/lib/intake/tables/look-at-table";
import { type Delimiter, delimiters, encodings } from "@/lib/intake/tables/table-form";
import type { SaidNotation } from "../../../_draft/as-said";

/** Names of the separators in forms: a tab would not survive every browser. */
export const delimiterWords: Readonly<Record<Delimiter, string>> = {
  ",": "comma",
  ";": "semicolon",
  "\t": "tab",
  "|": "vertical bar",
};

const orNone = <T extends z.ZodType>(schema: T) =>
  z.preprocess((value) => (value === "" ? undefined : value), schema.optional());

const lookForm = z.object({
  draft: z.uuid(),
  encoding: orNone(z.enum(encodings)),
  delimiter: orNone(z.enum(["comma", "semicolon", "tab", "vertical bar"])),
  sheet: orNone(z.string().max(500)),
  headerRow: orNone(z.coerce.number().int().min(0).max(100_000)),
  dateOrder: orNone(z.enum(dateOrders)),
  decimalMark: orNone(z.enum([".", ","])),
  labourUnit: orNone(z.enum(labourUnits)),
  dayNumbersFrom: orNone(z.enum(["1900", "1904"]).transform((year) => (year === "1900" ? 1900 : 1904))),
  onward: z.enum(["again", "on"]),
});

export interface LookForm {
  readonly draft: string;
  readonly wishes: FormWishes;
  readonly said: SaidNotation;
  readonly onward: "again" | "on";
}

/** What a person says about how the file is to be read; undefined where the form did not arrive whole. */
export function readLookForm(form: FormData): LookForm | undefined {
  const read = lookForm.safeParse(Object.fromEntries(form));
  if (!read.success) return undefined;
  const { draft, encoding, delimiter, sheet, headerRow, onward, ...said } = read.data;
  return {
    draft,
    wishes: { encoding, delimiter: delimiters.find((mark) => delimiterWords[mark] === delimiter), sheet, headerRow },
    said,
    onward,
  };
}
