import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { readOnly } from "@/db/client";
import { type HeldPart, loadHeldParts } from "@/db/queries/held-parts";
import { loadShop } from "@/db/queries/shop";
import type { Day } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { holdInWords } from "../_components/hold-words";
import styles from "./tags.module.css";

export const metadata: Metadata = { title: "Tags for failed parts" };
export const dynamic = "force-dynamic";

/** Ten tags to a sheet of A4 or Letter, to be cut along their lines and tied to the parts. */
export default async function TagsPage() {
  await mayOpen("/claims/failed-parts/tags");
  const { parts, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return { today, parts: await loadHeldParts(db, today) };
  });
  const kept = parts.filter(({ hold, gone }) => hold.kind !== "may go" && gone === undefined);
  if (kept.length === 0) notFound();
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <div className="no-print stack">
        <p className="small">
          <Link href="/claims/failed-parts">Failed parts</Link>
        </p>
        <h1>{formatCounted(kept.length, "tag")} to print and tie to the parts</h1>
        <p>Ten to a sheet, A4 or Letter. Print at full size and cut along the lines.</p>
      </div>
      <ul className={styles.sheet}>
        {kept.map((part) => (
          <TagOf key={`${part.claimNumber} ${part.line}`} part={part} today={today} />
        ))}
      </ul>
    </main>
  );
}

function TagOf({ part, today }: { readonly part: HeldPart; readonly today: Day }) {
  const { claimNumber, payer, model, serial, jobNumber, completedOn, partNumber, description, quantity, hold } = part;
  const keep = hold.kind === "keep until" ? `until ${formatPlainDay(hold.until)}` : holdInWords(hold, today);
  return (
    <li className={styles.tag}>
      <p className={styles.number}>{claimNumber}</p>
      <p>
        {quantity === 1 ? "" : `${quantity} × `}
        {description}
        {partNumber !== undefined && <span className={styles.figures}> {partNumber}</span>}
      </p>
      <p>
        {model}, serial <span className={styles.figures}>{serial ?? "not known"}</span>
      </p>
      <p>
        Job {jobNumber}, completed {formatPlainDay(completedOn)}
      </p>
      <p>{payer}</p>
      <p className={styles.keep}>Keep {keep}</p>
    </li>
  );
}
