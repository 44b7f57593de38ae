import { sql } from "drizzle-orm";
import { afterAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { copySideBySide } from "@/db/writes/bulk/copy-side-by-side";

import { withStaging } from "@/db/writes/staging/staging-table";

afterAll(closeDatabase);

async function* lines(until: number, fails?: Error): AsyncGenerator<string> {
  for (let at = 0; at < until; at++) yield `${at}\n`;
  if (fails !== undefined) throw fails;
}

/** Rows that have arrived, and what the copying threw. */
async function copied(chunks: AsyncGenerator<string>) {
  return await withStaging(async ({ create }) => {
    const table = await create(["row integer"]);
    const error = await copySideBySide({ table, columns: ["row"] }, chunks, { timeoutSeconds: 60 }).catch(
      (e: Error) => e.message,
    );
    const [found] = await readOnly((db) =>
      db.rows<{ rows: number; sum: number }>(
        sql.raw(`select count(*)::integer as rows, sum(row)::integer as sum from ${table}`),
      ),
    );
    return { ...found, error };
  });
}

test("every line arrives once over two connections", async () => {
  expect(await copied(lines(20_000))).toEqual({ rows: 20_000, sum: (20_000 * 19_999) / 2, error: undefined });
  expect(await copied(lines(0))).toEqual({ rows: 0, sum: null, error: undefined });
});

test("chunks that fail leave nothing, whichever connection asked for them", async () => {
  for (const after of [0, 1, 2, 20_000])
    expect(await copied(lines(after, new Error("given up")))).toEqual({ rows: 0, sum: null, error: "given up" });
});

test("a line that the table cannot take is the error", async () => {
  async function* wrong(): AsyncGenerator<string> {
    yield* lines(5000);
    yield "no number\n";
    yield* lines(5000);
  }
  expect((await copied(wrong())).error).toMatch(/invalid input syntax/);
});
