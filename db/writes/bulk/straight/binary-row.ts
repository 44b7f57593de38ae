// One row as COPY's binary format has it: each value behind its length. The server need not read numbers and days as text.
import type { StagedColumn, StagedValue } from "../../staging/staged-kind";
import type { PlainPlan, PlainWrite } from "../plain-plan";
import type { ScannedRecord } from "../record-scanner";
import { dayNumber } from "./day-number";

const missing = -1;

/** The values of one row, by column; always the same object, filled anew. */
export class BinaryRow {
  bytes: Buffer = Buffer.allocUnsafe(1 << 16);
  /** Where the value of a column begins; its length stands in the four bytes before. */
  readonly starts: Int32Array;
  /** -1 where there is none. */
  readonly lengths: Int32Array;
  /** What is stored with the row stands in one piece, from here on. */
  stored = 0;
  end = 0;
  readonly #columns: readonly StagedColumn[];
  readonly #order: Int32Array;
  readonly #firstStored: number;

  constructor(columns: readonly StagedColumn[]) {
    this.#columns = columns;
    this.starts = new Int32Array(columns.length);
    this.lengths = new Int32Array(columns.length);
    const places = columns.map((_, place) => place);
    const helps = places.filter((place) => columns[place]?.use === "help");
    this.#order = Int32Array.from([...helps, ...places.filter((place) => columns[place]?.use !== "help")]);
    this.#firstStored = helps.length;
  }

  fromRecord(record: ScannedRecord, { writes }: PlainPlan): void {
    this.#begin(3 * ((record.ends[record.count - 1] ?? 0) - (record.starts[0] ?? 0)) + 64 * writes.length);
    for (let index = 0; index < this.#order.length; index++) {
      if (index === this.#firstStored) this.stored = this.end;
      const column = this.#order[index] ?? 0;
      const write = writes[column];
      const start = write === undefined || write.cell < 0 ? 0 : (record.starts[write.cell] ?? 0);
      if (write === undefined) continue;
      if (write.cell < 0 || start === record.ends[write.cell]) this.#value(column, write.blankValue);
      else this.#cell(column, record, write);
    }
  }

  /** The same of what the parser makes of a row. */
  fromValues(values: readonly StagedValue[]): void {
    this.#begin(
      values.reduce<number>((sum, value) => sum + 16 + (typeof value === "string" ? 4 * value.length : 0), 0),
    );
    for (let index = 0; index < this.#order.length; index++) {
      if (index === this.#firstStored) this.stored = this.end;
      const column = this.#order[index] ?? 0;
      this.#value(column, values[column]);
    }
  }

  #begin(bytes: number): void {
    if (this.bytes.length < bytes) this.bytes = Buffer.allocUnsafe(2 * bytes);
    this.end = 0;
  }

  #cell(column: number, { bytes, starts, ends, doubled }: ScannedRecord, { cell, form, type }: PlainWrite): void {
    const start = starts[cell] ?? 0;
    const end = ends[cell] ?? 0;
    const out = this.bytes;
    const to = this.end + 4;
    if (form === "normalised") this.#close(column, to, normalise(bytes, start, end, out, to) - to);
    else if (form === "cents") this.#whole(column, 8, cents(bytes, start, end));
    else if (type === "date") this.#whole(column, 4, dayNumber(bytes, start));
    else if (type === "integer") this.#whole(column, 4, digits(bytes, start, end));
    else {
      let at = to;
      for (let from = start; from < end; from++) {
        const byte = bytes[from] ?? 0;
        if (byte === quote && doubled[cell] === 1) from++;
        out[at++] = byte;
      }
      this.#close(column, to, at - to);
    }
  }

  #value(column: number, value: StagedValue): void {
    const to = this.end + 4;
    const type = this.#columns[column]?.type;
    if (value === null || value === undefined) {
      putWhole(this.bytes, this.end, missing);
      this.starts[column] = to;
      this.lengths[column] = missing;
      this.end = to;
    } else if (type === "date") this.#whole(column, 4, dayNumber(Buffer.from(String(value)), 0));
    else if (type === "integer") this.#whole(column, 4, Number(value));
    else if (type === "bigint") this.#whole(column, 8, Number(value));
    else if (type === "boolean") {
      this.bytes[to] = value === true ? 1 : 0;
      this.#close(column, to, 1);
    } else this.#close(column, to, this.bytes.write(String(value), to));
  }

  #whole(column: number, length: 4 | 8, value: number): void {
    const to = this.end + 4;
    if (length === 4) putWhole(this.bytes, to, value);
    else {
      putWhole(this.bytes, to, Math.floor(value / 2 ** 32));
      putWhole(this.bytes, to + 4, value >>> 0);
    }
    this.#close(column, to, length);
  }

  #close(column: number, start: number, length: number): void {
    putWhole(this.bytes, this.end, length);
    this.starts[column] = start;
    this.lengths[column] = length;
    this.end = start + length;
  }
}

const quote = 0x22;

export function putWhole(bytes: Uint8Array, at: number, value: number): void {
  bytes[at] = value >>> 24;
  bytes[at + 1] = value >>> 16;
  bytes[at + 2] = value >>> 8;
  bytes[at + 3] = value;
}

/** Upper case, letters and digits only: what is left of ASCII by lib/domain/normalised. @returns where it ends */
function normalise(bytes: Uint8Array, start: number, end: number, out: Uint8Array, to: number): number {
  let at = to;
  for (let from = start; from < end; from++) {
    const byte = bytes[from] ?? 0;
    if (byte >= 0x61 && byte <= 0x7a) out[at++] = byte - 0x20;
    else if ((byte >= 0x41 && byte <= 0x5a) || (byte >= 0x30 && byte <= 0x39)) out[at++] = byte;
  }
  return at;
}

function digits(bytes: Uint8Array, start: number, end: number): number {
  let number = 0;
  for (let at = start; at < end; at++) number = 10 * number + (bytes[at] ?? 0) - 0x30;
  return number;
}

/** "129.5" is 12950. */
function cents(bytes: Uint8Array, start: number, end: number): number {
  let number = 0;
  let decimals = -1;
  for (let at = start; at < end; at++) {
    const byte = bytes[at] ?? 0;
    if (byte === 0x2e) decimals = 0;
    else {
      number = 10 * number + byte - 0x30;
      if (decimals >= 0) decimals++;
    }
  }
  return number * (decimals === 2 ? 1 : decimals === 1 ? 10 : 100);
}
