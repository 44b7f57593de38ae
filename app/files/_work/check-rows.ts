import { loadFile } from "@/db/writes/load-file";
import type { LoadMode, LoadPhase, LoadResult } from "@/db/writes/load-result";
import { loadTable } from "@/db/writes/load-table";
import { keepNotes, type OpenDraft } from "../_draft/open-draft";
import { formOfOurs } from "../_draft/ours";
import { contentOf, reportOf } from "../uploads";
import type { WorkLine } from "./do-task";
import { loadCorrected } from "./load-corrected";
import { settleMatching } from "./settle-matching";
import { writeReport } from "./write-report";

/** Rows whose problems the page lists; the report has them all. */
const mostListed = 1_000;
const mostReported = 100_000;

/** The dry run: what would become of every row. Nothing is added. */
export async function checkRows(given: OpenDraft, line: WorkLine): Promise<void> {
  const draft = await settledDraft(given, line);
  if (draft === undefined) return;
  const { draftId, notes } = draft;
  const result = await loadDraft(draft, "dry run", line);
  if (result.kind === "unreadable") return keepNotes(draftId, { checked: undefined, unreadable: result.problems });
  if (result.kind === "checked" && result.report.rowsHeld > 0 && notes.seen !== undefined) {
    line.onProgress({ words: "Writing the report", done: 0, total: undefined });
    await writeReport(reportOf(draftId), {
      path: contentOf(draftId),
      form: draft.form ?? formOfOurs,
      header: notes.seen.header,
      problems: result.report.problems,
    });
  }
  await keepNotes(draftId, { checked: shortened(result), broken: undefined }, { step: "check" });
}

/** Undefined where something has to be asked first. */
async function settledDraft(draft: OpenDraft, line: WorkLine): Promise<OpenDraft | undefined> {
  if (draft.notes.ours) return draft;
  const settled = await settleMatching(draft, line);
  if (settled === undefined) return undefined;
  const { matching, guess, mustAsk } = settled;
  await keepNotes(
    draft.draftId,
    { guess, checked: undefined, broken: undefined },
    { step: mustAsk ? "match" : "check", matching },
  );
  return mustAsk ? undefined : { ...draft, matching, notes: { ...draft.notes, guess } };
}

/** A draft through the load, in one of its modes. */
export async function loadDraft(
  draft: OpenDraft,
  mode: LoadMode,
  { onProgress, signal }: WorkLine,
): Promise<LoadResult> {
  const { draftId, fileName, form, matching, notes } = draft;
  const total = notes.seen?.rows;
  const request = {
    path: contentOf(draftId),
    fileName,
    mode,
    problemLimit: mostReported,
    signal,
    onProgress: (done: number, phase: LoadPhase) => onProgress({ words: phaseWords[phase], done, total }),
  };
  if (notes.ours || form === undefined || matching === undefined) return await loadFile(request);
  const { corrections = [] } = notes;
  if (corrections.length > 0) return await loadCorrected({ ...request, form, matching }, corrections);
  return await loadTable({ ...request, form, matching });
}

const phaseWords: Readonly<Record<LoadPhase, string>> = {
  reading: "Reading rows",
  checking: "Checking rows against each other and against what is on file",
  adding: "Adding rows",
  counting: "Counting anew",
};

function shortened(result: LoadResult): LoadResult {
  if (!("report" in result)) return result;
  const rows = [...new Set(result.report.problems.map(({ row }) => row))].slice(0, mostListed);
  const last = rows.at(-1) ?? 0;
  return { ...result, report: { ...result.report, problems: result.report.problems.filter(({ row }) => row <= last) } };
}
