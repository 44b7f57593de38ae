import { causes } from "@/lib/domain/cause";
import { checkOf, type FilingCase, type FilingCheck, onJob } from "./filing-case";

const fieldNames = { complaint: "complaint", causeNote: "cause", correction: "correction" } as const;

/** Warns and never rewrites: whether a word is true of this job only a person can tell. The list is common practice, no source. */
export function wordingChecked({ claim: { warnings } }: FilingCase): FilingCheck {
  if (warnings.length === 0) return checkOf("wording", onJob, [{ fine: "No word on the list of warnings." }]);
  return checkOf(
    "wording",
    onJob,
    warnings.map(({ word, field, pointsTo }) => ({
      open: `“${word}” in the ${fieldNames[field]} may be read as ${causes[pointsTo].name.toLowerCase()}: read it once more. It stays as the technician wrote it.`,
    })),
  );
}
