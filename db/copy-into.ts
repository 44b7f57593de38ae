import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { databaseUrl } from "./connection";
import { postgresJsClient } from "./postgres-js-client";

type CopyTarget = { readonly table: string; readonly columns: readonly string[] };

/**
 * Streams rows into a staging table with COPY; memory does not grow with their number.
 * `chunks` is COPY's text format, as `copyLine` (./copy-line) writes it, cut anywhere.
 *
 * It is a statement of its own on a connection of its own, never part of a transaction: on this driver a COPY that
 * fails inside one never returns. So the table must be one that only this load reads (`create unlogged table …`), and
 * what it received counts for nothing until a transaction has taken it over.
 * @throws the database's error for a row it cannot take (none is kept); Error past the time limit
 */
export async function copyInto(
  { table, columns }: CopyTarget,
  chunks: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>,
  { timeoutSeconds }: { readonly timeoutSeconds: number },
): Promise<void> {
  const sql = postgresJsClient(await databaseUrl(), { max: 1, applicationName: "ohmsworth copy" });
  const limit = AbortSignal.timeout(timeoutSeconds * 1000);
  try {
    const sink = await beforeAbort(limit, sql`copy ${sql(table)} (${sql(columns as string[])}) from stdin`.writable());
    await pipeline(Readable.from(chunks, { objectMode: false }), sink, { signal: limit });
  } catch (error) {
    if (limit.aborted)
      throw new Error(`Copying rows into ${table} took longer than ${timeoutSeconds} s and was given up.`, {
        cause: error,
      });
    throw error;
  } finally {
    await sql.end({ timeout: limit.aborted ? 0 : 5 });
  }
}

function beforeAbort<T>(signal: AbortSignal, promise: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    signal.addEventListener("abort", () => reject(signal.reason), { once: true });
    promise.then(resolve, reject);
  });
}
