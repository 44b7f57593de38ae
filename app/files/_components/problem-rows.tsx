import type { ReactNode } from "react";
import { type Column, Table } from "@/app/_ui/table";
import { type AlikeProblems, rowsInWords } from "./alike-problems";
import styles from "./problem-rows.module.css";

interface Props {
  readonly groups: readonly AlikeProblems[];
  /** Where the rows are corrected; left out where they can't be. */
  readonly correction?: (group: AlikeProblems) => ReactNode;
}

const mostShown = 100;

/** Each problem with its place, its value and what to do; the rows that are wrong alike in one line. */
export function ProblemRows({ groups, correction }: Props) {
  const shown = groups.slice(0, mostShown);
  return (
    <>
      <Table
        caption="Rows with problems"
        columns={[
          ...columns,
          ...(correction === undefined ? [] : [{ key: "correction", head: "Correct", cell: correction }]),
        ]}
        rows={shown}
        rowKey={(group) => `${group.rows[0]} ${group.column} ${group.problem}`}
      />
      {groups.length > shown.length && (
        <p className="soft">
          {groups.length - shown.length} further groups are in the report, or follow when these are corrected.
        </p>
      )}
    </>
  );
}

const columns: readonly Column<AlikeProblems>[] = [
  {
    key: "row",
    head: "Row",
    cell: ({ rows }) => (
      <span className={`figures ${styles.rows}`} data-noun={rows.length === 1 ? "Row" : "Rows"}>
        {rowsInWords(rows)}
      </span>
    ),
  },
  { key: "column", head: "Column", cell: ({ column }) => (column === "" ? "the whole row" : column) },
  {
    key: "value",
    head: "Value",
    cell: ({ value }) => <span className={styles.value}>{value === "" ? "blank" : value.slice(0, 80)}</span>,
  },
  { key: "problem", head: "Problem", cell: ({ problem }) => problem },
  { key: "fix", head: "What to do", cell: ({ fix }) => fix },
];
