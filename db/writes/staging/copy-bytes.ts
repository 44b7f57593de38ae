import { copyField } from "@/db/copy-field";
import type { StagedValue } from "./staged-kind";

const room = 80_000;

/**
 * Rows of COPY's text format, written as bytes: texts of a few characters that are joined and then turned into bytes cost
 * more than all that is read in them. What is not plain ASCII, or has to be written in another way, goes as text.
 */
export class CopyBytes {
  private bytes = Buffer.allocUnsafe(room);
  private at = 0;

  get length(): number {
    return this.at;
  }

  /** The bytes so far; it begins anew behind them. */
  take(): Buffer {
    const taken = this.bytes.subarray(0, this.at);
    this.bytes = Buffer.allocUnsafe(room);
    this.at = 0;
    return taken;
  }

  /** What is written as it stands, escapes included. */
  text(text: string): void {
    if (this.took(text, isAscii)) return;
    this.makeRoom(3 * text.length);
    this.at += this.bytes.write(text, this.at);
  }

  /** A value of a column, with the escapes of COPY. */
  value(value: StagedValue | null): void {
    if (typeof value !== "string" || !this.took(value, isPlain)) this.text(copyField(value ?? null));
  }

  byte(byte: number): void {
    this.makeRoom(1);
    this.bytes[this.at++] = byte;
  }

  /** Writes a text of characters that are bytes and stand for themselves; nothing where it has any other. */
  private took(text: string, plain: Uint8Array): boolean {
    const { length } = text;
    this.makeRoom(length);
    const { bytes, at } = this;
    for (let index = 0; index < length; index++) {
      const code = text.charCodeAt(index);
      if (plain[code] !== 1) return false;
      bytes[at + index] = code;
    }
    this.at += length;
    return true;
  }

  private makeRoom(more: number): void {
    if (this.at + more <= this.bytes.length) return;
    const larger = Buffer.allocUnsafe(2 * (this.at + more));
    this.bytes.copy(larger, 0, 0, this.at);
    this.bytes = larger;
  }
}

const isAscii = new Uint8Array(128).fill(1);
/** By character: whether it stands for itself in a field of COPY. */
const isPlain = Uint8Array.from({ length: 128 }, (_, code) =>
  Number(!"\0\\\t\n\r".includes(String.fromCharCode(code))),
);
