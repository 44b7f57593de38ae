import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import type { CellFunnel, FunnelCell } from "@/lib/signals/cell-funnel";
import { cellKeyText } from "@/lib/signals/signal-record";
import { CellFunnelChart } from "./cell-funnel-chart";
import { limitsWords } from "./limits-words";
import { funnelName } from "./signal-words";

interface Props {
  readonly funnel: CellFunnel;
  readonly as: string | undefined;
}

/** How many groups were looked at, how many luck alone would put beyond the limits, and which lie there. */
export function SignalFunnel({ funnel, as }: Props) {
  const { groups, beyond, spread, drawn } = funnel;
  if (groups === 0) return null;
  return (
    <Figure
      takeaway={`${formatCounted(groups, "group")} looked at, each component of each model over the last four whole quarters: ${beyond.outer.counted} above the solid line, where luck alone puts about ${formatDecimal(beyond.outer.byLuck, 1)}; ${beyond.inner.counted} above the dashed one, where luck puts about ${formatDecimal(beyond.inner.byLuck, 1)}`}
      csvHref={`/repeats/signals/signals.csv?of=funnel${as === undefined ? "" : `&as=${as}`}`}
      note={
        <>
          <p>
            Along: failures expected by what units of the same ages do elsewhere. Up: counted over expected. Dashed:
            limits that 95 in 100 groups keep by chance; solid: 99.8 in 100.{" "}
            {spread > 0 &&
              `Groups of this company differ by ${formatDecimal(100 * spread, 0)} in 100 although nothing is wrong, so the limits are wider by as much.`}
          </p>
          <p>
            This looks at one year as a whole; the list above follows each group from week to week since its own onset,
            so the two need not name the same groups.
            {drawn.length < groups &&
              ` Drawn are those above the dashed line and the largest of the others, ${formatCount(drawn.length)} in all.`}
          </p>
        </>
      }
      table={
        <Table
          caption="Groups over the last four whole quarters"
          columns={columnsFor(spread)}
          rows={drawn}
          rowKey={({ key }) => cellKeyText(key)}
          narrow="scroll"
        />
      }
    >
      <CellFunnelChart label="Counted over expected by expected failures" cells={drawn} spread={spread} />
    </Figure>
  );
}

function columnsFor(spread: number): readonly Column<FunnelCell>[] {
  return [
    { key: "name", head: "Group", cell: ({ key }) => funnelName(key) },
    { key: "counted", head: "Counted", kind: "number", cell: ({ observed }) => formatCount(observed) },
    { key: "expected", head: "Expected", kind: "number", cell: ({ expected }) => formatDecimal(expected, 1) },
    { key: "limits", head: "Against the limits", cell: (cell) => limitsWords(cell, spread) },
  ];
}
