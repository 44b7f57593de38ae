import { copyInto } from "@/db/copy-into";
import type { Cells } from "@/lib/intake/row-problems";
import type { LoadWatch } from "../load-result";
import { rowOf } from "../staging/source-rows";
import { type SourceRow, type Stage, type StageResult, stagedRow } from "../staging/stage-rows";
import type { Staged } from "../staging/staged-kind";
import { binaryValue } from "./binary-value";
import { copySideBySide } from "./copy-side-by-side";
import { plainPlan } from "./plain-plan";
import { PlainRows } from "./plain-rows";
import { cellText, NotPlain, type ScannedRecord, scanFile } from "./record-scanner";

export interface PlainFile {
  readonly path: string;
  readonly delimiter: "," | ";" | "\t";
  /** Of ours, in the file's order. */
  readonly columns: readonly string[];
  readonly bytes: number;
}

interface PlainResult extends StageResult {
  /** How many rows needed no parser. */
  readonly plainRows: number;
  readonly readCells: NonNullable<Staged["readCells"]>;
}

/** Rows written without the parser are compared with what the parser makes of them: the first ones, and one in so many. */
const comparedFirst = 20;
const comparedEvery = 10_000;
/** Fewer are not worth a second connection. */
const manyBytes = 16_000_000;

/**
 * Stages a file in our own columns. Rows that plainly need no parser are written byte by byte, without their cells,
 * which can be read again; the others go through the parser, so that every row means what it means on the ordinary way
 * and is explained in the same words.
 * @returns undefined where the file is not of that sort, or nothing is known of its kind; nothing is staged then
 */
export async function stagePlain(stage: Stage & LoadWatch, file: PlainFile): Promise<PlainResult | undefined> {
  const reader = new PlainReader(stage, file);
  const columns = ["row", "cells", "problems", "readable", ...stage.kind.columns.map(({ name }) => name)];
  try {
    const target = { table: stage.table, columns, format: "binary" } as const;
    if (file.bytes < manyBytes) await copyInto(target, reader.chunks(), stage);
    else await copySideBySide(target, reader.chunks(), stage);
    return {
      rows: reader.rows,
      plainRows: reader.written,
      problem: undefined,
      readCells: (wanted, take) => readCells(file, wanted, take),
    };
  } catch (error) {
    if (error instanceof NotPlain) return undefined;
    throw error;
  }
}

/** A row as the ordinary reader would give it. */
function sourceRow(record: ScannedRecord, columns: readonly string[]): SourceRow {
  return rowOf(
    record.row,
    Array.from({ length: record.count }, (_, cell) => cellText(record, cell)),
    columns,
  );
}

/** A row for the parser, and where it was written without it, the fields that it must come to. */
interface Asked {
  readonly source: SourceRow;
  readonly written: Buffer | undefined;
}

class PlainReader {
  rows = 0;
  written = 0;
  readonly #stage: Stage & LoadWatch;
  readonly #file: PlainFile;
  readonly #types: readonly string[];
  #rows: PlainRows | undefined;
  #asked: Asked[] = [];

  constructor(stage: Stage & LoadWatch, file: PlainFile) {
    this.#stage = stage;
    this.#file = file;
    this.#types = ["integer", "jsonb", "jsonb", "boolean", ...stage.kind.columns.map(({ type }) => type)];
  }

  /** Each of whole rows. */
  async *chunks(): AsyncGenerator<Buffer> {
    for await (const _ of scanFile(this.#file, (record) => this.#take(record))) {
      await this.#answer();
      yield* this.#rows?.take() ?? [];
      this.#stage.signal?.throwIfAborted();
      this.#stage.onProgress?.(this.rows, "reading");
    }
  }

  #take(record: ScannedRecord): void {
    if (record.row === 1 || isBlank(record)) return;
    this.rows++;
    if (this.#rows?.write(record) !== true) {
      this.#asked.push({ source: sourceRow(record, this.#file.columns), written: undefined });
      return;
    }
    this.written++;
    if (this.written > comparedFirst && this.written % comparedEvery !== 0) return;
    this.#asked.push({ source: sourceRow(record, this.#file.columns), written: this.#rows.last() });
  }

  async #answer(): Promise<void> {
    for (const { source, written } of this.#asked) {
      this.#rows ??= await this.#open(source);
      const values = await stagedRow(this.#stage, source);
      const fields = values.map((value, column) => binaryValue(this.#types[column] ?? "text", value));
      if (written === undefined) this.#rows.add(fields);
      else if (!written.equals(withoutCells(fields))) throw new NotPlain("a row that the parser reads otherwise");
    }
    this.#asked = [];
  }

  /** The first row says what blank cells stand for; rows of the same chunk have gone through the parser. */
  async #open(sample: SourceRow): Promise<PlainRows> {
    const { kind, setting } = this.#stage;
    const plan = await plainPlan(kind, setting, { columns: this.#file.columns, sample: sample.cells });
    if (plan === undefined) throw new NotPlain("a kind, or a first row, of which nothing is known");
    return new PlainRows(plan);
  }
}

function withoutCells([row = Buffer.alloc(0), , ...others]: readonly Buffer[]): Buffer {
  return Buffer.concat([row, binaryValue("jsonb", null), ...others]);
}

function isBlank(record: ScannedRecord): boolean {
  for (let cell = 0; cell < record.count; cell++) {
    if (record.starts[cell] !== record.ends[cell] && cellText(record, cell).trim() !== "") return false;
  }
  return true;
}

/** The cells of some rows of a file that was staged this way, one after the other. */
export async function readCells(
  file: PlainFile,
  wanted: ReadonlySet<number>,
  take: (row: number, cells: Cells) => Promise<void>,
): Promise<void> {
  let found: SourceRow[] = [];
  const keep = (record: ScannedRecord) => {
    if (wanted.has(record.row)) found.push(sourceRow(record, file.columns));
  };
  for await (const _ of scanFile(file, keep)) {
    for (const { row, cells } of found) await take(row, cells);
    found = [];
  }
}
