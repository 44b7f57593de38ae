import type { Matching } from "./matching";

/** Whether several rows belong to one job, each with a part line; seen by job numbers that come again. */
export function guessRowIs(
  { kind, columns }: Pick<Matching, "kind" | "columns">,
  rows: readonly { readonly cells: readonly string[] }[],
): { readonly value: Matching["rowIs"]; readonly reason: string } {
  const key = columns.findIndex(({ target }) => target === "job_number");
  const parts = columns.filter(({ target }) => target?.startsWith("part-lines.") === true);
  if (kind !== "jobs" || key < 0) return { value: "one record", reason: "Every row is a record of its own." };
  if (parts.length === 0)
    return { value: "one record", reason: "No column of parts is matched, so every row is a job." };
  const counts = new Map<string, number>();
  for (const { cells } of rows) {
    const number = (cells[key] ?? "").trim();
    if (number !== "") counts.set(number, (counts.get(number) ?? 0) + 1);
  }
  const [often] = [...counts].sort((a, b) => b[1] - a[1]);
  if (often === undefined || often[1] === 1)
    return {
      value: "one record",
      reason: "Parts stand on the rows, and no job number comes twice: every row is a job with at most one part.",
    };
  const repeated = [...counts.values()].filter((count) => count > 1).length;
  return {
    value: "one part line",
    reason: `Every row is a part line: ${repeated} of ${counts.size} job numbers come again, ${often[0]} on ${often[1]} rows.`,
  };
}
