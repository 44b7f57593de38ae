import { readdir, stat } from "node:fs/promises";
import { readOnly } from "@/db/client";
import { openDraftIds } from "@/db/queries/open-draft-ids";
import { loadLastRuns } from "@/db/queries/program-runs";
import { believedNow } from "@/db/retention/believed-now";
import { type Due, previewRetention, removeWhatIsDue } from "@/db/retention/run-retention";
import { noteRun } from "@/db/writes/note-run";
import { dropUpload, uploadsFolder } from "../../files/uploads";

/** So far past the run before a clock is believed at once; it runs every night. Own choice. */
const believedDays = 7;

/** Removes what is over its time, and the files of drafts that are gone. Of a dry run nothing is kept, not even that it ran. */
export async function runRetention({ dry }: { readonly dry: boolean }): Promise<readonly Due[]> {
  const last = (await readOnly(loadLastRuns)).find(({ program }) => program === "retention");
  const now = believedNow(new Date(), last?.finishedAt, believedDays);
  if (dry) return await previewRetention(now);
  let removed: readonly Due[] = [];
  await noteRun(
    "retention",
    () => new Date(),
    async () => {
      removed = await removeWhatIsDue(now);
      await dropUploadsWithoutDraft(now);
      const first = removed.filter(({ rows }) => rows > 0).map(({ kind, rows }) => `${kind}: ${rows}`);
      return { found: removed.reduce((sum, { rows }) => sum + rows, 0), first };
    },
  );
  return removed;
}

/** A file is on disk a moment before its draft is stored, so those of the last day are left alone. */
async function dropUploadsWithoutDraft(now: Date): Promise<void> {
  const open = new Set(await openDraftIds());
  for (const id of await readdir(uploadsFolder).catch(() => [])) {
    if (open.has(id)) continue;
    const { mtimeMs } = await stat(`${uploadsFolder}/${id}`);
    if (now.getTime() - mtimeMs > 86_400_000) await dropUpload(id);
  }
}
