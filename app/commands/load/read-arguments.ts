import { parseArgs } from "node:util";
import type { LoadMode } from "@/db/writes/load-result";
import { type FileKind, fileKinds, isFileKind } from "@/lib/intake/file-kinds";

const usage = `Loads files into Ohmsworth. Each file is one load: whole, or not at all. The same file twice changes nothing.

  npm run load -- FILE… [--dry-run] [--set-aside] [--kind KIND] [--matching JSON]
  npm run load -- --look FILE… [--guess JSON]
  npm run load -- --take-back LOAD

  --dry-run     check every row and report, add nothing
  --set-aside   add the good rows and keep the others aside with their reasons
  --kind        ${fileKinds.join(", ")}; else each file says itself what it is
  --look        say how a file of another program would be read, and which column is which; with the reasons
  --guess       write that guess to a file, to be corrected and given with --matching
  --matching    which column is which; else the matching of the last file with the same header
  --take-back   undo the load of that number

Files are loaded in the order in which they build on each other. Columns: the page /files/columns.`;

export interface LoadArguments {
  readonly paths: readonly string[];
  readonly mode: LoadMode;
  readonly kind: FileKind | undefined;
  readonly look: boolean;
  readonly guess: string | undefined;
  readonly matching: string | undefined;
  readonly takeBack: number | undefined;
}

/** What was asked for; undefined where it cannot be meant so, which has then been said. */
export function readArguments(words: readonly string[]): LoadArguments | undefined {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        "dry-run": { type: "boolean" },
        "set-aside": { type: "boolean" },
        kind: { type: "string" },
        look: { type: "boolean" },
        guess: { type: "string" },
        matching: { type: "string" },
        "take-back": { type: "string" },
      },
    });
    const { kind, look = false, guess, matching, "take-back": batch } = values;
    if (kind !== undefined && !isFileKind(kind))
      throw new RangeError(`--kind: one of ${fileKinds.join(", ")}, not ${kind}.`);
    if (batch !== undefined && !/^[1-9]\d{0,14}$/.test(batch))
      throw new RangeError(`--take-back: the number of a load, not ${batch}.`);
    if (batch === undefined && positionals.length === 0) throw new RangeError("Name the files to load.");
    if (batch !== undefined && positionals.length > 0) throw new RangeError("--take-back takes no files.");
    if (guess !== undefined && !look) throw new RangeError("--guess: only together with --look.");
    if ((guess !== undefined || matching !== undefined) && positionals.length > 1)
      throw new RangeError("A matching belongs to one file; name one.");
    const mode = values["dry-run"] === true ? "dry run" : values["set-aside"] === true ? "add and set aside" : "add";
    const takeBack = batch === undefined ? undefined : Number(batch);
    return { paths: positionals, mode, kind, look, guess, matching, takeBack };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : error}\n\n${usage}`);
    return undefined;
  }
}
