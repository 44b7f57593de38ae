import { sql } from "drizzle-orm";
import { afterAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { soakSeeds } from "../soak-seeds";
import { type DirtyFile, dirtyFile } from "./adding-up";
import { batchOf, fileFolder, shopDocument, startAfresh } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";
import { loadText } from "./table-files";

const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** One small file is always tried; `npm run soak` asks for twenty large ones, which take a quarter of an hour. */
const seeds = soakSeeds([1]);
const size = process.env.SOAK_SEEDS === undefined ? 3_000 : 10_000;

test.each(seeds)(
  "every dirty row (seed %i) has one fate, and each that is not in is on record",
  { timeout: 600_000 },
  async (seed) => {
    await startAfresh();
    await files.load(JSON.stringify(shopDocument));
    const before = await stateOfData();
    const file = dirtyFile(seed, size);
    const result = await loadText(files.folder, textOf(file));
    const [total, added, changed, same, held, refused = 0] = counts(result);
    expect(total).toBe(file.rows);
    expect([added, changed, same, held].every((rows) => rows !== undefined)).toBe(true);
    expect(added).toBeGreaterThan(size / 10);
    expect(held).toBeGreaterThan(size / 10);
    const kept = await readOnly((db) =>
      db.rows<{ state: string; rows: number }>(
        sql`select state, count(*)::integer as rows from held_rows group by 1 order by 1`,
      ),
    );
    expect(kept).toEqual([
      { state: "held", rows: held },
      { state: "refused", rows: refused },
    ]);
    expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);

    const again = counts(await loadText(files.folder, textOf({ ...file, lines: file.lines.toReversed() })));
    expect(again.slice(1, 3), "the same rows in another order").toEqual([0, 0]);

    await takeBack(batchOf(result));
    await takeBack(batchOf(result) + 1);
    expect(await stateOfData()).toEqual(before);
  },
);

function textOf({ header, lines }: DirtyFile): string {
  return `${[header, ...lines].join("\r\n")}\r\n`;
}
