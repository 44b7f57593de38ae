import type { FieldProblem } from "@/app/_ui/error-summary";
import type { PolicyProblem } from "@/lib/intake/parse-policy";
import { isList } from "@/lib/intake/policy-form/form-field";
import { fieldOfPointer } from "@/lib/intake/policy-form/policy-form";
import { policySections } from "@/lib/intake/policy-form/policy-sections";
import { problemsByField } from "./_components/form-part";

/** One line a problem, with the name that the form gives its field. */
export function problemLines(problems: readonly PolicyProblem[]): readonly FieldProblem[] {
  const sentences = problemsByField(problems);
  return [...sentences].map(([field, sentence]) =>
    field === "" ? { text: sentence } : { field, text: `${labelOf(field)} ${sentence}.` },
  );
}

function labelOf(name: string): string {
  for (const section of policySections) {
    for (const part of section.parts) {
      if (!isList(part)) {
        if (part.at === name) return `${section.title}, ${part.label}:`;
        continue;
      }
      const row = /^\.(\d+)\.(.+)$/.exec(name.startsWith(part.list) ? name.slice(part.list.length) : "");
      const field = part.fields.find(({ at }) => at === row?.[2]);
      if (row !== null && field !== undefined)
        return `${section.title}, ${part.row} ${Number(row[1]) + 1}, ${field.label}:`;
    }
  }
  return fieldOfPointer(name) ?? name;
}
