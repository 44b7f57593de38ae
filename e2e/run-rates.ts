import { execFile } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { promisify } from "node:util";
import { z } from "zod";
import { bundled } from "./bundled.mjs";
import { ownSite } from "./sites.mjs";

const rate = z.object({
  group: z.record(z.string(), z.string()),
  failures: z.number(),
  unitYears: z.number(),
  ratePer100: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
const document = z.object({ by: z.array(z.string()), rates: z.array(rate), all: rate });

/** What `npm run rates -- --by … --json` prints about the very database that the site under test reads. */
export async function runRates(by: string): Promise<z.infer<typeof document>> {
  const words = [...bundled("app/commands/rates.ts"), "--by", by, "--json"];
  const { stdout } = await promisify(execFile)(process.execPath, words, {
    cwd: join(import.meta.dirname, ".."),
    env: { ...process.env, DATABASE_URL: readFileSync(ownSite.note, "utf8") },
    maxBuffer: 32 * 1024 * 1024,
  });
  return document.parse(JSON.parse(stdout));
}
