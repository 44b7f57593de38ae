import Link from "next/link";
import type { StoredSubmission } from "@/db/queries/claim-life";
import { type FilingCheckKey, filingCheckTitles } from "@/lib/claims/checks/filing-case";
import type { ClaimEvent } from "@/lib/claims/life/claim-act";
import { sendingWays } from "@/lib/claims/life/sending-way";
import type { Currency } from "@/lib/domain/money";
import styles from "./claim-history.module.css";
import { describeAct } from "./describe-act";
import { instantIn } from "./instant-in";

interface Props {
  readonly claimNumber: string;
  readonly events: readonly ClaimEvent[];
  readonly submissions: readonly StoredSubmission[];
  readonly currency: Currency;
  readonly timeZone: string;
}

/** Who did what when and why, the latest first. Nothing in it is ever changed. */
export function ClaimHistory({ claimNumber, events, submissions, currency, timeZone }: Props) {
  return (
    <section className="stack-tight" aria-labelledby="history">
      <h2 id="history">History</h2>
      <ol className={styles.events} reversed>
        {events.toReversed().map(({ number, at, by, note, act }) => {
          const words = describeAct(act, currency);
          const sent = submissions.find(({ contentSha256 }) => act.what === "sent" && act.sha256 === contentSha256);
          return (
            <li key={number} className={styles.event}>
              <p className={styles.title}>{words.title}</p>
              {[...words.lines, ...(note === "" ? [] : [`Note: ${note}`])].map((line) => (
                <p key={line}>{line}</p>
              ))}
              {sent !== undefined && <Sent claimNumber={claimNumber} sent={sent} />}
              <p className="small soft">
                Entered by {by}, {instantIn(at, timeZone)}
              </p>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function Sent({ claimNumber, sent }: { readonly claimNumber: string; readonly sent: StoredSubmission }) {
  const { submission, way, reference, contentSha256, overrides } = sent;
  return (
    <>
      <p>
        {sendingWays[way]}
        {reference !== "" && `, reference ${reference}`}.{" "}
        <Link href={`/claims/${encodeURIComponent(claimNumber)}/sent/${submission}`}>
          What was sent{submission === 1 ? "" : `, filing ${submission}`}
        </Link>
        , fingerprint <span className="figures">{contentSha256.slice(0, 12)}</span>.
      </p>
      {overrides.map(({ check, reason }) => (
        <p key={check}>
          Sent although a check failed ({titleOf(check)}): {reason}
        </p>
      ))}
    </>
  );
}

/** Older submissions may name a check that is no longer made. */
function titleOf(check: string): string {
  const title = filingCheckTitles[check as FilingCheckKey]; // undefined for a check that we no longer know
  return (title ?? check).toLowerCase();
}
