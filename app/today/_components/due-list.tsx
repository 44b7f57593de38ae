import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import { StatusWord } from "@/app/_ui/status-word";
import type { DueLine } from "../due-lines";
import styles from "./due-list.module.css";

interface Props {
  readonly lines: readonly DueLine[];
}

/** One ordered list, the most urgent first. */
export function DueList({ lines }: Props) {
  if (lines.length === 0) {
    return (
      <EmptyState kind="nothing-due" title="No draft has a filing day near, and no row waits to be corrected.">
        <p>Drafts appear here with their filing day, overdue ones first.</p>
      </EmptyState>
    );
  }
  return (
    <ol className={styles.list}>
      {lines.map(({ key, status, act, href, reason }) => (
        <li key={key} className={styles.line}>
          <StatusWord status={status} />
          <div>
            <Link href={href} className={styles.act}>
              {act}
            </Link>
            <p className="small soft">{reason}</p>
          </div>
        </li>
      ))}
    </ol>
  );
}
