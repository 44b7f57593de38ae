import { parseReadingRow, type ReadingRow } from "@/lib/intake/parse-reading-row";
import { type ReadColumn, type StagedValue, stagedKind } from "../staging/staged-kind";
import { checkJobOfRows, jobDerived, keepJobs, resolveJobOfRows, storedUnderJob } from "./rows-of-jobs";

const value = (
  name: string,
  type: string,
  read: (row: ReadingRow) => StagedValue,
  from = name,
): ReadColumn<ReadingRow> => ({
  name,
  type,
  from,
  use: "value",
  value: read,
});

export const readingsKind = stagedKind<ReadingRow>({
  kind: "readings",
  parse: parseReadingRow,
  columns: [
    { name: "job_number", type: "text", from: "job_number", use: "help", value: (row) => row.jobNumber },
    { name: "number", type: "integer", from: "number", use: "once", value: ({ reading }) => reading.number },
    value("check_key", "text", ({ reading }) => reading.check, "check"),
    value("point_a", "text", ({ reading }) => reading.pointA),
    value("point_b", "text", ({ reading }) => reading.pointB),
    value("mode", "text", ({ reading }) => reading.mode),
    value("outcome", "text", ({ reading }) => reading.outcome.kind),
    value(
      "value",
      "double precision",
      ({ reading: { outcome } }) => (outcome.kind === "number" ? outcome.value : undefined),
      "outcome",
    ),
    value(
      "unit",
      "text",
      ({ reading: { outcome } }) => (outcome.kind === "number" ? outcome.unit : undefined),
      "outcome",
    ),
    value("word", "text", ({ reading: { outcome } }) => wordOf(outcome), "outcome"),
    value("power", "text", ({ reading }) => reading.power),
    value("isolated", "boolean", ({ reading }) => reading.isolated),
    value("load_connected", "boolean", ({ reading }) => reading.loadConnected),
    value("commanded", "boolean", ({ reading }) => reading.commanded),
    value("temperature_c", "double precision", ({ reading }) => reading.temperatureC),
    value("sheet_low", "double precision", ({ reading }) => reading.sheetLow),
    value("sheet_high", "double precision", ({ reading }) => reading.sheetHigh),
    value("sheet_reference", "text", ({ reading }) => reading.sheetReference),
    value("note", "text", ({ reading }) => reading.note),
    value("technician", "text", ({ reading }) => reading.technician),
    value("taken_at", "timestamptz", ({ reading }) => reading.takenAt),
  ],
  derived: jobDerived,
  target: { table: "readings", key: ["unit_id", "job_id", "number"], storedKey: storedUnderJob, onInsert: {} },
  named: { column: "number", noun: "reading" },
  resolve: resolveJobOfRows,
  check: checkJobOfRows,
  finish: keepJobs,
  recounts: "nothing",
});

function wordOf(outcome: ReadingRow["reading"]["outcome"]): string | undefined {
  if (outcome.kind === "finding") return outcome.word;
  return outcome.kind === "code" ? outcome.code : undefined;
}
