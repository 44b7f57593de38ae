import styles from "./status-word.module.css";

export const statuses = {
  "act-now": { word: "Act now", shape: "M5.9 1h6.2L17 5.9v6.2L12.1 17H5.9L1 12.1V5.9z" },
  watch: { word: "Watch", shape: "M9 1.5 17.5 16.5H0.5z" },
  fine: { word: "Fine", shape: "M9 1a8 8 0 1 1 0 16A8 8 0 0 1 9 1z" },
  note: { word: "Note", shape: "M2 2h14v14H2z" },
} as const;
export type Status = keyof typeof statuses;

interface Props {
  readonly status: Status;
  /** A word of the place, such as "Missing"; the status's own where absent. Never left out. */
  readonly children?: string;
}

/** Octagon, triangle, circle or square, always with its word: neither colour nor shape has to be known. */
export function StatusWord({ status, children }: Props) {
  return (
    <span className={styles.status} data-status={status}>
      <StatusShape status={status} />
      {children ?? statuses[status].word}
    </span>
  );
}

export function StatusShape({ status }: { readonly status: Status }) {
  return (
    <svg className={styles.shape} data-status={status} aria-hidden="true" width="14" height="14" viewBox="0 0 18 18">
      <path d={statuses[status].shape} />
    </svg>
  );
}
