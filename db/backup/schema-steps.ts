import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Client } from "pg";
import { z } from "zod";
import { BackupError } from "./manifest";

const folder = fileURLToPath(new URL("../migrations", import.meta.url));
const journal = z.looseObject({ entries: z.array(z.looseObject({ tag: z.string(), when: z.number() })) });
const journalFile = join("meta", "_journal.json");

/** The name of the last step of the schema that a database has taken. @throws BackupError where it has taken none of ours */
export async function schemaOf(client: Client): Promise<string> {
  const { rows } = await client.query<{ last: string | null }>(
    "select max(created_at)::text as last from drizzle.__drizzle_migrations",
  );
  const step = steps().entries.find(({ when }) => String(when) === rows[0]?.last);
  if (step === undefined) {
    throw new BackupError("The database was brought to its schema by a newer program than this one. Use that program.");
  }
  return step.tag;
}

/** Calls `work` with a folder of the steps up to and with `tag`. @throws BackupError where this program has no such step */
export async function withStepsUpTo<T>(tag: string, work: (folder: string) => Promise<T>): Promise<T> {
  const all = steps();
  const last = all.entries.findIndex((step) => step.tag === tag);
  if (last < 0) {
    throw new BackupError(
      `The backup is of schema ${tag}, which this program does not know: it was made by a newer one. Use that program.`,
    );
  }
  const kept = all.entries.slice(0, last + 1);
  const part = mkdtempSync(join(tmpdir(), "ohmsworth-schema-"));
  try {
    mkdirSync(join(part, "meta"));
    writeFileSync(join(part, journalFile), JSON.stringify({ ...all, entries: kept }));
    for (const { tag: name } of kept) cpSync(join(folder, `${name}.sql`), join(part, `${name}.sql`));
    return await work(part);
  } finally {
    rmSync(part, { recursive: true, force: true });
  }
}

function steps(): z.infer<typeof journal> {
  return journal.parse(JSON.parse(readFileSync(join(folder, journalFile), "utf8")));
}
