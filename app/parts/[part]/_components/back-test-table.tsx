import { type Column, Table } from "@/app/_ui/table";
import type { StoredMethodTest, StoredOutlook } from "@/lib/forecast/stored-outlook";
import { capitalised } from "@/lib/format/capitalised";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatShare } from "@/lib/format/format-share";
import { testedWithout } from "../fleet-words";
import { heldWords, lossWords } from "../part-words";

/** How each method would have done on months that it could not see, and which was chosen. */
export function BackTestTable({ outlook }: { readonly outlook: StoredOutlook }) {
  if (outlook.kind !== "forecast") return null;
  const { test, method, reason } = outlook;
  if (test.kind === "too-short")
    return (
      <section className="stack-tight">
        <h2>How sure that is</h2>
        <p>{reason}</p>
      </section>
    );
  const columns: readonly Column<StoredMethodTest>[] = [
    {
      key: "method",
      head: "Method",
      cell: (row) => (
        <span>
          {capitalised(row.name)}
          {row.key === method && <strong> — chosen</strong>}
        </span>
      ),
    },
    { key: "60", head: "In 6-in-10 band", kind: "number", cell: (row) => `${formatShare(row.inside60, 0)} in 100` },
    { key: "90", head: "In 9-in-10 band", kind: "number", cell: (row) => `${formatShare(row.inside90, 0)} in 100` },
    { key: "loss", head: "Loss", kind: "number", cell: (row) => formatDecimal(row.loss, 2) },
  ];
  return (
    <section className="stack-tight">
      <h2>How sure that is</h2>
      <p>{heldWords(outlook)}</p>
      <p>
        {reason} {lossWords(test, method)} {testedWithout(outlook.fleet)}
      </p>
      <details>
        <summary>All {test.methods.length} methods on this part’s own months</summary>
        <Table
          caption={`From ${test.origins} starting points, a month apart, up to six months ahead`}
          columns={columns}
          rows={test.methods.toSorted((a, b) => a.loss - b.loss)}
          rowKey={({ key }) => key}
          narrow="scroll"
        />
        <p className="small soft">
          Loss is that of the quantiles 0.5, 0.8, 0.9, 0.95 and 0.99, over what the part’s own past quantiles cost on
          themselves: less is better, and 1 is as good as knowing the months.
        </p>
      </details>
    </section>
  );
}
