import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import { type RateRecord, rateRecord } from "./rate-record";
import type { RateOrder } from "./read-rate-question";
import { sortedGroups } from "./sorted-groups";

/** Aligned plain text for a terminal. */
export function ratesTable(rates: FailureRates, order: RateOrder): string {
  const { level } = rates.question;
  const header = [
    ...rates.question.by,
    "failures",
    "unit-years",
    "per 100 a year",
    `${100 * level} % range`,
    "evidence",
  ];
  const rows = [...sortedGroups(rates.groups, order), rates.fleet].map((group) =>
    cells(group, rateRecord(group, level), rates.question.by.length),
  );
  const widths = header.map((title, column) => Math.max(title.length, ...rows.map((row) => row[column]?.length ?? 0)));
  const text = [header, ...rows].map((row) =>
    row.map((cell, column) => pad(cell, widths[column] ?? 0, column < rates.question.by.length)).join("  "),
  );
  const left = rates.leftOut.map(({ reason, jobs }) => `${jobs} not counted: ${reason}`);
  return [...text, "", ...left, `${rates.unplacedUnits} units carry no exposure`].join("\n");
}

function cells(group: GroupRate, record: RateRecord, groupings: number): string[] {
  const names =
    group.key.length === 0
      ? ["all together", ...Array.from({ length: groupings - 1 }, () => "")]
      : group.key.map((part) => part.name);
  const number = (value: number | null) => (value === null ? "–" : value.toFixed(2));
  const range = record.low === null ? "–" : `${number(record.low)}–${number(record.high)}`;
  return [
    ...names,
    String(record.failures),
    record.unitYears.toFixed(0),
    number(record.ratePer100),
    range,
    record.grade,
  ];
}

function pad(text: string, width: number, left: boolean): string {
  return left ? text.padEnd(width) : text.padStart(width);
}
