import type { RowProblem } from "@/lib/intake/parsed";

/** Rows on which the same is wrong with the same value of the same column: what mends one mends them all. */
export interface AlikeProblems {
  readonly column: string;
  readonly value: string;
  readonly problem: string;
  readonly fix: string;
  /** In the order of the file. */
  readonly rows: readonly number[];
}

/** Groups in the order of their first rows. Whole rows that are wrong, each in its own way, stay apart. */
export function alikeProblems(problems: readonly RowProblem[]): readonly AlikeProblems[] {
  const groups = new Map<string, AlikeProblems & { rows: number[] }>();
  for (const { row, column, value, problem, fix } of problems) {
    const key = [column, value, problem, fix, column === "" ? row : ""].join("\u001f");
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { column, value, problem, fix, rows: [row] });
    else if (group.rows.at(-1) !== row) group.rows.push(row);
  }
  return [...groups.values()];
}

/** "3", "3, 17 and 40", "3, 17, 40 and 9 more". */
export function rowsInWords(rows: readonly number[]): string {
  const shown = 3;
  if (rows.length <= shown)
    return new Intl.ListFormat("en-US", { type: "conjunction" }).format(rows.map(String)).replace(/, and /, " and ");
  return `${rows.slice(0, shown).join(", ")} and ${rows.length - shown} more`;
}

export interface ProblemKind {
  readonly column: string;
  readonly problem: string;
  readonly rows: number;
}

/** What is wrong, by column and by kind of problem, the most frequent first. */
export function kindsOfProblems(groups: readonly AlikeProblems[]): readonly ProblemKind[] {
  const kinds = new Map<string, { column: string; problem: string; rows: number }>();
  for (const { column, problem, rows } of groups) {
    const key = kindKey({ column, problem });
    const kind = kinds.get(key) ?? { column, problem: general(problem), rows: 0 };
    kind.rows += rows.length;
    kinds.set(key, kind);
  }
  return [...kinds.values()].toSorted((a, b) => b.rows - a.rows);
}

/** Names a kind in an address. */
export function kindKey({ column, problem }: Pick<AlikeProblems, "column" | "problem">): string {
  return `${column}: ${general(problem)}`;
}

/** Without the values that it names, which differ from row to row: days, numbers, and whatever holds a digit. */
function general(problem: string): string {
  return problem.replaceAll(/\S*\d\S*/g, "…").replaceAll(/…(?:\s…)+/g, "…");
}
