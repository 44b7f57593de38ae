import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { parsedJson } from "@/lib/format/parsed-json";

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const name = z.string().regex(/^[a-z_][a-z0-9_]*$/);

const manifest = z.object({
  format: z.literal("ohmsworth-backup/1"),
  madeAt: z.iso.datetime(),
  /** The last step of the schema that the database had taken. */
  schema: z.string().regex(/^\d{4}_[a-z0-9_]+$/),
  tables: z.array(
    z.object({
      name,
      columns: z.array(name),
      rows: z.number().int().nonnegative(),
      file: z.string().regex(/^[a-z0-9_]+\.copy\.gz$/),
      sha256,
    }),
  ),
  sequences: z.array(z.object({ name, last: z.string().regex(/^-?\d+$/) })),
  /** The last link of the change log; left out where the log was empty, or the schema older than it. */
  changeLog: z.object({ link: z.number().int().positive(), sha256 }).optional(),
});

/** What a backup holds: written last, so that a folder without it is no backup. */
export type Manifest = z.infer<typeof manifest>;

export const manifestFile = "manifest.json";

/** @throws BackupError where the folder holds no manifest, or one that this program did not write */
export async function readManifest(folder: string): Promise<Manifest> {
  let text: string;
  try {
    text = await readFile(join(folder, manifestFile), "utf8");
  } catch (error) {
    throw new BackupError(`${folder} is no finished backup: it holds no ${manifestFile} that can be read.`, {
      cause: error,
    });
  }
  const read = manifest.safeParse(parsedJson(text));
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  throw new BackupError(
    `${join(folder, manifestFile)} is not as this program writes it, at ${issue?.path.join(".") || "its start"}: ${issue?.message ?? "it cannot be read"}.`,
  );
}

/** A backup that cannot be made, read or restored, with the sentence for whoever asked. */
export class BackupError extends Error {
  override readonly name = "BackupError";
}
