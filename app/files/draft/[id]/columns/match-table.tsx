import { type Status, StatusWord } from "@/app/_ui/status-word";
import { type Column, Table } from "@/app/_ui/table";
import type { TargetField } from "@/lib/intake/matching/target-fields";
import { TargetSelect } from "../../../_components/target-select";
import styles from "./match.module.css";

/** One column of the file, what it seems to be, and why. */
export interface ColumnLine {
  readonly place: number;
  readonly header: string;
  readonly samples: readonly string[];
  readonly target: string | undefined;
  readonly sureness: Sureness;
  readonly reason: string;
}

const surenesses = {
  sure: { word: "Sure", status: "fine" },
  likely: { word: "Likely", status: "watch" },
  guess: { word: "Guess", status: "note" },
  "not used": { word: "Not used", status: "note" },
  chosen: { word: "Chosen", status: "fine" },
} as const satisfies Record<string, { word: string; status: Status }>;
export type Sureness = keyof typeof surenesses;

interface Props {
  readonly lines: readonly ColumnLine[];
  readonly fields: readonly TargetField[];
}

/** One row for each column of the file, in its order. */
export function MatchTable({ lines, fields }: Props) {
  const columns: readonly Column<ColumnLine>[] = [
    {
      key: "header",
      head: "Column in the file",
      cell: ({ header, place }) => (
        <span className={styles.header}>{header.trim() || `column ${place + 1}, no name`}</span>
      ),
    },
    { key: "samples", head: "Holds", cell: ({ samples }) => <Samples samples={samples} /> },
    {
      key: "target",
      head: "Goes to",
      cell: ({ place, header, target }) => (
        <TargetSelect name={`column-${place}`} label={`${header} goes to`} fields={fields} value={target} />
      ),
    },
    {
      key: "sureness",
      head: "How sure",
      cell: ({ sureness, reason }) => (
        <span className={styles.why}>
          <StatusWord status={surenesses[sureness].status}>{surenesses[sureness].word}</StatusWord>
          <span className="small soft">{reason}</span>
        </span>
      ),
    },
  ];
  return (
    <Table
      caption="Columns of the file"
      captionHidden
      columns={columns}
      rows={lines}
      rowKey={({ place }) => String(place)}
    />
  );
}

function Samples({ samples }: { readonly samples: readonly string[] }) {
  if (samples.length === 0) return <span className="soft">nothing</span>;
  return (
    <ul className={styles.samples}>
      {samples.map((sample) => (
        <li key={sample}>{sample}</li>
      ))}
    </ul>
  );
}
