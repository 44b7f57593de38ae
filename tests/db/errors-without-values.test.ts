import { inspect } from "node:util";
import { sql } from "drizzle-orm";
import { afterAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { copyInto } from "@/db/copy-into";
import { inTransaction } from "@/db/in-transaction";
import { payerWordings } from "@/db/schema/money";

const canary = "Annabel Quillfeather";
const setAt = "2026-01-01T00:00:00Z";

afterAll(closeDatabase);

const row = { payer: canary, words: canary, reason: "other", setBy: canary, setAt } as const;

/** What a log would print of it: message, stack, causes and every property. */
async function printed(failing: Promise<unknown>): Promise<string> {
  const error: unknown = await failing.then(
    () => expect.unreachable(),
    (reason: unknown) => reason,
  );
  return inspect(error, { depth: 10, showHidden: true });
}

test.each([
  [
    "a key that is there already",
    () =>
      inTransaction(async (tx) => {
        await tx.insert(payerWordings).values(row);
        await tx.insert(payerWordings).values(row);
      }),
    /duplicate key value violates unique constraint "payer_wordings/,
  ],
  [
    "a row that a check refuses",
    () => inTransaction((tx) => tx.insert(payerWordings).values({ ...row, words: " ", payer: canary })),
    /violates check constraint "payer_wordings_said_by_somebody"/,
  ],
  [
    "text where a day is wanted",
    () => inTransaction((tx) => tx.execute(sql`select ${canary}::date`)),
    /invalid input syntax for type date: …/,
  ],
  [
    "a row that COPY cannot take",
    async () => {
      await inTransaction((tx) => tx.execute(sql`create unlogged table staging.staging_without_values (n integer)`));
      try {
        await copyInto({ table: "staging_without_values", columns: ["n"] }, [`${canary}\n`], { timeoutSeconds: 10 });
      } finally {
        await inTransaction((tx) => tx.execute(sql`drop table staging_without_values`));
      }
    },
    /invalid input syntax for type integer: …/,
  ],
])("%s is told without its values", async (_, failing, says) => {
  const text = await printed(failing());
  expect(text).toMatch(says);
  expect(text).not.toMatch(/quillfeather/i);
});
