import type { Matching } from "@/lib/intake/matching/matching";
import { columnName } from "./named-cells";

/** By kind and column of ours (`jobs.serial`): what the matched column of the file is called. */
export function tableHeaders({ kind, columns }: Matching): Readonly<Record<string, string>> {
  const header = columns.map(({ source }) => source);
  const headers: Record<string, string> = Object.fromEntries(
    columns.flatMap(({ target }, place) =>
      target === undefined ? [] : [[target.includes(".") ? target : `${kind}.${target}`, columnName(header, place)]],
    ),
  );
  const number = headers["jobs.job_number"]; // a part line in a row of jobs has the number of its row
  return number === undefined ? headers : { ...headers, "part-lines.job_number": number };
}

/** Columns of ours that the matching fills, by kind: a column that is not among them leaves stored values alone. */
export function filledColumns(matching: Matching, kind: string): ReadonlySet<string> {
  const constants = Object.keys(matching.constants).map((target) =>
    target.includes(".") ? target : `${matching.kind}.${target}`,
  );
  const all = [...Object.keys(tableHeaders(matching)), ...constants];
  const money = matching.labourUnit === "money" && all.includes("jobs.labour_minutes") ? ["jobs.labour"] : [];
  return new Set(
    [...all, ...money].filter((target) => target.startsWith(`${kind}.`)).map((target) => target.slice(kind.length + 1)),
  );
}
