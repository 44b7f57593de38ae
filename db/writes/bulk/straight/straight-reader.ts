import type { CellProblem } from "@/lib/intake/parsed";
import type { Cells } from "@/lib/intake/row-problems";
import type { LoadWatch } from "../../load-result";
import type { SourceRow, Stage } from "../../staging/stage-rows";
import { isPlain } from "../plain-lines";
import { type PlainPlan, plainPlan } from "../plain-plan";
import { NotPlain, type ScannedRecord, scanFile } from "../record-scanner";
import { comparedEvery, comparedFirst, isBlank, type PlainFile, sourceRow } from "../stage-plain";
import { BinaryRow, putWhole } from "./binary-row";
import { NotStraight } from "./not-straight";

/** What makes of a row its keys, and keeps what is told by all rows together. */
export interface Gatherer {
  /** @returns how many bytes of keys were written to `out` */
  readonly keys: (row: BinaryRow, number: number, out: Buffer, at: number) => number;
  /** Rows have keys of so many columns. */
  readonly keyColumns: number;
}

export interface AsideRow {
  readonly row: number;
  readonly cells: Cells;
  readonly problems: readonly CellProblem[];
}

const chunkBytes = 1 << 19;
/** More rows that cannot be read are not kept in memory. */
const mostAside = 2_000;
const header = Buffer.from("PGCOPY\n\xff\r\n\0\0\0\0\0\0\0\0\0", "latin1");
const trailer = Buffer.from([0xff, 0xff]);

/** A file in our own columns as COPY's binary rows of the table that they go to, and what else is to be told of them. */
export class StraightReader {
  rows = 0;
  readonly aside: AsideRow[] = [];
  readonly #stage: Stage & LoadWatch;
  readonly #file: PlainFile;
  readonly #gatherer: Gatherer;
  readonly #row: BinaryRow;
  readonly #other: BinaryRow;
  readonly #batch = Buffer.alloc(12);
  readonly #fields: number;
  #plan: PlainPlan | undefined;
  #out = Buffer.allocUnsafe(chunkBytes);
  #at = 0;
  #full: Buffer[] = [header];
  #plain = 0;
  #asked: { readonly source: SourceRow; readonly written: Buffer | undefined }[] = [];

  constructor(
    stage: Stage & LoadWatch,
    file: PlainFile,
    { gatherer, batchId }: { gatherer: Gatherer; batchId: number },
  ) {
    this.#stage = stage;
    this.#file = file;
    this.#gatherer = gatherer;
    this.#row = new BinaryRow(stage.kind.columns);
    this.#other = new BinaryRow(stage.kind.columns);
    this.#fields = gatherer.keyColumns + stage.kind.columns.filter(({ use }) => use !== "help").length + 1;
    this.#batch.writeInt32BE(8, 0);
    this.#batch.writeBigInt64BE(BigInt(batchId), 4);
  }

  /** @throws NotStraight, NotPlain */
  async *chunks(): AsyncGenerator<Buffer> {
    for await (const _ of scanFile(this.#file, (record) => this.#take(record))) {
      await this.#answer();
      yield* this.#full;
      this.#full = [];
      this.#stage.signal?.throwIfAborted();
      this.#stage.onProgress?.(this.rows, "reading");
    }
    yield this.#out.subarray(0, this.#at);
    yield trailer;
  }

  #take(record: ScannedRecord): void {
    if (record.row === 1 || isBlank(record)) return;
    this.rows++;
    const plan = this.#plan;
    if (plan === undefined || !isPlain(plan, record)) {
      this.#asked.push({ source: sourceRow(record, this.#file.columns), written: undefined });
      return;
    }
    this.#row.fromRecord(record, plan);
    this.#write(record.row);
    this.#plain++;
    if (this.#plain > comparedFirst && this.#plain % comparedEvery !== 0) return;
    const written = Buffer.from(this.#row.bytes.subarray(0, this.#row.end));
    this.#asked.push({ source: sourceRow(record, this.#file.columns), written });
  }

  #write(number: number): void {
    const row = this.#row;
    const length = row.end - row.stored;
    if (this.#out.length - this.#at < length + 256) this.#next(length + 256);
    const out = this.#out;
    out[this.#at] = this.#fields >>> 8;
    out[this.#at + 1] = this.#fields;
    let at = this.#at + 2;
    at += this.#gatherer.keys(row, number, out, at);
    row.bytes.copy(out, at, row.stored, row.end);
    at += length;
    this.#batch.copy(out, at);
    this.#at = at + this.#batch.length;
  }

  #next(least: number): void {
    this.#full.push(this.#out.subarray(0, this.#at));
    this.#out = Buffer.allocUnsafe(Math.max(chunkBytes, least));
    this.#at = 0;
  }

  /** Rows of which somebody must be asked go to the parser, and the first of them says what blank cells stand for. */
  async #answer(): Promise<void> {
    const { kind, setting, folder } = this.#stage;
    for (const { source, written } of this.#asked) {
      const read =
        source.problem === undefined
          ? await kind.read(source.cells, setting, folder)
          : ({ ok: false, problems: [source.problem] } as const);
      if (read.ok) (written === undefined ? this.#row : this.#other).fromValues(read.value);
      if (written === undefined) {
        if (read.ok) this.#write(source.row);
        else this.#keep({ row: source.row, cells: source.cells, problems: read.problems });
      } else if (!read.ok || !written.equals(this.#other.bytes.subarray(0, this.#other.end)))
        throw new NotPlain("a row that the parser reads otherwise");
      this.#plan ??= await plainPlan(kind, setting, { columns: this.#file.columns, sample: source.cells });
      if (this.#plan === undefined) throw new NotPlain("a kind, or a first row, of which nothing is known");
    }
    this.#asked = [];
  }

  #keep(row: AsideRow): void {
    this.aside.push(row);
    if (this.aside.length > mostAside) throw new NotStraight("too many rows that cannot be read");
  }
}

/** A key of 63 bits as the value of a column, with its length. @returns where it ends */
export function putKey(
  out: Buffer,
  at: number,
  { high, low }: { readonly high: number; readonly low: number },
): number {
  putWhole(out, at, 8);
  putWhole(out, at + 4, high);
  putWhole(out, at + 8, low);
  return at + 12;
}
