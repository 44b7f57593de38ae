import type { OpenJobLine } from "@/db/queries/sheet-lists";
import { symptomOf } from "@/lib/domain/symptoms";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import styles from "./lists.module.css";

/** Plain links: without signal the kept page opens, where a link of the program would ask the server. */
export function OpenJobList({ jobs }: { readonly jobs: readonly OpenJobLine[] }) {
  return (
    <ul className={styles.list}>
      {jobs.map(({ jobNumber, symptom, maker, model, requestedOn, technician, answers }) => (
        <li key={jobNumber}>
          <a href={`/sheet/job/${encodeURIComponent(jobNumber)}`} className={styles.job}>
            <span className={styles.name}>
              {jobNumber}: {symptomOf(symptom)?.name ?? symptom}
            </span>
            <span>
              {maker} {model}
            </span>
            <span className="small soft">
              asked for {formatDay(requestedOn)} · {technician ?? "nobody named"} ·{" "}
              {answers === 0 ? "not begun" : formatCounted(answers, "answer")}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
