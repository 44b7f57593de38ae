import { KeyHash } from "./key-hash";
import { KeyTable } from "./key-table";

/** Texts as bytes, numbered in the order in which they come, each together with a number that is part of what it is. */
export class ByteWords {
  readonly texts: string[] = [];
  /** The numbers that came with the texts. */
  readonly within: number[] = [];
  readonly #hash = new KeyHash();
  readonly #table = new KeyTable();
  readonly #bytes: Uint8Array[] = [];

  get size(): number {
    return this.texts.length;
  }

  /** @returns the word's number; undefined where another text has the same hash, which is to be taken as not knowing */
  number(bytes: Uint8Array, start: number, end: number, within = 0): number | undefined {
    this.#hash.of(bytes, start, end);
    const number = this.#table.add(this.#hash.high, (this.#hash.low ^ Math.imul(within, 0x9e3779b1)) >>> 0);
    const known = this.#bytes[number];
    if (known === undefined) {
      const own = Buffer.from(bytes.subarray(start, end)); // a copy: the row is filled anew
      this.#bytes.push(own);
      this.texts.push(own.toString());
      this.within.push(within);
      return number;
    }
    if (known.length !== end - start || this.within[number] !== within) return undefined;
    for (let at = 0; at < known.length; at++) if (known[at] !== bytes[start + at]) return undefined;
    return number;
  }
}
