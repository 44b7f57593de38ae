import type { CellProblem } from "@/lib/intake/parsed";
import { readOnly } from "../client";
import { loadIntakeSetting } from "../queries/intake-setting";
import { loadJobFields } from "../queries/job-fields";
import { type EditResult, editJob } from "./edit-job";
import { jobsKind } from "./kinds/jobs";

export interface FieldEdit {
  readonly jobNumber: string;
  /** Column of a file of jobs, such as labour or completed_on. */
  readonly field: string;
  /** As somebody would write it in a file of our own columns; blank clears it. */
  readonly text: string;
  readonly by: string;
  readonly reason: string;
}

export type FieldEditResult = EditResult | { readonly kind: "problems"; readonly problems: readonly CellProblem[] };

/** Columns of a job that a person may set, by the names that files have for them. */
export const editableFields: readonly string[] = jobsKind.columns
  .filter(({ use, from }) => use === "value" && from !== "currency")
  .map(({ from }) => from);

/** A person sets one field of a job, in the notation of a file: checked together with everything else that the job says. */
export async function editJobField({ jobNumber, field, text, by, reason }: FieldEdit): Promise<FieldEditResult> {
  const place = jobsKind.columns.findIndex(({ use, from }) => use === "value" && from === field);
  const column = jobsKind.columns[place];
  if (column === undefined || !editableFields.includes(field)) throw new RangeError(`field: ${field} cannot be edited`);
  const found = await readOnly(async (db) => {
    const job = await loadJobFields(db, jobNumber);
    return job === undefined ? undefined : { job, setting: await loadIntakeSetting(db, undefined) };
  });
  if (found === undefined) return { kind: "no such job" };
  const { job, setting } = found;
  const written = text.trim();
  const words = field === "component" ? job.components : field === "symptom" ? job.symptoms : undefined;
  if (written !== "" && words?.includes(written) === false)
    return { kind: "problems", problems: [otherKind(field, text)] };
  const read = await jobsKind.read({ ...job.cells, [field]: written }, setting, "");
  if (!read.ok) return { kind: "problems", problems: read.problems };
  const value = read.value[place] ?? null;
  if (typeof value === "boolean") throw new RangeError(`field: ${field} is neither text nor number`);
  if (field === "completed_on" && value === null) return { kind: "problems", problems: [neededDay] };
  return await editJob({ jobNumber, column: column.name, value, by, reason });
}

function otherKind(field: string, value: string): CellProblem {
  return { column: field, value, problem: `is no ${field} of this kind of appliance`, fix: "Choose one that it has." };
}

const neededDay: CellProblem = {
  column: "completed_on",
  value: "",
  problem: "is blank",
  fix: "Every job on file has the day on which it was completed.",
};
