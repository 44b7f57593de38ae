import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import type { StoredSignal } from "@/db/queries/signal-list";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatCount } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { type ComparedYear, comparedYears } from "@/lib/signals/compared-years";
import { rateEstimate } from "@/lib/statistics/rate-estimate";
import { signalFileHref, signalLevel } from "../../signal-words";

/** Rates by year of age, these machines and the others of their kind one under the other. */
export function AgeComparison({ signal }: { readonly signal: StoredSignal }) {
  const years = comparedYears(signal.lead.ages);
  const figure = rateRows(
    years.flatMap((year) => [
      { key: `${year.name} own`, label: `${year.name}: these`, estimate: estimateOf(year.own, year.ownYears) },
      {
        key: `${year.name} others`,
        label: `${year.name}: others`,
        estimate: estimateOf(year.others, year.othersYears),
      },
    ]),
    { order: "given", counted: signal.wordKind === "component" ? "failures" : "calls" },
  );
  if (figure.kind === "no-groups") return null;
  return (
    <Figure
      takeaway="By year of age, beside others of their kind"
      csvHref={signalFileHref(signal.key, "ages.csv")}
      note={
        <p>Over the whole record, so that more than the weeks since the onset stand behind it. Exact Poisson ranges.</p>
      }
      table={
        <Table caption="By year of age" columns={columns} rows={years} rowKey={({ name }) => name} narrow="scroll" />
      }
    >
      <DotIntervalRows label="Rates by year of age" figure={figure} />
    </Figure>
  );
}

function estimateOf(events: number, unitYears: number) {
  return rateEstimate({ events, unitYears, level: signalLevel, method: "poisson-exact" });
}

const columns: readonly Column<ComparedYear>[] = [
  { key: "age", head: "Age", cell: ({ name }) => name },
  { key: "own", head: "These: failures", kind: "number", cell: ({ own }) => formatCount(own) },
  { key: "own-years", head: "unit-years", kind: "number", cell: ({ ownYears }) => formatDecimal(ownYears, 0) },
  { key: "others", head: "Others: failures", kind: "number", cell: ({ others }) => formatCount(others) },
  { key: "others-years", head: "unit-years", kind: "number", cell: ({ othersYears }) => formatDecimal(othersYears, 0) },
];
