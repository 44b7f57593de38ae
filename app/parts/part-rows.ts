import type { PartUse } from "@/db/queries/part-use";
import type { Day } from "@/lib/calendar/day";
import { type DemandBand, demandFromHistory } from "@/lib/forecast/demand-from-history";
import { formatCounted } from "@/lib/format/format-count";
import { monthName } from "@/lib/format/format-month";

export interface PartRow {
  readonly partNumber: string;
  readonly description: string;
  readonly lastYear: number;
  readonly nextMonth: string;
  readonly nextQuarter: string;
  readonly held: string;
}

/** Rows by use in the last year, the most used first. */
export function partRows(use: readonly PartUse[], today: Day): PartRow[] {
  return use
    .map((part) => {
      const month = demandFromHistory(part.monthly, 1);
      const quarter = demandFromHistory(part.monthly, 3);
      return {
        partNumber: part.partNumber,
        description: part.description,
        lastYear: part.monthly.slice(-12).reduce((sum, quantity) => sum + quantity, 0),
        nextMonth: month.kind === "forecast" ? bandWords(month.bands, monthName(today)) : "too few months for a range",
        nextQuarter:
          quarter.kind === "forecast" ? bandWords(quarter.bands, "the three months") : "too few months for a range",
        held: month.kind === "forecast" && month.held.tried > 0 ? `${month.held.inside} of ${month.held.tried}` : "–",
      };
    })
    .sort((a, b) => b.lastYear - a.lastYear || a.partNumber.localeCompare(b.partNumber, "en"));
}

export function partsFinding(rows: readonly PartRow[]): string {
  const [most] = rows;
  if (most === undefined) return "No parts used yet";
  return `${formatCounted(rows.length, "part was", "parts were")} used; ${most.description || most.partNumber} most, ${most.lastYear} in the last 12 months`;
}

function bandWords(bands: readonly DemandBand[], when: string): string {
  const likely = bands.find(({ level }) => level === 0.6);
  const wide = bands.find(({ level }) => level === 0.9);
  if (likely === undefined || wide === undefined) throw new RangeError("bands must hold the 60 % and the 90 % range");
  return `most likely ${span(likely)} in ${when}; 9 times in 10 ${wide.low === wide.high ? wide.low : `between ${wide.low} and ${wide.high}`}`;
}

function span({ low, high }: DemandBand): string {
  return low === high ? String(low) : `${low} to ${high}`;
}
