import { formatCounted } from "@/lib/format/format-count";
import type { SentState } from "../_device/outbox";
import styles from "./sheet.module.css";

/** Where the answers are, in words. */
export function SentLine({ sent, opensAlone = false }: { readonly sent: SentState; readonly opensAlone?: boolean }) {
  return (
    <p role="status" className={styles.sent}>
      {wordsOf(sent)}
      {sent.kind === "waiting" && (sent.why === "signed out" || sent.why === "somebody else") && <SignInAgain />}
      {opensAlone && " · opens without signal"}
    </p>
  );
}

/** In a page of its own, so that this one stays as it is and sends as soon as it is looked at again. */
function SignInAgain() {
  return (
    <>
      {" · "}
      <a href="/sign-in?to=/sheet" target="_blank" rel="noreferrer">
        Sign in
      </a>
    </>
  );
}

const whyWords = {
  "no signal": "no signal",
  "the server did not answer": "the server did not answer",
  "signed out": "your session is over, and they go once you have signed in again",
  "somebody else": "they go once the person who took them has signed in again",
} as const;

function wordsOf(sent: SentState): string {
  switch (sent.kind) {
    case "all sent":
      return sent.at === undefined ? "Nothing waits on this phone." : `Sent ${sent.at}`;
    case "waiting":
      return sent.why === "sending"
        ? "Saved on this phone, sending"
        : `Saved on this phone: ${formatCounted(sent.items, "item")} to send; ${whyWords[sent.why]}`;
    case "refused":
      return `${formatCounted(sent.refused.length, "item")} stayed on this phone`;
  }
}
