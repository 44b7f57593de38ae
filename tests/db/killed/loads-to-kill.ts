// The three ways in which a load runs in a process of its own.
import { createReadStream, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Readable } from "node:stream";
import { openDraft, startDraft } from "@/app/files/_draft/open-draft";
import { doTask } from "@/app/files/_work/do-task";
import { keepUpload } from "@/app/files/uploads";
import { loadFile } from "@/db/writes/load-file";
import type { LoadMode, LoadResult } from "@/db/writes/load-result";
import { loadTable } from "@/db/writes/load-table";
import { bundledCommand } from "../bundled-command";
import { csv, job, today } from "../intake-files";
import { commaText, exported, matching } from "../table-files";

export interface LoadToKill {
  readonly name: string;
  /** The same load in this process, for what is to be expected. */
  readonly here: (mode: LoadMode) => Promise<LoadResult>;
  /** Words of the command, which is given again after the kill; undefined where the site would no longer offer it. */
  readonly command: () => Promise<readonly string[] | undefined>;
  /** Makes what the command needs anew in an empty database. */
  readonly prepare: () => Promise<void>;
}

/** Our own columns, into empty tables that are filled beside the empty ones. */
export function largeFile(folder: string): LoadToKill {
  const path = join(folder, "large.csv");
  const serials = 18_000;
  const washer = { product_type: "front_load_washer", sold_on: "2022-02-02" };
  writeFileSync(
    path,
    csv(Array.from({ length: 21_000 }, (_, index) => job(`J${index}`, `S${index % serials}`, washer))),
  );
  return {
    name: "a first load of 21,000 jobs",
    here: (mode) => loadFile({ path, fileName: "large.csv", mode, today }),
    command: async () => [bundledCommand("load"), "--set-aside", path],
    prepare: async () => {},
  };
}

/** Somebody's own columns with part lines and rows that are held. */
export function matchedFile(folder: string): LoadToKill {
  const path = join(folder, "export.csv");
  const how = join(folder, "matching.json");
  const rows = Array.from({ length: 2_000 }, (_, index) =>
    exported(`J${index % 1500}`, index % 9 === 0 ? "" : `S${index % 1500}`, {
      Part: `P-${index % 7}`,
      Qty: index % 50 === 0 ? "many" : 1,
      "Unit cost": "2.00",
    }),
  );
  writeFileSync(path, csv(rows));
  writeFileSync(how, JSON.stringify({ form: {}, matching }));
  return {
    name: "2,000 matched rows with part lines",
    here: (mode) => loadTable({ path, fileName: "export.csv", form: commaText, matching, mode, today }),
    command: async () => [bundledCommand("load"), "--set-aside", "--matching", how, path],
    prepare: async () => {},
  };
}

/** A file in a draft, which the site adds in a process of its own. */
export function draftedFile(folder: string): LoadToKill {
  const path = join(folder, "drafted.csv");
  writeFileSync(path, csv(Array.from({ length: 3_000 }, (_, index) => job(`D${index}`, `S${index % 2500}`))));
  let id = "";
  return {
    name: "3,000 jobs of a draft",
    here: (mode) => loadFile({ path, fileName: "drafted.csv", mode, today }),
    async command() {
      const draft = await openDraft(id);
      if (draft === undefined) throw new Error("the draft is gone");
      return draft.notes.added === undefined ? [bundledCommand("work-on-file"), id, "add"] : undefined;
    },
    async prepare() {
      const body = Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array>; // the same stream, as the web names it
      const upload = await keepUpload(body, "drafted.csv");
      id = upload.id;
      await startDraft({ draftId: id, fileName: "drafted.csv", fileBytes: upload.bytes, fileSha256: upload.sha256 });
      await doTask(id, "look", { onProgress: () => {}, signal: new AbortController().signal });
    },
  };
}
