// Jobs as another program sends them: one JSON document in our column names, each job with its part lines and readings.
import { columnsOf } from "../file-kinds";
import { type CellProblem, shownValue } from "../parsed";
import type { Cells } from "../row-problems";

/** What is wrong at one place of a document. */
export interface PointedProblem extends Omit<CellProblem, "column"> {
  /** JSON Pointer (RFC 6901) from the root: /jobs/3/part_lines/0/quantity */
  readonly pointer: string;
}

export type RecordKind = "jobs" | "part-lines" | "readings";

/** One row of ours, with its place in the document. */
export interface JobRecord {
  readonly kind: RecordKind;
  readonly pointer: string;
  readonly cells: Cells;
}

export type JobRecords =
  | { readonly ok: true; readonly records: readonly JobRecord[] }
  | { readonly ok: false; readonly problems: readonly PointedProblem[] };

/** Lists that stand inside a job; `numbered` is the column that counts them where the sender does not. */
export const listsOfJobs = {
  part_lines: { kind: "part-lines", numbered: "line" },
  readings: { kind: "readings", numbered: "number" },
} as const satisfies Record<string, { kind: RecordKind; numbered: string }>;

/** The document in; its rows, still to be read by the parsers of their kinds, or every place that is no row, out. */
export function readJobRecords(document: unknown): JobRecords {
  const problems: PointedProblem[] = [];
  const refuse = (problem: PointedProblem) => void problems.push(problem);
  if (!isObject(document) || !Array.isArray(document.jobs))
    return {
      ok: false,
      problems: [
        {
          pointer: isObject(document) ? "/jobs" : "",
          value: "",
          problem: "is no list of jobs",
          fix: 'Send {"jobs": [ … ]}.',
        },
      ],
    };
  for (const key of Object.keys(document)) if (key !== "jobs") refuse(unknownName(`/${escaped(key)}`, key, ["jobs"]));
  if (document.jobs.length === 0)
    refuse({ pointer: "/jobs", value: "", problem: "holds no job", fix: "Send at least one." });
  const records = document.jobs.flatMap((job: unknown, index) => recordsOf(job, `/jobs/${index}`, refuse));
  return problems.length === 0 ? { ok: true, records } : { ok: false, problems };
}

type Refuse = (problem: PointedProblem) => void;

function recordsOf(job: unknown, pointer: string, refuse: Refuse): readonly JobRecord[] {
  if (!isObject(job)) {
    refuse({ pointer, value: shown(job), problem: "is no job", fix: "Write an object with the columns of a job." });
    return [];
  }
  const { part_lines, readings, ...own } = job;
  const cells = cellsOf(own, { pointer, kind: "jobs", also: Object.keys(listsOfJobs) }, refuse);
  const inner = Object.entries({ part_lines, readings }).flatMap(
    ([list, entries]) =>
      entries === undefined || entries === null
        ? []
        : listOf(list as keyof typeof listsOfJobs, entries, { pointer, job: cells }, refuse), // the names of the object one line above
  );
  return [{ kind: "jobs", pointer, cells }, ...inner];
}

function listOf(
  list: keyof typeof listsOfJobs,
  entries: unknown,
  parent: { pointer: string; job: Cells },
  refuse: Refuse,
): readonly JobRecord[] {
  const { kind, numbered } = listsOfJobs[list];
  const pointer = `${parent.pointer}/${list}`;
  if (!Array.isArray(entries)) {
    refuse({ pointer, value: shown(entries), problem: "is no list", fix: "Write a list, or leave it out." });
    return [];
  }
  const number = parent.job.job_number ?? "";
  return entries.flatMap((entry: unknown, index) => {
    const place = `${pointer}/${index}`;
    if (!isObject(entry)) {
      refuse({
        pointer: place,
        value: shown(entry),
        problem: "is no row",
        fix: `Write an object with the columns of ${kind}.`,
      });
      return [];
    }
    const cells = cellsOf(entry, { pointer: place, kind, also: [] }, refuse);
    const stated = cells.job_number ?? "";
    if (stated !== "" && stated.trim() !== number.trim())
      refuse({
        pointer: `${place}/job_number`,
        value: stated,
        problem: `is not the number of its job, ${number}`,
        fix: "Leave it out: it stands in its job.",
      });
    return [{ kind, pointer: place, cells: { [numbered]: String(index + 1), ...cells, job_number: number } }];
  });
}

interface Place {
  readonly pointer: string;
  readonly kind: RecordKind;
  /** Names that may stand here without being columns. */
  readonly also: readonly string[];
}

function cellsOf(row: Readonly<Record<string, unknown>>, { pointer, kind, also }: Place, refuse: Refuse): Cells {
  const known = columnsOf(kind);
  const cells: Record<string, string> = {};
  for (const [name, value] of Object.entries(row)) {
    const place = `${pointer}/${escaped(name)}`;
    if (!known.includes(name)) {
      refuse(unknownName(place, name, [...known, ...also]));
      continue;
    }
    const text = textOf(value);
    if (typeof text === "string") cells[name] = text;
    else refuse({ pointer: place, value: shown(value), ...text });
  }
  return cells;
}

/** JSON numbers keep fifteen digits; a serial number that lost some would be another machine's. */
function textOf(value: unknown): string | Pick<CellProblem, "problem" | "fix"> {
  if (typeof value === "string") return value;
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value !== "number")
    return { problem: "is a list or an object", fix: "Write a text, a number, true, false or null." };
  if (Number.isInteger(value) ? Number.isSafeInteger(value) : String(value).replaceAll(/\D/g, "").length <= 15)
    return String(value);
  return { problem: "has more digits than a JSON number keeps", fix: "Write it as text, in quotation marks." };
}

function unknownName(pointer: string, name: string, known: readonly string[]): PointedProblem {
  return {
    pointer,
    value: shownValue(name),
    problem: "is not one of our names",
    fix: `Remove it, or use one of: ${known.join(", ")}.`,
  };
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function escaped(name: string): string {
  return name.replaceAll("~", "~0").replaceAll("/", "~1");
}

function shown(value: unknown): string {
  return shownValue(JSON.stringify(value) ?? "");
}
