import { once } from "node:events";
import { PassThrough } from "node:stream";
import { copyInto } from "@/db/copy-into";
import { CopyBytes } from "./copy-bytes";

const chunkBytes = 1 << 16;

/** Rows on their way into one staging table, while other tables are being filled as well. Memory stays with a few chunks. */
export class CopyChannel {
  readonly #stream = new PassThrough();
  readonly #done: Promise<number>;
  /** Where rows are written to; whoever has written one sends them when they are enough. */
  readonly rows = new CopyBytes();

  constructor(target: { readonly table: string; readonly columns: readonly string[] }, timeoutSeconds: number) {
    this.#done = copyInto(target, this.#stream, { timeoutSeconds });
    this.#done.catch((error: Error) => this.#stream.destroy(error)); // whoever writes or closes meets it
    this.#stream.on("error", () => {});
  }

  get isFull(): boolean {
    return this.rows.length >= chunkBytes;
  }

  async send(): Promise<void> {
    if (this.#stream.destroyed) await this.#done; // throws what ended it
    if (!this.#stream.write(this.rows.take())) await Promise.race([once(this.#stream, "drain"), this.#done]);
  }

  /** Waits until all rows have arrived. */
  async close(): Promise<void> {
    if (this.rows.length > 0) await this.send();
    this.#stream.end();
    await this.#done;
  }

  /** Gives the rows up. */
  async abandon(): Promise<void> {
    this.#stream.destroy(new Error("The rows were given up."));
    await this.#done.catch(() => {});
  }
}
