import { type EstimateWording, formatEstimate } from "@/lib/format/format-estimate";
import type { Estimate } from "@/lib/statistics/estimate";
import styles from "./estimate-text.module.css";

interface Props extends EstimateWording {
  readonly estimate: Estimate;
}

/** An estimate in words: number, range, count, on every screen; a loose one says so and its number is not bold. */
export function EstimateText({ estimate, ...wording }: Props) {
  const words = formatEstimate(estimate, wording);
  switch (words.kind) {
    case "figure":
      return (
        <span className={words.grade === "loose" ? styles.loose : undefined}>
          <span className={styles.figure}>{words.figure}</span> <span className={styles.range}>({words.range})</span>,{" "}
          {words.count}
          {words.grade === "loose" && " — loose"}
        </span>
      );
    case "none-seen":
      return (
        <span>
          <span className={styles.figure}>{words.count}</span> — anything up to {words.upTo} would still fit
        </span>
      );
    case "too-few":
      return (
        <span className={styles.tooFew}>
          {words.count} — {words.refusal}
        </span>
      );
  }
}
