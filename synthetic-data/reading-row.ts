import type { Reading } from "@/lib/domain/reading";
import type { Cells, ReadingColumn } from "./file-columns";

/** A reading as one row of readings.csv. */
export function readingRow(jobNumber: string, reading: Reading): Cells<ReadingColumn> {
  const { outcome } = reading;
  return {
    job_number: jobNumber,
    number: reading.number,
    check: reading.check,
    point_a: reading.pointA,
    point_b: reading.pointB,
    mode: reading.mode,
    outcome: outcome.kind,
    value: outcome.kind === "number" ? outcome.value : undefined,
    unit: outcome.kind === "number" ? outcome.unit : undefined,
    word: outcome.kind === "finding" ? outcome.word : outcome.kind === "code" ? outcome.code : undefined,
    power: reading.power,
    isolated: yesNo(reading.isolated),
    load_connected: yesNo(reading.loadConnected),
    commanded: yesNo(reading.commanded),
    temperature_c: reading.temperatureC,
    sheet_low: reading.sheetLow,
    sheet_high: reading.sheetHigh,
    sheet_reference: reading.sheetReference,
    note: reading.note,
    technician: reading.technician,
    taken_at: reading.takenAt,
  };
}

function yesNo(answer: boolean | undefined): string | undefined {
  return answer === undefined ? undefined : answer ? "yes" : "no";
}
