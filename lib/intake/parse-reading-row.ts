// Readings and findings of a job, one a row.
import { z } from "zod";
import { meterModes, powerStates, type Reading, type ReadingOutcome } from "@/lib/domain/reading";
import { optional, required } from "./cell";
import { instantCell } from "./cell-days";
import { decimalNumber, wholeNumber, yesNo } from "./cell-numbers";
import { catalogueKey, identifier, note, oneOf, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import type { CellProblem, Parsed } from "./parsed";
import { type Cells, readRow, unknownWords } from "./row-problems";

const outcomes = [
  "number",
  "open",
  "short",
  "no_reading",
  "finding",
  "code",
] as const satisfies readonly ReadingOutcome["kind"][];

export const readingRow = z.object({
  job_number: required(identifier, "Number of a job that is on file."),
  number: required(wholeNumber({ least: 1 }), "Number of the reading on the job, from 1, in the order taken."),
  check: required(catalogueKey, "Key of the check."),
  point_a: optional(shortText, "First test point."),
  point_b: optional(shortText, "Second test point."),
  mode: required(oneOf(meterModes), "What the meter was set to."),
  outcome: required(
    oneOf(outcomes),
    "What kind of result it gave: a number, open (OL), short, nothing, a finding or a fault code.",
  ),
  value: optional(decimalNumber, "The number, where the outcome is a number."),
  unit: optional(shortText, "Unit of the number."),
  word: optional(shortText, "The finding's word, or the fault code."),
  power: required(oneOf(powerStates), "State of the machine while it was taken; live work is for qualified persons."),
  isolated: optional(yesNo, "Whether the part was disconnected while measured."),
  load_connected: optional(yesNo, "Whether the load was connected to the output that was measured."),
  commanded: optional(yesNo, "Whether the diagnostic cycle had called for the output."),
  temperature_c: optional(decimalNumber, "Temperature at the sensor in degrees Celsius."),
  sheet_low: optional(decimalNumber, "Lowest good value on the model's sheet."),
  sheet_high: optional(decimalNumber, "Highest good value on the model's sheet."),
  sheet_reference: optional(shortText, "Which sheet, which page."),
  note: optional(note, "Whatever else was seen."),
  technician: optional(shortText, "Who took it."),
  taken_at: optional(instantCell, "When, with the offset from UTC."),
});

export interface ReadingRow {
  readonly jobNumber: string;
  readonly reading: Reading;
}

type Row = z.output<typeof readingRow>;

/** One row of readings.csv in; one reading, or every problem of the row, out. */
export function parseReadingRow(cells: Cells, setting: IntakeSetting): Parsed<ReadingRow> {
  return readRow(readingRow, cells, setting, {
    words: unknownWords(cells, [{ column: "check", words: setting.catalogue.checks, noun: "check" }]),
    contradictions: (row) => [...againstOutcome(row), ...againstCheck(row, setting)],
    value: (row) => ({ jobNumber: row.job_number, reading: readingOf(row) }),
  });
}

function againstOutcome(row: Row): readonly CellProblem[] {
  const problems: CellProblem[] = [];
  const isNumber = row.outcome === "number";
  const hasWord = row.outcome === "finding" || row.outcome === "code";
  if (isNumber && row.value === undefined)
    problems.push({
      column: "value",
      value: "",
      problem: "is blank although the outcome is a number",
      fix: "Write the number, or the outcome open, short or no_reading.",
    });
  if (isNumber && row.unit === undefined)
    problems.push({
      column: "unit",
      value: "",
      problem: "is blank although the outcome is a number",
      fix: "Write the unit, such as ohm or V.",
    });
  if (!isNumber && row.value !== undefined)
    problems.push({
      column: "value",
      value: String(row.value),
      problem: `is filled in although the outcome is ${row.outcome}`,
      fix: "Write the outcome number, or leave the value blank.",
    });
  if (hasWord && row.word === undefined)
    problems.push({
      column: "word",
      value: "",
      problem: `is blank although the outcome is a ${row.outcome}`,
      fix: "Write the finding's word, or the fault code.",
    });
  if (!hasWord && row.word !== undefined)
    problems.push({
      column: "word",
      value: row.word,
      problem: `is filled in although the outcome is ${row.outcome}`,
      fix: "Write the outcome finding or code, or move the word to the note.",
    });
  if (row.sheet_low !== undefined && row.sheet_high !== undefined && row.sheet_low > row.sheet_high)
    problems.push({
      column: "sheet_high",
      value: String(row.sheet_high),
      problem: `is below sheet_low, which is ${row.sheet_low}`,
      fix: "Correct whichever of the two is wrong.",
    });
  return problems;
}

function againstCheck(row: Row, { catalogue }: IntakeSetting): readonly CellProblem[] {
  const check = catalogue.checks.get(row.check);
  if (check === undefined) return [];
  const problems: CellProblem[] = [];
  if (!check.modes.includes(row.mode))
    problems.push({
      column: "mode",
      value: row.mode,
      problem: `does not belong to the check ${row.check}`,
      fix: `Write one of: ${check.modes.join(", ")}.`,
    });
  if (row.outcome === "finding" && row.word !== undefined && !check.findings.includes(row.word)) {
    const fix =
      check.findings.length === 0
        ? "This check has no findings: write its number, open, short or no_reading."
        : `Write one of: ${check.findings.join(", ")}.`;
    problems.push({ column: "word", value: row.word, problem: `is not a finding of the check ${row.check}`, fix });
  }
  return problems;
}

function readingOf(row: Row): Reading {
  return {
    number: row.number,
    check: row.check,
    pointA: row.point_a,
    pointB: row.point_b,
    mode: row.mode,
    outcome: outcomeOf(row),
    power: row.power,
    isolated: row.isolated,
    loadConnected: row.load_connected,
    commanded: row.commanded,
    temperatureC: row.temperature_c,
    sheetLow: row.sheet_low,
    sheetHigh: row.sheet_high,
    sheetReference: row.sheet_reference,
    note: row.note,
    technician: row.technician,
    takenAt: row.taken_at,
  };
}

/** The contradictions have been looked at, so what the outcome needs is there. */
function outcomeOf(row: Row): ReadingOutcome {
  switch (row.outcome) {
    case "number":
      return { kind: "number", value: row.value ?? 0, unit: row.unit ?? "" };
    case "finding":
      return { kind: "finding", word: row.word ?? "" };
    case "code":
      return { kind: "code", code: row.word ?? "" };
    default:
      return { kind: row.outcome };
  }
}
