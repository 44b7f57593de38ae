import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { Client } from "pg";
import { from as copyFrom } from "pg-copy-streams";
import { databaseUrl } from "./connection";
import { searchPath } from "./search-path";
import { withoutValues } from "./without-values";

type CopyTarget = {
  readonly table: string;
  readonly columns: readonly string[];
  /** COPY's own text format where left out. */
  readonly format?: keyof typeof formats;
};

const formats = { "csv with header": " (format csv, header)", binary: " (format binary)" } as const;

/**
 * Streams rows into a staging table with COPY; memory does not grow with their number.
 * `chunks` is COPY's text format, as `copyLine` (./copy-line) writes it, cut anywhere; of its binary format they are the rows.
 *
 * It is one statement on a connection of its own: all rows arrive or none. The table must be one that only this load
 * reads (`create unlogged table …`): what it received counts for nothing until a transaction has taken it over.
 * @returns how many rows arrived
 * @throws the database's error for a row it cannot take; the source's error; Error past the time limit
 */
export async function copyInto(
  { table, columns, format }: CopyTarget,
  chunks: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>,
  { timeoutSeconds }: { readonly timeoutSeconds: number },
): Promise<number> {
  const client = new Client({
    connectionString: await databaseUrl(),
    application_name: "ohmsworth copy",
    connectionTimeoutMillis: 10_000,
  });
  client.on("error", () => {}); // the stream reports it
  const limit = AbortSignal.timeout(timeoutSeconds * 1000);
  try {
    await client.connect();
    await client.query(`set search_path = ${searchPath}`);
    const names = columns.map((column) => client.escapeIdentifier(column)).join(", ");
    const sink = client.query(
      copyFrom(
        `copy ${client.escapeIdentifier(table)} (${names}) from stdin${format === undefined ? "" : formats[format]}`,
      ),
    );
    const stream = format === "binary" ? framed(chunks) : chunks;
    await pipeline(Readable.from(stream, { objectMode: false }), sink, { signal: limit });
    return sink.rowCount;
  } catch (error) {
    if (!limit.aborted) throw withoutValues(error);
    const message = `Copying rows into ${table} took longer than ${timeoutSeconds} s and was given up.`;
    throw new Error(message, { cause: error });
  } finally {
    await client.end().catch(() => {});
  }
}

/** The signature, no flags and no more header; then the rows; then what stands in place of a row's number of fields. */
async function* framed(rows: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>) {
  yield Buffer.from("PGCOPY\n\xff\r\n\0\0\0\0\0\0\0\0\0", "latin1");
  yield* rows;
  yield Buffer.from([0xff, 0xff]);
}
