import { type PayItem, payItems } from "@/lib/domain/pay-item";
import { startEventKeys, startEvents } from "@/lib/domain/policy-start";
import type { FormChoice, FormField } from "./form-field";

const itemNames: Readonly<Record<PayItem, string>> = {
  parts: "Parts",
  labour: "Labour",
  trip: "Trip",
  diagnosis: "Diagnosis",
};

export function named(...pairs: readonly (readonly [value: string, name: string])[]): readonly FormChoice[] {
  return pairs.map(([value, name]) => ({ value, name }));
}

export const events = startEventKeys.map((value) => ({ value, name: startEvents[value] }));
export const items = payItems.map((value) => ({ value, name: itemNames[value] }));
export const own = (words: readonly string[]) => words.map((value) => ({ value, name: value.replaceAll("_", " ") }));
export const counting = named(
  ["exclude", "The first day is day 0 (“from”)"],
  ["include", "The first day is day 1 (“beginning with”)"],
);
export const lengths = "In the unit that the terms use: 12 months, 1 year, 90 days.";
export const keys = "Keys of the catalogue, between commas, such as drain_pump.";

export const pays: FormField = { at: "pays", label: "Pays", kind: "set", choices: items };
export const within = (at: string, label: string, hint = lengths): FormField => ({ at, label, kind: "term", hint });
export const money = (at: string, label: string, hint?: string): FormField => ({
  at,
  label,
  kind: "money",
  ...(hint === undefined ? {} : { hint }),
});
