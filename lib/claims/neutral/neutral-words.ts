// The small types that the parts of a neutral claim share.
import { z } from "zod";
import { currencies } from "@/lib/domain/money";

export const text = z.string();
export const day = z.iso.date().describe("Calendar day at the service address, YYYY-MM-DD.");
export const instant = z.iso.datetime({ offset: true }).describe("ISO 8601 with its offset.");
export const sha256 = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe("SHA-256 of the file's bytes, in hexadecimal digits.");
export const coded = z
  .strictObject({ key: text, name: text })
  .describe("A word of this program's own lists: the key stays, the name is for people.");
export const amount = z
  .strictObject({ cents: z.int(), currency: z.enum(currencies) })
  .describe("Whole hundredths of the currency, ISO 4217.");
