import type { TableKind } from "../file-kinds";
import { type CellProblem, shownValue } from "../parsed";
import { lineRole } from "./line-role";
import type { OpenRow } from "./open-row";

/** What only the row as a whole shows: the part line in a row of jobs, returns, and days that were copied from each other. */
export function settleRow(open: OpenRow, kind: TableKind): void {
  const own = open.cells.get(kind);
  if (own === undefined) return;
  const line = kind === "part-lines" ? own : open.cells.get("part-lines");
  if (line !== undefined) settleLine(open, line, kind === "part-lines" ? undefined : own);
  if (kind === "jobs") copiedDays(open, own);
}

function settleLine(open: OpenRow, line: Record<string, string>, job: Record<string, string> | undefined): void {
  if (job !== undefined && saysNothing(line)) {
    open.cells.delete("part-lines");
    for (const [column, taken] of Object.entries(line)) {
      const from = open.sources.get(`part-lines.${column}`);
      if (taken !== "" && from !== undefined)
        open.notes.push({ ...from, column, taken: "", note: "No part on this row." });
    }
    return;
  }
  if (job?.job_number !== undefined) line.job_number = job.job_number;
  if ((line.role ?? "") === "") nameRole(open, line);
  const from = open.sources.get("part-lines.quantity");
  if (from !== undefined && /^-/.test(line.quantity ?? "")) open.problems.push(returned(from));
  if (from !== undefined && /^0+$/.test(line.quantity ?? "")) open.problems.push(noneUsed(from));
}

/** Blank, or filled only with the zeros that a program writes for no part. */
function saysNothing(line: Record<string, string>): boolean {
  return Object.entries(line).every(
    ([column, text]) =>
      text.trim() === "" ||
      ((column === "quantity" || column === "unit_cost" || column === "line") && /^[01]?(?:\.0+)?$/.test(text)) ||
      column === "role" ||
      column === "currency",
  );
}

function nameRole(open: OpenRow, line: Record<string, string>): void {
  const role = lineRole(line.part_number ?? "", line.description ?? "");
  if (role === undefined) return;
  const from = open.sources.get("part-lines.description") ?? open.sources.get("part-lines.part_number");
  line.role = role;
  if (from !== undefined)
    open.notes.push({
      ...from,
      column: "role",
      taken: role,
      note: `The line says that it is ${role === "freight" ? "freight" : "a core charge"}, no part.`,
    });
  if ((line.part_number ?? "").trim() !== "" || from === undefined) return;
  line.part_number = role === "freight" ? "FREIGHT" : "CORE";
  open.notes.push({
    ...from,
    column: "part_number",
    taken: line.part_number,
    note: "The line has no number of its own.",
  });
}

interface Source {
  readonly source: string;
  readonly raw: string;
}

function returned({ source, raw }: Source): CellProblem {
  return {
    column: source,
    value: shownValue(raw),
    problem: "is negative: a part that was returned",
    fix: "Lower the quantity of the line that it takes back, and leave this row out.",
  };
}

function noneUsed({ source, raw }: Source): CellProblem {
  return {
    column: source,
    value: shownValue(raw),
    problem: "says that none was used",
    fix: "Write how many were used, or leave this line out.",
  };
}

/** A purchase on the day of the job is mostly the job's own day, typed to get past the field. Common practice, no source. */
function copiedDays(open: OpenRow, job: Record<string, string>): void {
  const from = open.sources.get("jobs.sold_on");
  const sold = job.sold_on ?? "";
  if (from === undefined || sold === "" || (sold !== job.completed_on && sold !== job.requested_on)) return;
  open.notes.push({
    ...from,
    column: "sold_on",
    taken: sold,
    note: "Bought on the day of the job itself: perhaps only the job's day again. Taken as it stands.",
  });
}
