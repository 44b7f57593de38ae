"use client";

import { useEffect, useRef } from "react";
import styles from "./notice.module.css";
import { StatusShape } from "./status-word";

export interface FieldProblem {
  /** Name of the `Field` it belongs to; absent where it belongs to the whole form. */
  readonly field?: string | undefined;
  /** What is wrong and what to do. */
  readonly text: string;
}

interface Props {
  readonly problems: readonly FieldProblem[];
}

/** Above a form that came back: takes focus, counts the problems, links to each field. */
export function ErrorSummary({ problems }: Props) {
  const summary = useRef<HTMLElement>(null);
  useEffect(() => {
    if (problems.length > 0) summary.current?.focus();
  }, [problems]);
  if (problems.length === 0) return null;
  return (
    <section
      ref={summary}
      tabIndex={-1}
      className={styles.notice}
      data-status="act-now"
      aria-labelledby="problems-title"
    >
      <StatusShape status="act-now" />
      <div className="stack-tight">
        <h2 id="problems-title" className={styles.count}>
          {problems.length === 1 ? "One thing to put right" : `${problems.length} things to put right`}
        </h2>
        <ul>
          {problems.map(({ field, text }) => (
            <li key={`${field ?? ""} ${text}`}>
              {field === undefined ? text : <a href={`#field-${field}`}>{text}</a>}
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}
