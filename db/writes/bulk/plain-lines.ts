import type { PlainPlan, PlainWrite } from "./plain-plan";
import type { ScannedRecord } from "./record-scanner";

const bufferSize = 1 << 20;
const tab = 0x09;
const lineFeed = 0x0a;
const quote = 0x22;
const backslash = 0x5c;

/** Writes plain rows as lines of COPY's text format, byte by byte. */
export class PlainLines {
  readonly #plan: PlainPlan;
  #out: Uint8Array = Buffer.allocUnsafe(bufferSize);
  #at = 0;
  #began = 0;
  #full: Uint8Array[] = [];

  constructor(plan: PlainPlan) {
    this.#plan = plan;
  }

  /** @returns false where the row is not plain, and nothing was written */
  write(record: ScannedRecord): boolean {
    if (!isPlain(this.#plan, record)) return false;
    const { starts, ends, count } = record;
    const bytes = (ends[count - 1] ?? 0) - (starts[0] ?? 0);
    this.#reserve(3 * bytes + 64 * this.#plan.writes.length);
    this.#began = this.#at;
    this.#text(`${record.row}\t\\N\t\\N\ttrue`);
    for (const write of this.#plan.writes) {
      this.#put(tab);
      this.#cell(record, write);
    }
    this.#put(lineFeed);
    return true;
  }

  /** The line that was written last. */
  last(): string {
    return Buffer.from(this.#out.subarray(this.#began, this.#at)).toString();
  }

  /** What was written since the last call. */
  take(): readonly Uint8Array[] {
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

  #put(byte: number): void {
    this.#out[this.#at++] = byte;
  }

  #text(text: string): void {
    for (let index = 0; index < text.length; index++) this.#out[this.#at++] = text.charCodeAt(index);
  }

  #cell({ bytes, starts, ends, doubled }: ScannedRecord, { cell, form, blank }: PlainWrite): void {
    const start = starts[cell] ?? 0;
    const end = ends[cell] ?? 0;
    if (cell < 0 || start === end) this.#copy(blank, 0, blank.length);
    else if (form === "normalised") this.#normalised(bytes, start, end);
    else if (form === "cents") this.#cents(bytes, start, end);
    else this.#escaped(bytes, start, end, doubled[cell] === 1);
  }

  #copy(bytes: Uint8Array, start: number, end: number): void {
    for (let at = start; at < end; at++) this.#out[this.#at++] = bytes[at] ?? 0;
  }

  #escaped(bytes: Uint8Array, start: number, end: number, doubled: boolean): void {
    const out = this.#out;
    let to = this.#at;
    for (let at = start; at < end; at++) {
      const byte = bytes[at] ?? 0;
      if (byte === quote && doubled) at++;
      const letter = byte > backslash || (byte > tab + 4 && byte < backslash) ? 0 : escapeOf(byte);
      if (letter !== 0) out[to++] = backslash;
      out[to++] = letter === 0 ? byte : letter;
    }
    this.#at = to;
  }

  /** Upper case, letters and digits only: what is left of ASCII by lib/domain/normalised. */
  #normalised(bytes: Uint8Array, start: number, end: number): void {
    for (let at = start; at < end; at++) {
      const byte = bytes[at] ?? 0;
      if (byte >= 0x61 && byte <= 0x7a) this.#put(byte - 0x20);
      else if ((byte >= 0x41 && byte <= 0x5a) || (byte >= 0x30 && byte <= 0x39)) this.#put(byte);
    }
  }

  /** "129.5" is 12950. */
  #cents(bytes: Uint8Array, start: number, end: number): void {
    let decimals = -1;
    let seen = false; // a first digit that is not zero
    for (let at = start; at < end || decimals < 2; at++) {
      const byte = at < end ? (bytes[at] ?? 0) : 0x30;
      if (at === end && decimals < 0) decimals = 0;
      if (byte === 0x2e) decimals = 0;
      else {
        if (byte !== 0x30) seen = true;
        if (seen || decimals === 1) this.#put(byte);
        if (decimals >= 0) decimals++;
      }
    }
  }
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
  let before = -1;
  for (const cell of order) {
    const start = starts[cell] ?? 0;
    if (start === ends[cell]) continue;
    const day = dayNumber(bytes, start);
    if (day < before) return false;
    before = day;
  }
  return true;
}

/** The digits of YYYY-MM-DD as one number. */
function dayNumber(bytes: Uint8Array, start: number): number {
  let number = 0;
  for (let at = start; at < start + 10; at++) {
    const digit = (bytes[at] ?? 0) - 0x30;
    if (digit >= 0) number = 10 * number + digit;
  }
  return number;
}

function sameCell({ bytes, starts, ends }: ScannedRecord, a: number, b: number): boolean {
  const [first = 0, second = 0] = [starts[a], starts[b]];
  const length = (ends[a] ?? 0) - first;
  if (length !== (ends[b] ?? 0) - second) return false;
  for (let at = 0; at < length; at++) if (bytes[first + at] !== bytes[second + at]) return false;
  return true;
}

function escapeOf(byte: number): number {
  switch (byte) {
    case tab:
      return 0x74; // t
    case lineFeed:
      return 0x6e; // n
    case 0x0d:
      return 0x72; // r
    case backslash:
      return backslash;
    default:
      return 0;
  }
}
