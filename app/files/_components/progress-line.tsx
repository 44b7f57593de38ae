import styles from "./progress-line.module.css";

interface Props {
  /** What is being done: "Reading rows". */
  readonly words: string;
  readonly done: number;
  /** Undefined where it is not known yet: then only what is done is said. */
  readonly total: number | undefined;
  /** An amount in words, such as "120 rows". */
  readonly amount: (count: number) => string;
}

/** Known work with its counts; nothing turns or moves by itself. */
export function ProgressLine({ words, done, total, amount }: Props) {
  const counts = total === undefined ? (done === 0 ? "" : amount(done)) : `${amount(done)} of ${amount(total)}`;
  return (
    <div className="stack-tight">
      <p>
        {words}
        {counts !== "" && (
          <>
            : <span className="figures">{counts}</span>
          </>
        )}
      </p>
      {total !== undefined && total > 0 && (
        <progress className={styles.bar} value={Math.min(done, total)} max={total} aria-label={words} />
      )}
    </div>
  );
}
