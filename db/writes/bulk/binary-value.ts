// Values as COPY's binary format has them, each behind its length: days and numbers need not be read from text.
import type { StagedValue } from "../staging/staged-kind";

/** A value of a staging column of this type. */
export function binaryValue(type: string, value: StagedValue): Buffer {
  return value === null || value === undefined
    ? Buffer.from([0xff, 0xff, 0xff, 0xff])
    : lengthFirst(bytesOf(type, value));
}

function bytesOf(type: string, value: string | number | boolean): Buffer {
  switch (type) {
    case "text":
      return Buffer.from(String(value));
    case "jsonb":
      return Buffer.from(`\x01${value}`); // the version of the form, then the text
    case "boolean":
      return Buffer.from([value === true ? 1 : 0]);
    case "date":
      return whole(Buffer.alloc(4), (Date.parse(`${value}T00:00Z`) - firstDay) / dayMs);
    case "integer":
      return whole(Buffer.alloc(4), Number(value));
    case "bigint": {
      const bytes = Buffer.alloc(8);
      bytes.writeBigInt64BE(BigInt(value));
      return bytes;
    }
    default:
      throw new RangeError(`type: ${type} is not one of plain files`);
  }
}

function whole(bytes: Buffer, value: number): Buffer {
  bytes.writeInt32BE(value);
  return bytes;
}

function lengthFirst(bytes: Buffer): Buffer {
  return Buffer.concat([whole(Buffer.alloc(4), bytes.length), bytes]);
}

const dayMs = 86_400_000;
/** From which the database counts days. */
const firstDay = Date.UTC(2000, 0, 1);
const firstYear = 1900;
const years = 400;
const months = Int32Array.from(
  { length: 12 * years },
  (_, month) => (Date.UTC(firstYear, month, 1) - firstDay) / dayMs,
);

/** The number of the day that is written YYYY-MM-DD from `at` on; it is known to be one of these years. */
export function dayNumber(bytes: Uint8Array, at: number): number {
  const year = 100 * two(bytes, at) + two(bytes, at + 2);
  return (months[12 * (year - firstYear) + two(bytes, at + 5) - 1] ?? 0) + two(bytes, at + 8) - 1;
}

function two(bytes: Uint8Array, at: number): number {
  return 10 * (bytes[at] ?? 0) + (bytes[at + 1] ?? 0) - 11 * 0x30;
}
