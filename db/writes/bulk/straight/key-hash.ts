// The 64-bit hash from which keys of units and jobs are made, as the database's hashtextextended(text, 0) makes it, so
// that rows can be written with their keys. Bob Jenkins, lookup3 (public domain), as PostgreSQL's hash_bytes_extended
// turns it. Whoever relies on it asks the database for a few hashes first (`knowsHash`).
import { sql } from "drizzle-orm";
import type { Reader } from "@/db/database-types";

const beginning = 0x9e3779b9 + 3923095;

/** One hash after the other; 63 bits of each, since keys are not negative. */
export class KeyHash {
  high = 0;
  low = 0;

  of(k: Uint8Array, start: number, end: number): void {
    let at = start;
    let left = end - start;
    let a = (beginning + left) | 0;
    let b = a;
    let c = a;
    for (; left >= 12; left -= 12, at += 12) {
      a = (a + word(k, at)) | 0;
      b = (b + word(k, at + 4)) | 0;
      c = (c + word(k, at + 8)) | 0;
      a = ((a - c) ^ rotated(c, 4)) | 0;
      c = (c + b) | 0;
      b = ((b - a) ^ rotated(a, 6)) | 0;
      a = (a + c) | 0;
      c = ((c - b) ^ rotated(b, 8)) | 0;
      b = (b + a) | 0;
      a = ((a - c) ^ rotated(c, 16)) | 0;
      c = (c + b) | 0;
      b = ((b - a) ^ rotated(a, 19)) | 0;
      a = (a + c) | 0;
      c = ((c - b) ^ rotated(b, 4)) | 0;
      b = (b + a) | 0;
    }
    for (let index = 0; index < left; index++) {
      const byte = k[at + index] ?? 0;
      if (index < 4) a = (a + (byte << (8 * index))) | 0;
      else if (index < 8) b = (b + (byte << (8 * (index - 4)))) | 0;
      else c = (c + (byte << (8 * (index - 7)))) | 0; // the lowest byte of c is the length's
    }
    c = ((c ^ b) - rotated(b, 14)) | 0;
    a = ((a ^ c) - rotated(c, 11)) | 0;
    b = ((b ^ a) - rotated(a, 25)) | 0;
    c = ((c ^ b) - rotated(b, 16)) | 0;
    a = ((a ^ c) - rotated(c, 4)) | 0;
    b = ((b ^ a) - rotated(a, 14)) | 0;
    c = ((c ^ b) - rotated(b, 24)) | 0;
    this.high = b & 0x7fffffff;
    this.low = c >>> 0;
  }
}

function word(k: Uint8Array, at: number): number {
  return (k[at] ?? 0) | ((k[at + 1] ?? 0) << 8) | ((k[at + 2] ?? 0) << 16) | ((k[at + 3] ?? 0) << 24);
}

function rotated(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}

const asked = ["", "J", "J-00012345", "HEARTHWICK|S123456789", "twenty-four bytes, Ω ½ "] as const;

/** Whether this database makes the same hashes: another build of it may not. */
export async function knowsHash(db: Reader): Promise<boolean> {
  const texts = sql.join(
    asked.map((text) => sql`(${text}::text)`),
    sql`, `,
  );
  const found = await db.rows<{ text: string; key: string }>(
    sql`select t as text, (hashtextextended(t, 0) & 9223372036854775807)::text as key from (values ${texts}) v(t)`,
  );
  const hash = new KeyHash();
  return found.every(({ text, key }) => {
    const bytes = Buffer.from(text);
    hash.of(bytes, 0, bytes.length);
    return ((BigInt(hash.high) << 32n) | BigInt(hash.low)).toString() === key;
  });
}
