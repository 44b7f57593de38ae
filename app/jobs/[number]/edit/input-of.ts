import type { Choice } from "@/app/_ui/select-field";
import type { JobFields } from "@/db/queries/job-fields";
import { failureModes } from "@/lib/domain/failure-modes";
import { targetFields } from "@/lib/intake/matching/target-fields";
import { valueInWords } from "../field-in-words";

/** How a field of a job is typed or chosen. */
export interface FieldInput {
  /** Where one of a list is chosen. */
  readonly choices: readonly Choice[] | undefined;
  readonly isLong: boolean;
  readonly mayBeBlank: boolean;
  readonly hint: string | undefined;
}

const long: ReadonlySet<string> = new Set(["complaint", "cause_note", "correction"]);
const never: ReadonlySet<string> = new Set(["status", "cause", "payer", "completed_on", "visits"]);

export function inputOf(field: string, { components, symptoms, currency }: JobFields): FieldInput {
  const target = targetFields("jobs").find((each) => each.target === field);
  const keys =
    field === "component"
      ? components
      : field === "symptom"
        ? symptoms
        : field === "failure_mode"
          ? failureModes.map(({ key }) => key)
          : (target?.words ?? []);
  const choices = keys.map((key): Choice => ({ value: key, name: valueInWords(field, key, "USD") }));
  return {
    choices: keys.length === 0 ? undefined : choices.toSorted((a, b) => a.name.localeCompare(b.name, "en-US")),
    isLong: long.has(field),
    mayBeBlank: !never.has(field),
    hint:
      target?.sort === "day"
        ? "Year first, such as 2024-03-09."
        : target?.sort === "money"
          ? `In ${currency}, such as 129.50.`
          : undefined,
  };
}
