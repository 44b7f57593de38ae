import { Tag } from "@/app/_ui/tag";
import type { AskLine } from "@/db/queries/sheet-lists";
import { formatDay } from "@/lib/format/format-day";
import styles from "./lists.module.css";

/** What the desk lacks for a claim, each a way to give it. */
export function AskList({ asks }: { readonly asks: readonly AskLine[] }) {
  return (
    <ul className={styles.list}>
      {asks.map(({ jobNumber, item, label, technician, askedOn }) => (
        <li key={`${jobNumber} ${item}`}>
          <a href={`/sheet/asked/${encodeURIComponent(jobNumber)}#${encodeURIComponent(item)}`} className={styles.job}>
            <span className={styles.name}>{label}</span>
            <span>
              <Tag>{jobNumber}</Tag>
            </span>
            <span className="small soft">
              asked {formatDay(askedOn)} · {technician ?? "nobody named"}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
