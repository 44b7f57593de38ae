import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { HeldPart } from "@/db/queries/held-parts";
import type { Day } from "@/lib/calendar/day";
import { formatPlainDay } from "@/lib/format/format-day";
import { holdInWords } from "./hold-words";

interface Props {
  readonly caption: string;
  readonly head: string;
  readonly parts: readonly HeldPart[];
  readonly today: Day;
}

/** Failed parts with the claims they belong to; nothing where there are none. */
export function PartsTable({ caption, head, parts, today }: Props) {
  if (parts.length === 0) return null;
  return (
    <Table
      caption={`${caption} (${parts.length})`}
      columns={columns(head, today)}
      rows={parts}
      rowKey={({ claimNumber, line }) => `${claimNumber} ${line}`}
    />
  );
}

function columns(head: string, today: Day): Column<HeldPart>[] {
  return [
    {
      key: "claim",
      head: "Claim",
      cell: ({ claimNumber }) => <Tag href={`/claims/${encodeURIComponent(claimNumber)}`}>{claimNumber}</Tag>,
    },
    {
      key: "part",
      head: "Part",
      cell: ({ partNumber, description, quantity }) =>
        `${quantity === 1 ? "" : `${quantity} × `}${description}${partNumber === undefined ? "" : `, ${partNumber}`}`,
    },
    { key: "payer", head: "Payer", wideOnly: true, cell: ({ payer }) => payer },
    {
      key: "unit",
      head: "Model and serial",
      wideOnly: true,
      cell: ({ model, serial }) => `${model}, ${serial ?? "no serial"}`,
    },
    { key: "job", head: "Completed", wideOnly: true, cell: ({ completedOn }) => formatPlainDay(completedOn) },
    { key: "until", head, cell: ({ hold }) => holdInWords(hold, today) },
  ];
}
