import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { HeldPart } from "@/db/queries/held-parts";
import type { Day } from "@/lib/calendar/day";
import { partFates } from "@/lib/claims/recovery/part-fate";
import { formatPlainDay } from "@/lib/format/format-day";
import { ChooseRow } from "../../_components/choose-row";
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
      cell: ({ claimNumber, line, description }) => (
        <span className="nowrap">
          <ChooseRow value={`${claimNumber} ${line}`} label={`${description} of claim ${claimNumber}`} />
          <Tag href={`/claims/${encodeURIComponent(claimNumber)}`}>{claimNumber}</Tag>
        </span>
      ),
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
    { key: "until", head, cell: (part) => placeInWords(part, today) },
  ];
}

function placeInWords({ hold, gone }: HeldPart, today: Day): string {
  if (gone === undefined) return holdInWords(hold, today);
  const { fate, on, tag, by, reason } = gone;
  const told = [
    `${partFates[fate]} on ${formatPlainDay(on)}`,
    ...(tag === "" ? [] : [`tag ${tag}`]),
    `entered by ${by}`,
  ];
  return `${told.join(", ")}${reason === "" ? "" : `: ${reason}`}`;
}
