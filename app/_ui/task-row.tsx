import Link from "next/link";
import type { ReactNode } from "react";
import { type Status, StatusWord } from "./status-word";
import styles from "./task-list.module.css";

export const taskStates = {
  "in-place": { word: "In place", status: "fine" },
  missing: { word: "Missing", status: "act-now" },
  "does-not-apply": { word: "Does not apply", status: "note" },
} as const satisfies Record<string, { word: string; status: Status }>;
export type TaskState = keyof typeof taskStates;

interface Props {
  readonly title: string;
  readonly state: TaskState;
  /** What is there, or what would fix it. */
  readonly detail?: ReactNode;
  /** Where it can be supplied; the whole row leads there. */
  readonly href?: string | undefined;
}

/** One thing that a claim needs, with its state in shape and word. */
export function TaskRow({ title, state, detail, href }: Props) {
  const { word, status } = taskStates[state];
  return (
    <li className={styles.row}>
      <div>
        <p className={styles.title}>
          {href === undefined ? (
            title
          ) : (
            <Link href={href} className={styles.whole}>
              {title}
            </Link>
          )}
        </p>
        {detail !== undefined && <div className="small soft">{detail}</div>}
      </div>
      <StatusWord status={status}>{word}</StatusWord>
    </li>
  );
}
