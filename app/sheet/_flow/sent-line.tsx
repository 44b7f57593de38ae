import { formatCounted } from "@/lib/format/format-count";
import type { SentState } from "../_device/outbox";
import styles from "./sheet.module.css";

/** Where the answers are, in words. */
export function SentLine({ sent, opensAlone = false }: { readonly sent: SentState; readonly opensAlone?: boolean }) {
  return (
    <p role="status" className={styles.sent}>
      {wordsOf(sent)}
      {opensAlone && " · opens without signal"}
    </p>
  );
}

function wordsOf(sent: SentState): string {
  switch (sent.kind) {
    case "all sent":
      return sent.at === undefined ? "Nothing waits on this phone." : `Sent ${sent.at}`;
    case "waiting":
      return sent.why === "sending"
        ? "Saved on this phone, sending"
        : `Saved on this phone: ${formatCounted(sent.items, "item")} to send; ${sent.why}`;
    case "refused":
      return `${formatCounted(sent.refused.length, "item")} stayed on this phone`;
  }
}
