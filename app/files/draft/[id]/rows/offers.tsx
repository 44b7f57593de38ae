import { Button } from "@/app/_ui/button";
import { type Column, Table } from "@/app/_ui/table";
import type { LoadReport, OfferedCell } from "@/db/writes/load-result";
import { formatCounted } from "@/lib/format/format-count";
import { alikeProblems, rowsInWords } from "../../../_components/alike-problems";
import { correctCells } from "./actions";

interface Props {
  readonly draftId: string;
  readonly report: LoadReport;
}

interface OfferedRows extends Omit<OfferedCell, "row"> {
  readonly rows: readonly number[];
}

/** Numbers that come close to some on file: taken as they stand, unless somebody chooses one of these. */
export function Offers({ draftId, report: { offers = [] } }: Props) {
  if (offers.length === 0) return null;
  const groups = alikeOffers(offers);
  const columns: readonly Column<OfferedRows>[] = [
    { key: "row", head: "Row", cell: ({ rows }) => rowsInWords(rows) },
    { key: "column", head: "Column", wideOnly: true, cell: ({ column }) => column },
    { key: "value", head: "Stands there", cell: ({ value }) => <span className="figures">{value}</span> },
    { key: "note", head: "Close to it", cell: ({ note }) => note },
    { key: "take", head: "Take instead", cell: (group) => <Choices draftId={draftId} group={group} /> },
  ];
  return (
    <section className="stack-tight">
      <h2>Perhaps another number is meant: {formatCounted(groups.length, "value")}</h2>
      <Table
        caption="Numbers that come close to some on file"
        captionHidden
        columns={columns}
        rows={groups}
        rowKey={({ column, value }) => `${column} ${value}`}
      />
    </section>
  );
}

function Choices({
  draftId,
  group: { column, rows, offers },
}: {
  readonly draftId: string;
  readonly group: OfferedRows;
}) {
  return (
    <form action={correctCells} className="cluster">
      <input type="hidden" name="draft" value={draftId} />
      <input type="hidden" name="column" value={column} />
      <input type="hidden" name="rows" value={rows.join(",")} />
      {offers.map((offer) => (
        <Button key={offer} weight="plain" name="text" value={offer}>
          {offer}
        </Button>
      ))}
    </form>
  );
}

/** The rows on which the same stands in the same column. */
function alikeOffers(offers: readonly OfferedCell[]): readonly OfferedRows[] {
  const groups = alikeProblems(offers.map(({ note, ...cell }) => ({ ...cell, problem: note, fix: "" })));
  return groups.map(({ column, value, problem, rows }) => ({
    column,
    value,
    note: problem,
    rows,
    offers: offers.find((offer) => offer.column === column && offer.value === value)?.offers ?? [],
  }));
}
