import { type Definition, DefinitionList } from "@/app/_ui/definition-list";
import { Notice } from "@/app/_ui/notice";
import { Plate } from "@/app/_ui/plate";
import { nightlyPrograms, type ProgramRun } from "@/db/queries/program-runs";
import { instantOnClock } from "@/lib/calendar/instant";
import { formatCounted } from "@/lib/format/format-count";

interface Props {
  readonly runs: readonly ProgramRun[];
  readonly timeZone: string;
}

const names = { "check-log": "Change log", "check-evidence": "Evidence", retention: "Time to keep" } as const;

/** What the site looks over by itself every night. What is wrong comes first, in words and with its place. */
export function NightlyChecks({ runs, timeZone }: Props) {
  const wrong = runs.filter(({ program, found }) => program !== "retention" && found > 0);
  return (
    <>
      {wrong.map((run) => (
        <Notice key={run.program} status="act-now" title={wrongTitle(run)}>
          {run.first.map((line) => (
            <p key={line}>{line}</p>
          ))}
          <p>
            All of it: <code>npm run {run.program}</code>.
          </p>
        </Notice>
      ))}
      <Plate title="Looked over every night">
        <DefinitionList items={nightlyPrograms.map((program) => factOf(program, runs, timeZone))} />
      </Plate>
    </>
  );
}

function wrongTitle({ program, found }: ProgramRun): string {
  return program === "check-log"
    ? `The change log was altered: ${formatCounted(found, "place")}`
    : `Evidence is not as it was kept: ${formatCounted(found, "item")}`;
}

function factOf(program: (typeof nightlyPrograms)[number], runs: readonly ProgramRun[], timeZone: string): Definition {
  const run = runs.find((last) => last.program === program);
  const term = names[program];
  if (run === undefined) return { term, detail: "not looked at yet", source: `By hand: npm run ${program}` };
  const when = instantOnClock(run.finishedAt, timeZone);
  if (run.problem !== null)
    return { term, detail: `did not come to its end (${run.problem})`, source: `${when}. By hand: npm run ${program}` };
  return { term, detail: outcomeOf(run), source: `${when}` };
}

function outcomeOf({ program, found, first }: ProgramRun): string {
  switch (program) {
    case "check-log":
      return found === 0
        ? "every link holds"
        : formatCounted(found, "place that does not hold", "places that do not hold");
    case "check-evidence":
      return found === 0
        ? "all as it was kept"
        : formatCounted(found, "item that is not as it was kept", "items that are not as they were kept");
    case "retention":
      return found === 0 ? "nothing was over its time" : `removed ${first.join(", ")}`;
  }
}
