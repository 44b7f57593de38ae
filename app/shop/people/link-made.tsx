import { Notice } from "@/app/_ui/notice";
import styles from "./people.module.css";

/** A link that was just made. It is shown once: only its hash is kept. */
export function LinkMade({ made }: { readonly made: { readonly name: string; readonly href: string } | undefined }) {
  return (
    <div role="status">
      {made !== undefined && (
        <Notice status="fine" title={`The link for ${made.name}. Copy it now: it is not shown again`}>
          <p className={styles.link}>{made.href}</p>
          <p>It opens once, within a week. Hand it over where nobody else reads it.</p>
        </Notice>
      )}
    </div>
  );
}
