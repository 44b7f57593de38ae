import type { TableKind } from "../file-kinds";
import { type CellProblem, shownValue } from "../parsed";
import { lineRole } from "./line-role";
import type { CellOrigin, OpenRow, RowCells } from "./open-row";

/** What only the row as a whole shows: the part line in a row of jobs, and days that were copied from each other. */
export function settleRow(open: OpenRow, kind: TableKind): void {
  if (kind === "jobs") {
    if (open.line !== undefined) settleJobLine(open, open.line);
    copiedDays(open);
  } else if (kind === "part-lines") settleLine(open, open.own, "");
}

function settleJobLine(open: OpenRow, line: RowCells): void {
  if (!saysNothing(line)) {
    line.job_number = open.own.job_number ?? "";
    settleLine(open, line, "part-lines.");
    return;
  }
  open.line = undefined;
  for (const [column, taken] of Object.entries(line)) {
    const from = taken === "" ? undefined : open.origin(`part-lines.${column}`);
    if (from !== undefined) open.notes.push({ ...from, column, taken: "", note: "No part on this row." });
  }
}

function settleLine(open: OpenRow, line: RowCells, prefix: string): void {
  if ((line.role ?? "") === "") nameRole(open, line, prefix);
  credited(open, line, prefix);
  const quantity = line.quantity ?? "";
  if (quantity === "" || (quantity.charCodeAt(0) > 48 && quantity.charCodeAt(0) < 58)) return; // blank or 1 and up
  const from = open.origin(`${prefix}quantity`);
  if (from === undefined) return;
  if (/^0+$/.test(quantity)) open.problems.push(noneUsed(from));
}

/** Blank, or filled only with the zeros that a program writes for no part. */
function saysNothing(line: RowCells): boolean {
  if ((line.part_number ?? "") !== "" || (line.description ?? "").trim() !== "") return false;
  return Object.entries(line).every(
    ([column, text]) =>
      text.trim() === "" ||
      ((column === "quantity" || column === "unit_cost" || column === "line") && /^[01]?(?:\.0+)?$/.test(text)) ||
      column === "role" ||
      column === "currency" ||
      column === "job_number",
  );
}

function nameRole(open: OpenRow, line: RowCells, prefix: string): void {
  const role = lineRole(line.part_number ?? "", line.description ?? "");
  if (role === undefined) return;
  const from = filled(open.origin(`${prefix}description`)) ?? open.origin(`${prefix}part_number`);
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

function filled(origin: CellOrigin | undefined): CellOrigin | undefined {
  return origin === undefined || origin.raw.trim() === "" ? undefined : origin;
}

/** A part at a negative cost is one that was returned: the line takes it back at what it cost. */
function credited(open: OpenRow, line: RowCells, prefix: string): void {
  const { unit_cost: cost = "", quantity = "" } = line;
  if (!cost.startsWith("-") || quantity.startsWith("-")) return;
  line.unit_cost = cost.slice(1);
  line.quantity = `-${quantity === "" ? "1" : quantity}`;
  const from = open.origin(`${prefix}unit_cost`);
  if (from !== undefined)
    open.notes.push({
      ...from,
      column: "quantity",
      taken: line.quantity,
      note: "A negative cost: a part that was returned.",
    });
}

function noneUsed({ source, raw }: CellOrigin): CellProblem {
  return {
    column: source,
    value: shownValue(raw),
    problem: "says that none was used",
    fix: "Write how many were used, or leave this line out.",
  };
}

/** A purchase on the day of the job is mostly the job's own day, typed to get past the field. Common practice, no source. */
function copiedDays(open: OpenRow): void {
  const { sold_on: sold = "", completed_on: completed, requested_on: requested } = open.own;
  if (sold === "" || (sold !== completed && sold !== requested)) return;
  const from = open.origin("sold_on");
  if (from === undefined) return;
  open.notes.push({
    ...from,
    column: "sold_on",
    taken: sold,
    note: "Bought on the day of the job itself: perhaps only the job's day again. Taken as it stands.",
  });
}
