import { binaryValue, dayNumber } from "./binary-value";
import type { PlainPlan, PlainWrite } from "./plain-plan";
import type { ScannedRecord } from "./record-scanner";

const bufferSize = 1 << 20;
const quote = 0x22;
const point = 0x2e;
/** Longer cells are copied by the system, shorter ones by hand. */
const longCell = 40;

/** Writes rows in COPY's binary format, plain ones byte by byte. */
export class PlainRows {
  readonly #plan: PlainPlan;
  /** What stands before the row's number, and between it and what the kind reads. */
  readonly #fields: Buffer;
  readonly #bare = Buffer.concat([
    binaryValue("jsonb", null),
    binaryValue("jsonb", null),
    binaryValue("boolean", true),
  ]);
  #out: Buffer = Buffer.allocUnsafe(bufferSize);
  #at = 0;
  #began = 0;
  #full: Buffer[] = [];

  constructor(plan: PlainPlan) {
    this.#plan = plan;
    this.#fields = Buffer.alloc(2);
    this.#fields.writeInt16BE(4 + plan.writes.length); // row, cells, problems, readable
  }

  /** @returns false where the row is not plain, and nothing was written */
  write(record: ScannedRecord): boolean {
    if (!isPlain(this.#plan, record)) return false;
    const { starts, ends, count } = record;
    this.#reserve(3 * ((ends[count - 1] ?? 0) - (starts[0] ?? 0)) + 16 * this.#plan.writes.length + 64);
    const out = this.#out;
    let at = putShort(out, this.#at, this.#fields);
    at = putWhole(out, at, record.row);
    at = putShort(out, at, this.#bare);
    for (const write of this.#plan.writes) at = putCell(out, at, record, write);
    this.#began = this.#at;
    this.#at = at;
    return true;
  }

  /** A row that somebody else has made, of whole fields. */
  add(fields: readonly Buffer[]): void {
    this.#reserve(fields.reduce((sum, { length }) => sum + length, 2));
    this.#began = this.#at;
    this.#put(this.#fields);
    for (const field of fields) this.#put(field);
  }

  /** The fields of the row that was written last. */
  last(): Buffer {
    return Buffer.from(this.#out.subarray(this.#began + 2, this.#at));
  }

  /** What was written since the last call. */
  take(): readonly Buffer[] {
    const taken = [...this.#full, this.#out.subarray(0, this.#at)];
    this.#out = this.#out.subarray(this.#at); // the stream may still hold what was taken
    this.#at = 0;
    this.#full = [];
    return taken;
  }

  #reserve(bytes: number): void {
    if (this.#out.length - this.#at >= bytes) return;
    this.#full.push(this.#out.subarray(0, this.#at));
    this.#out = Buffer.allocUnsafe(Math.max(bufferSize, bytes));
    this.#at = 0;
  }

  #put(bytes: Buffer): void {
    this.#out.set(bytes, this.#at);
    this.#at += bytes.length;
  }
}

/** Writes the value of a cell behind its length. @returns where it ends */
function putCell(out: Buffer, at: number, record: ScannedRecord, { cell, form, blank }: PlainWrite): number {
  const start = cell < 0 ? 0 : (record.starts[cell] ?? 0);
  const end = cell < 0 ? 0 : (record.ends[cell] ?? 0);
  if (start === end) return putShort(out, at, blank);
  switch (form) {
    case "day":
      return putWhole(out, at, dayNumber(record.bytes, start));
    case "whole":
      return putWhole(out, at, digits(record.bytes, start, end));
    case "cents":
      return putCents(out, at, cents(record.bytes, start, end));
    case "normalised":
      return putLength(out, at, normalise(record.bytes, start, end, out, at + 4));
    case "as it stands":
      return putLength(out, at, copy(record, cell, out, at + 4));
  }
}

/** By hand, which for few bytes is quicker than by the system. */
function putShort(out: Buffer, at: number, bytes: Buffer): number {
  for (let index = 0; index < bytes.length; index++) out[at + index] = bytes[index] ?? 0;
  return at + bytes.length;
}

/** Writes the length of the value that begins four bytes after `at`. @returns where it ends */
function putLength(out: Buffer, at: number, end: number): number {
  putBytes(out, at, end - at - 4);
  return end;
}

function putWhole(out: Buffer, at: number, value: number): number {
  putBytes(out, at, 4);
  putBytes(out, at + 4, value);
  return at + 8;
}

function putCents(out: Buffer, at: number, value: number): number {
  putBytes(out, at, 8);
  putBytes(out, at + 4, Math.floor(value / 2 ** 32));
  putBytes(out, at + 8, value);
  return at + 12;
}

/** The lowest 32 bits, highest byte first. */
function putBytes(out: Buffer, at: number, value: number): void {
  out[at] = value >>> 24;
  out[at + 1] = value >>> 16;
  out[at + 2] = value >>> 8;
  out[at + 3] = value;
}

function copy({ bytes, starts, ends, doubled }: ScannedRecord, cell: number, out: Buffer, to: number): number {
  const start = starts[cell] ?? 0;
  const end = ends[cell] ?? 0;
  const twice = doubled[cell] === 1;
  if (!twice && end - start > longCell) {
    out.set(bytes.subarray(start, end), to);
    return to + end - start;
  }
  let at = to;
  for (let from = start; from < end; from++) {
    const byte = bytes[from] ?? 0;
    if (twice && byte === quote) from++;
    out[at++] = byte;
  }
  return at;
}

/** Upper case, letters and digits only: what is left of ASCII by lib/domain/normalised. */
function normalise(bytes: Uint8Array, start: number, end: number, out: Buffer, to: number): number {
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
  let left = 2; // decimals that are still to come
  let decimals = false;
  for (let at = start; at < end; at++) {
    const byte = bytes[at] ?? 0;
    if (byte === point) decimals = true;
    else {
      number = 10 * number + byte - 0x30;
      if (decimals) left--;
    }
  }
  return number * (left === 0 ? 1 : left === 1 ? 10 : 100);
}

function isPlain({ tests, needed, order, apart }: PlainPlan, record: ScannedRecord): boolean {
  const { bytes, starts, ends, count } = record;
  if (count !== tests.length) return false;
  for (let cell = 0; cell < count; cell++) {
    const start = starts[cell] ?? 0;
    const end = ends[cell] ?? 0;
    if (start === end) {
      if (needed[cell] === 1) return false;
      continue;
    }
    const test = tests[cell];
    if (test === undefined || !test(bytes, start, end)) return false;
  }
  return ascends(order, record) && apart.every(([a, b]) => !sameCell(record, a, b));
}

function ascends(order: readonly number[], { bytes, starts, ends }: ScannedRecord): boolean {
  let before = Number.NEGATIVE_INFINITY;
  for (const cell of order) {
    const start = starts[cell] ?? 0;
    if (start === ends[cell]) continue;
    const day = dayNumber(bytes, start);
    if (day < before) return false;
    before = day;
  }
  return true;
}

function sameCell({ bytes, starts, ends }: ScannedRecord, a: number, b: number): boolean {
  const [first = 0, second = 0] = [starts[a], starts[b]];
  const length = (ends[a] ?? 0) - first;
  if (length !== (ends[b] ?? 0) - second) return false;
  for (let at = 0; at < length; at++) if (bytes[first + at] !== bytes[second + at]) return false;
  return true;
}
