import Link from "next/link";
import { StatusWord } from "@/app/_ui/status-word";
import { type CheckPlace, type FilingCheck, filingCheckTitles } from "@/lib/claims/checks/filing-case";
import { capitalised } from "@/lib/format/capitalised";
import styles from "./filing-checks.module.css";

interface Props {
  readonly checks: readonly FilingCheck[];
  readonly jobNumber: string;
  readonly unitId: string;
}

const verdicts = {
  passed: { status: "fine", word: "Passed" },
  failed: { status: "act-now", word: "Failed" },
  cannot_tell: { status: "watch", word: "Can’t be told" },
} as const;

/** What is held against the claim before it is filed, in the order in which payers most often refuse. */
export function FilingChecks({ checks, jobNumber, unitId }: Props) {
  return (
    <section className="stack-tight" aria-labelledby="checks-title">
      <h2 id="checks-title">Checks before filing</h2>
      <ol className={styles.checks}>
        {checks.map((check) => (
          <li key={check.key} className={styles.check}>
            <div className="stack-tight">
              <p className={styles.title}>{filingCheckTitles[check.key]}</p>
              <ul className="small">
                {check.fixes.map((line) => (
                  <li key={line}>{capitalised(line)}</li>
                ))}
                {check.found.map((line) => (
                  <li key={line} className="soft">
                    {line}
                  </li>
                ))}
              </ul>
              {check.fixes.length > 0 && (
                <p className="small">
                  <Link href={hrefOf(check.place, jobNumber, unitId)}>{wordsOf(check.place, jobNumber)}</Link>
                </p>
              )}
            </div>
            <StatusWord status={verdicts[check.verdict].status}>{verdicts[check.verdict].word}</StatusWord>
          </li>
        ))}
      </ol>
    </section>
  );
}

function hrefOf(place: CheckPlace, jobNumber: string, unitId: string): string {
  switch (place.kind) {
    case "job":
      return `/jobs/${encodeURIComponent(jobNumber)}`;
    case "papers":
      return `/jobs/${encodeURIComponent(jobNumber)}#photos`;
    case "unit":
      return `/units/${unitId}/facts`;
    case "claim":
      return `/claims/${encodeURIComponent(place.claimNumber)}`;
  }
}

function wordsOf(place: CheckPlace, jobNumber: string): string {
  switch (place.kind) {
    case "job":
      return `See job ${jobNumber}`;
    case "papers":
      return `Attach it to job ${jobNumber}`;
    case "unit":
      return "Enter it on the unit";
    case "claim":
      return `See claim ${place.claimNumber}`;
  }
}
