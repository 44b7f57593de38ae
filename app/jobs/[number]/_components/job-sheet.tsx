import { readOnly } from "@/db/client";
import { loadAnswers } from "@/db/queries/sheet-job";
import { loadSheetRun } from "@/db/queries/sheet-run";
import { componentOf } from "@/lib/domain/components";
import { checkOf } from "@/lib/evidence/checks";
import { ownChecksOf } from "@/lib/sheets/sheet";
import { skipReasons } from "@/lib/sheets/sheet-answer";

/** The path that was taken at the machine, steps passed over too, and the versions of the sheets that it followed. */
export async function JobSheet({ job }: { readonly job: { readonly unitId: string; readonly jobId: string } }) {
  const { run, answers } = await readOnly(async (db) => ({
    run: await loadSheetRun(db, job),
    answers: await loadAnswers(db, job),
  }));
  if (run === undefined) return null;
  const own = ownChecksOf(run.sheets);
  const versions = Object.entries(run.versions).map(([key, version]) => {
    const component = key.split("/")[1] ?? key;
    return `${componentOf(component)?.name.toLowerCase() ?? component} version ${version}`;
  });
  return (
    <section className="stack-tight">
      <h2>Path by the check sheet</h2>
      <ol>
        {answers.map(({ id, check, given }) => (
          <li key={id}>
            {own.get(check)?.name ?? checkOf(check)?.name ?? check}
            {given.kind === "skip" && ` — passed over: ${skipReasons[given.reason].toLowerCase()}`}
          </li>
        ))}
      </ol>
      <p className="small soft">Sheets: {versions.join(", ")}.</p>
    </section>
  );
}
