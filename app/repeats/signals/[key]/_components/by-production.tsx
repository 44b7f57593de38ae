import { DotIntervalRows } from "@/app/_charts/dot-interval-rows";
import { Figure } from "@/app/_ui/figure";
import { type Column, Table } from "@/app/_ui/table";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { rateRows } from "@/lib/figures/rate-rows";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatProbability } from "@/lib/format/format-probability";
import type { ProductionPart, ProductionView } from "@/lib/signals/production-weeks";
import { firstDayOf, lastDayOf } from "@/lib/signals/weeks";
import { observedExpectedEstimate } from "@/lib/statistics/ratio-estimate";
import { signalFileHref, signalLevel } from "../../signal-words";
import type { SignalView } from "../load-signal";

/** Where in production the failures crowd, and how units made before, in and after those weeks do. */
export function ByProduction({ view: { signal, production, made } }: { readonly view: SignalView }) {
  const figure = rateRows(
    production.parts
      .filter(({ expected }) => expected > 0)
      .map((part) => ({
        key: part.which,
        label: partWords(part, production),
        estimate: observedExpectedEstimate({ ...part, level: signalLevel }),
      })),
    { order: "given", against: "what their ages predict" },
  );
  return (
    <section className="stack-tight">
      <h2>By week of production</h2>
      <p>{scanWords(production)}</p>
      {figure.kind === "rows" && (
        <Figure
          takeaway="Before, in and after those weeks"
          csvHref={signalFileHref(signal.key, "production.csv")}
          note={
            <p>
              The weeks were chosen because failures crowd there; the chance above allows for that, these ranges do not.
            </p>
          }
          table={
            <Table
              caption="By weeks of production"
              columns={columnsFor(production)}
              rows={production.parts}
              rowKey={({ which }) => which}
            />
          }
        >
          <DotIntervalRows label="Counted over expected by weeks of production" figure={figure} even={1} />
        </Figure>
      )}
      <p className="small">
        {made.unknownUnits > 0 &&
          `${formatCounted(made.unknownUnits, "unit")} of the model cannot be placed: the day of production is not on file. `}
        {made.monthOnlyUnits > 0 &&
          `${formatCounted(made.monthOnlyUnits, "unit")} stand in the middle week of their month, since only the month is known.`}
      </p>
    </section>
  );
}

function scanWords({ scan, weeks, serials }: ProductionView): string {
  if (scan.kind === "too-few" || weeks === undefined || serials === undefined)
    return `Too few failures (${scan.kind === "too-few" ? scan.failures : 0}) on units with a known week of production to look for weeks that stand out.`;
  const span = weekWords(weeks);
  const luck = `luck alone crowds failures so much somewhere ${formatProbability(scan.chance)} of the time`;
  if (scan.chance > 0.05) return `No weeks of production stand out: even in the most crowded ones, ${span}, ${luck}.`;
  return `Failures crowd in units made ${span}: ${scan.failures} of ${scan.total}, where ${formatDecimal(scan.share * scan.total, 1)} would be their share; ${luck}. Serials ${serials.from} to ${serials.to}.`;
}

function weekWords({ from, to }: { readonly from: number; readonly to: number }): string {
  return `${formatPlainDay(dayFromNumber(firstDayOf(from)))} to ${formatPlainDay(dayFromNumber(lastDayOf(to)))}`;
}

function partWords({ which }: ProductionPart, { weeks }: ProductionView): string {
  if (weeks === undefined) return which;
  return { before: "Made before", in: `Made ${weekWords(weeks)}`, after: "Made after" }[which];
}

function columnsFor(production: ProductionView): readonly Column<ProductionPart>[] {
  return [
    { key: "made", head: "Made", cell: (part) => partWords(part, production) },
    { key: "units", head: "Units", kind: "number", cell: ({ units }) => units },
    { key: "counted", head: "Counted", kind: "number", cell: ({ observed }) => observed },
    { key: "expected", head: "Expected", kind: "number", cell: ({ expected }) => formatDecimal(expected, 1) },
  ];
}
