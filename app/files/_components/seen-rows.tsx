import { type Column, Table } from "@/app/_ui/table";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import type { SeenRow, SeenTable } from "../_draft/seen-table";
import styles from "./seen-rows.module.css";

interface Props {
  readonly seen: SeenTable;
}

/** Rows as they were split, under the header as it stands. */
export function SeenRows({ seen }: Props) {
  const { shown, rows, header } = seen;
  const caption =
    shown.length === rows
      ? `All ${formatCounted(rows, "row")}`
      : `${formatCounted(shown.length, "row")} of ${formatCount(rows)}: the first, some from all over, and the last`;
  return (
    <Table
      caption={caption}
      columns={[
        { key: "row", head: "Row", kind: "number", cell: ({ row }) => row },
        ...header.map(
          (name, place): Column<SeenRow> => ({
            key: String(place),
            head: name.trim() === "" ? `column ${place + 1}, no name` : name,
            cell: (row) => <SeenCell row={row} place={place} />,
          }),
        ),
        ...(shown.some(({ cells }) => cells.length > header.length) ? [beyond(header.length)] : []),
      ]}
      rows={shown}
      rowKey={({ row }) => String(row)}
      narrow="scroll"
    />
  );
}

function beyond(columns: number): Column<SeenRow> {
  return { key: "beyond", head: "beyond the header", cell: ({ cells }) => cells.slice(columns).join(" · ") };
}

function SeenCell({ row, place }: { readonly row: SeenRow; readonly place: number }) {
  const mark = row.marks.find(([at]) => at === place)?.[1];
  const text = row.cells[place] ?? "";
  if (mark === undefined) return <span className={styles.cell}>{text}</span>;
  const shown = mark.kind === "day" ? mark.shown : undefined;
  return (
    <span className={styles.cell}>
      {text === "" ? mark.stored : text}
      {text !== mark.stored && <span className={styles.stored}>stores {mark.stored}</span>}
      {shown !== undefined && shown !== text && <span className={styles.stored}>shows {shown}</span>}
    </span>
  );
}
