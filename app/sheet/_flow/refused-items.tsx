import { Notice } from "@/app/_ui/notice";
import { photoSubjects } from "@/lib/domain/job";
import { checkOf } from "@/lib/evidence/checks";
import { formatOutcome } from "@/lib/format/format-reading";
import type { OutboxItem } from "../_device/device-store";
import type { SheetDevice } from "../_device/use-sheet-device";
import styles from "./sheet.module.css";

/** What the server would not take, each with its sentence. Nothing of it goes unless somebody says so. */
export function RefusedItems({ device, jobNumber }: { readonly device: SheetDevice; readonly jobNumber: string }) {
  if (device.sent.kind !== "refused") return null;
  const { refused, waiting } = device.sent;
  return (
    <Notice
      status="act-now"
      title="The server did not take this; it stays on this phone until you say what becomes of it"
    >
      {refused.map((item) => (
        <div key={item.id} className={styles.refused}>
          <p>
            <strong>
              {nameOf(item)}
              {item.job !== jobNumber && `, job ${item.job}`}
            </strong>
            : {item.refused}
          </p>
          <div className={styles.choices}>
            <button type="button" className={styles.choice} onClick={() => void device.settle(item, "send again")}>
              Send again
            </button>
            <button type="button" className={styles.choice} onClick={() => void device.settle(item, "leave out")}>
              {item.load.kind === "close" ? "Go on with the job" : "Leave it out"}
            </button>
          </div>
        </div>
      ))}
      {waiting > 0 && <p>Closing the job waits for that.</p>}
    </Notice>
  );
}

function nameOf({ load }: OutboxItem): string {
  switch (load.kind) {
    case "photo":
      return `Photo: ${photoSubjects[load.subject as keyof typeof photoSubjects] ?? load.subject}`; // the device stores its keys
    case "close":
      return "Closing the job";
    case "answer": {
      const { check, given } = load.answer;
      const said = given.kind === "skip" ? "passed over" : formatOutcome(given.outcome);
      return `${checkOf(check)?.name ?? "A check of your shop"}: ${said}`;
    }
  }
}
