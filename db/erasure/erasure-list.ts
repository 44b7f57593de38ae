import { mkdir, open, readFile } from "node:fs/promises";
import { dirname } from "node:path";
import { z } from "zod";
import { parsedJson } from "@/lib/format/parsed-json";
import { readOnly } from "../client";
import { erasures } from "../schema/keeping";
import type { Erasure } from "./erase-customer";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const key = z.string().regex(/^-?\d{1,19}$/);

const entry = z.object({
  erasureId: z.uuid(),
  at: z.string(),
  by: z.string(),
  reason: z.string(),
  jobs: z.array(z.object({ unitId: key, jobId: key, jobNumber: z.string() })),
  salt: sha256,
  prints: z.array(z.object({ length: z.number().int().positive(), sha256, own: z.boolean() })),
});

/** Its name beside backups, and in the site's own folder. */
export const erasureListFile = "erasures.jsonl";

/**
 * Adds to a list outside the database what it lacks: a backup from before an erasure brings the customer back, and only
 * such a list knows. It holds no name, only hashes.
 */
export async function keepErasureList(path: string): Promise<void> {
  const known = new Set((await readErasureList(path)).map(({ erasureId }) => erasureId));
  const stored = await readOnly((db) => db.select().from(erasures).orderBy(erasures.at));
  const lacking = stored.filter(({ erasureId }) => !known.has(erasureId));
  if (lacking.length === 0) return;
  await mkdir(dirname(path), { recursive: true });
  const file = await open(path, "a", 0o600);
  try {
    for (const row of lacking) await file.writeFile(`${JSON.stringify(entry.parse(row))}\n`);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** The list as it stands, or none where there is no such file. @throws RangeError naming the line that cannot be read */
export async function readErasureList(path: string): Promise<readonly Erasure[]> {
  let text: string;
  try {
    text = await readFile(path, "utf8");
  } catch {
    return [];
  }
  return text.split("\n").flatMap((line, index) => {
    if (line === "") return [];
    const read = entry.safeParse(parsedJson(line));
    if (!read.success) throw new RangeError(`${path}: line ${index + 1} is no entry of the list of erasures`);
    return [read.data];
  });
}
