import { once } from "node:events";
import { PassThrough } from "node:stream";
import { copyInto } from "@/db/copy-into";

const chunkCharacters = 1 << 16;

/** Rows on their way into one staging table, while other tables are being filled as well. Memory stays with a few chunks. */
export class CopyChannel {
  readonly #stream = new PassThrough();
  readonly #done: Promise<number>;
  #chunk = "";

  constructor(target: { readonly table: string; readonly columns: readonly string[] }, timeoutSeconds: number) {
    this.#done = copyInto(target, this.#stream, { timeoutSeconds });
    this.#done.catch((error: Error) => this.#stream.destroy(error)); // whoever writes or closes meets it
    this.#stream.on("error", () => {});
  }

  /** @param line  as `copyLine` writes it */
  async write(line: string): Promise<void> {
    this.#chunk += line;
    if (this.#chunk.length >= chunkCharacters) await this.#send();
  }

  /** Waits until all rows have arrived. */
  async close(): Promise<void> {
    if (this.#chunk !== "") await this.#send();
    this.#stream.end();
    await this.#done;
  }

  /** Gives the rows up. */
  async abandon(): Promise<void> {
    this.#stream.destroy(new Error("The rows were given up."));
    await this.#done.catch(() => {});
  }

  async #send(): Promise<void> {
    if (this.#stream.destroyed) await this.#done; // throws what ended it
    const chunk = this.#chunk;
    this.#chunk = "";
    if (!this.#stream.write(chunk)) await Promise.race([once(this.#stream, "drain"), this.#done]);
  }
}
