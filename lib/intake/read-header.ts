import { columnsOf, neededColumns, type TableKind, tableKinds } from "./file-kinds";
import type { FileProblem } from "./parsed";
import { shortened } from "./shortened";

export type HeaderReading =
  | { readonly ok: true; readonly kind: TableKind; readonly columns: readonly string[] }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** What the first row says the file is, or everything that is wrong with that row. `stated` is the kind that the sender named. */
export function readHeader(cells: readonly string[], stated?: TableKind): HeaderReading {
  const columns = cells.map((cell) => cell.trim());
  const separator = otherSeparator(columns);
  if (separator !== undefined) {
    return refuse({
      row: 1,
      problem: `The columns seem to be separated by ${separator}.`,
      fix: "Save the file as CSV with commas, UTF-8.",
    });
  }
  const kind = stated ?? recogniseKind(columns);
  if (kind === undefined) {
    const wanted = tableKinds.map((each) => `${each}: ${neededColumns(each).join(", ")}`).join("; ");
    return refuse({
      row: 1,
      problem: "The header fits none of the kinds of file.",
      fix: `The first row must hold at least these columns. ${wanted}.`,
    });
  }
  const problems = headerProblems(columns, kind);
  return problems.length === 0 ? { ok: true, kind, columns } : { ok: false, problems };
}

/**
 * The kind whose needed columns are all there, or else the one that knows most of the columns while lacking least;
 * undefined where fewer than half of the columns are known to any.
 */
export function recogniseKind(columns: readonly string[]): TableKind | undefined {
  let best: { kind: TableKind; score: number } | undefined;
  for (const kind of tableKinds) {
    const known = columns.filter((column) => columnsOf(kind).includes(column)).length;
    const lacking = neededColumns(kind).filter((column) => !columns.includes(column)).length;
    if (known * 2 < columns.length || known === 0) continue;
    const score = known - columns.length - 2 * lacking + known / 1000;
    if (best === undefined || score > best.score) best = { kind, score };
  }
  return best?.kind;
}

function headerProblems(columns: readonly string[], kind: TableKind): readonly FileProblem[] {
  const known = columnsOf(kind);
  const all = `The columns of a file of ${kind} are: ${known.join(", ")}.`;
  const seen = new Set<string>();
  const problems: FileProblem[] = [];
  for (const [index, column] of columns.entries()) {
    if (column === "")
      problems.push({ row: 1, problem: `Column ${index + 1} has no name.`, fix: "Name it, or remove it." });
    else if (seen.has(column))
      problems.push({ row: 1, column, problem: `Column ${column} is there twice.`, fix: "Remove one of the two." });
    else if (!known.includes(column))
      problems.push({
        row: 1,
        column,
        problem: `Column ${shortened(column)} is not one of ours.`,
        fix: `Rename or remove it. ${all}`,
      });
    seen.add(column);
  }
  for (const column of neededColumns(kind)) {
    if (!seen.has(column))
      problems.push({
        row: 1,
        column,
        problem: `Column ${column} is missing.`,
        fix: `Add it: every row of ${kind} needs it.`,
      });
  }
  return problems;
}

function otherSeparator(columns: readonly string[]): string | undefined {
  const [only = ""] = columns;
  if (columns.length > 1) return undefined;
  if (only.includes(";")) return "semicolons";
  if (only.includes("\t")) return "tabs";
  return only.includes("|") ? "vertical bars" : undefined;
}

function refuse(problem: FileProblem): HeaderReading {
  return { ok: false, problems: [problem] };
}
