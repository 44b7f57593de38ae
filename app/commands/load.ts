import { constants } from "node:fs";
import { access } from "node:fs/promises";
import { databaseUrl } from "@/db/connection";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { kindOfFile } from "@/db/writes/kind-of-file";
import { takeBack } from "@/db/writes/take-back";
import { type FileKind, fileKinds } from "@/lib/intake/file-kinds";
import { describeLoad, isRefusal } from "./load/describe-load";
import { describeTakeBack } from "./load/describe-take-back";
import { loadOne } from "./load/load-one";
import { lookOnly } from "./load/look-only";
import { type LoadArguments, readArguments } from "./load/read-arguments";
import { runCommand } from "./run-command";

async function main(): Promise<number> {
  const read = readArguments(process.argv.slice(2));
  if (read === undefined) return 2;
  await migrateDatabase(await databaseUrl());
  await seedCatalogue();
  if (read.takeBack !== undefined) {
    const result = await takeBack(read.takeBack);
    console.log(describeTakeBack(read.takeBack, result));
    return result.kind === "taken back" ? 0 : 1;
  }
  return read.look ? await lookAtAll(read) : await loadAll(read);
}

async function lookAtAll({ paths, guess }: LoadArguments): Promise<number> {
  let unreadable = 0;
  for (const path of paths) {
    await mustBeReadable(path);
    const { text, readable } = await lookOnly(path, guess);
    console.log(text);
    if (!readable) unreadable++;
  }
  return unreadable === 0 ? 0 : 1;
}

/** Stops at the first file that is refused: the files after it build on it. A dry run looks at all of them. */
async function loadAll(read: LoadArguments): Promise<number> {
  const ordered = await inOrder(read.paths, read.kind);
  let refused = 0;
  for (const [index, path] of ordered.entries()) {
    await mustBeReadable(path);
    const { result, said } = await loadOne(path, read);
    for (const sentence of said) console.log(sentence);
    if (result !== undefined) console.log(describeLoad(path, result));
    if (result !== undefined && !isRefusal(result)) continue;
    refused++;
    if (read.mode === "dry run") continue;
    const left = ordered.slice(index + 1);
    if (left.length > 0) console.log(`Not looked at: ${left.join(", ")}`);
    break;
  }
  return refused === 0 ? 0 : 1;
}

async function mustBeReadable(path: string): Promise<void> {
  await access(path, constants.R_OK).catch(() => {
    throw new Error(`${path}: there is no such file, or it may not be read. Nothing of it was added.`);
  });
}

/** A file whose kind cannot be told goes last; loading it says why. */
async function inOrder(paths: readonly string[], stated: FileKind | undefined): Promise<readonly string[]> {
  const ranked: { path: string; rank: number }[] = [];
  for (const path of paths) {
    const kind = await kindOfFile(path, stated);
    ranked.push({ path, rank: kind === undefined ? fileKinds.length : fileKinds.indexOf(kind) });
  }
  return ranked.toSorted((a, b) => a.rank - b.rank).map(({ path }) => path);
}

await runCommand(main);
