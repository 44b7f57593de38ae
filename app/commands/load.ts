import { constants } from "node:fs";
import { access } from "node:fs/promises";
import { basename } from "node:path";
import { parseArgs } from "node:util";
import { closeDatabase } from "@/db/close-database";
import { databaseUrl } from "@/db/connection";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { kindOfFile } from "@/db/writes/kind-of-file";
import { loadFile } from "@/db/writes/load-file";
import type { LoadMode } from "@/db/writes/load-result";
import { takeBack } from "@/db/writes/take-back";
import { type FileKind, fileKinds, isFileKind } from "@/lib/intake/file-kinds";
import { describeLoad, isRefusal, shownProblems } from "./load/describe-load";
import { describeTakeBack } from "./load/describe-take-back";

const usage = `Loads files into Ohmsworth. Each file is one load: whole, or not at all. The same file twice changes nothing.

  npm run load -- FILE… [--dry-run] [--set-aside] [--kind KIND]
  npm run load -- --take-back LOAD

  --dry-run     check every row and report, add nothing
  --set-aside   add the good rows and keep the others aside with their reasons
  --kind        ${fileKinds.join(", ")}; else each file says itself what it is
  --take-back   undo the load of that number

Files are loaded in the order in which they build on each other. Columns: the page /files/columns.`;

interface Arguments {
  readonly paths: readonly string[];
  readonly mode: LoadMode;
  readonly kind: FileKind | undefined;
  readonly takeBack: number | undefined;
}

async function main(): Promise<number> {
  const read = readArguments();
  if (read === undefined) return 2;
  await migrateDatabase(await databaseUrl());
  await seedCatalogue();
  if (read.takeBack !== undefined) {
    const result = await takeBack(read.takeBack);
    console.log(describeTakeBack(read.takeBack, result));
    return result.kind === "taken back" ? 0 : 1;
  }
  return await loadAll(read);
}

/** Stops at the first file that is refused: the files after it build on it. A dry run looks at all of them. */
async function loadAll({ paths, mode, kind }: Arguments): Promise<number> {
  const ordered = await inOrder(paths, kind);
  let refused = 0;
  for (const [index, path] of ordered.entries()) {
    await access(path, constants.R_OK).catch(() => {
      throw new Error(`${path}: there is no such file, or it may not be read. Nothing of it was added.`);
    });
    const result = await loadFile({ path, fileName: basename(path), mode, kind, problemLimit: shownProblems });
    console.log(describeLoad(path, result));
    if (!isRefusal(result)) continue;
    refused++;
    if (mode === "dry run") continue;
    const left = ordered.slice(index + 1);
    if (left.length > 0) console.log(`Not looked at: ${left.join(", ")}`);
    break;
  }
  return refused === 0 ? 0 : 1;
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

function readArguments(): Arguments | undefined {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        "dry-run": { type: "boolean" },
        "set-aside": { type: "boolean" },
        kind: { type: "string" },
        "take-back": { type: "string" },
      },
    });
    const { kind, "take-back": batch } = values;
    if (kind !== undefined && !isFileKind(kind))
      throw new RangeError(`--kind: one of ${fileKinds.join(", ")}, not ${kind}.`);
    if (batch !== undefined && !/^[1-9]\d{0,14}$/.test(batch))
      throw new RangeError(`--take-back: the number of a load, not ${batch}.`);
    if (batch === undefined && positionals.length === 0) throw new RangeError("Name the files to load.");
    if (batch !== undefined && positionals.length > 0) throw new RangeError("--take-back takes no files.");
    const mode = values["dry-run"] === true ? "dry run" : values["set-aside"] === true ? "add and set aside" : "add";
    return { paths: positionals, mode, kind, takeBack: batch === undefined ? undefined : Number(batch) };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n\n${usage}`);
    return undefined;
  }
}

main()
  .catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  })
  .then(async (code) => {
    await closeDatabase();
    process.exitCode = code;
  });
