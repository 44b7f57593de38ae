// The measure of every load: the same bytes copied into a table without indexes, by the same program in the same run.
import { createReadStream } from "node:fs";
import { sql } from "drizzle-orm";
import { copyInto } from "@/db/copy-into";
import { inTransaction } from "@/db/in-transaction";
import { type Processor, processorSeconds, processorSince } from "./intake-profile";

interface Copied {
  readonly taken: number;
  readonly used: Processor;
}

/** @param columns  of the file, by the names that say their types */
export async function bareCopy(path: string, columns: readonly string[]): Promise<Copied> {
  const typed = columns.map((column) => `${column} ${typeOf(column)}`).join(", ");
  await command(`drop table if exists bare_copy; create unlogged table bare_copy (${typed})`);
  const begun = await processorSeconds();
  const taken = await seconds(() =>
    copyInto(
      { table: "bare_copy", columns, format: "csv with header" },
      createReadStream(path, { highWaterMark: 1 << 20 }),
      {
        timeoutSeconds: 600,
      },
    ),
  );
  const used = await processorSince(begun);
  await command("drop table bare_copy");
  return { taken, used };
}

function typeOf(column: string): string {
  if (column.endsWith("_on")) return "date";
  if (["visits", "labour_minutes", "quantity", "line"].includes(column)) return "integer";
  return ["labour", "trip", "unit_cost"].includes(column) ? "numeric" : "text";
}

async function command(text: string): Promise<void> {
  await inTransaction(async (tx) => void (await tx.execute(sql.raw(text))));
}

export async function seconds(work: () => Promise<unknown>): Promise<number> {
  const before = performance.now();
  await work();
  return (performance.now() - before) / 1000;
}
