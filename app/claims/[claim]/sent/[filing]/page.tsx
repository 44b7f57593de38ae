import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { PacketPage } from "@/app/_claims/packet-page";
import { mayOpen } from "@/app/_people/may-open";
import { readOnly } from "@/db/client";
import { loadSentBytes } from "@/db/queries/claim-life";
import { sendingWays } from "@/lib/claims/life/sending-way";
import { readSentText } from "@/lib/claims/life/sent-content";
import { formatDay } from "@/lib/format/format-day";
import styles from "./sent.module.css";

export const metadata: Metadata = { title: "What was sent" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly claim: string; readonly filing: string }>;
}

/** What a payer was sent, drawn from the bytes that were kept, however the job has changed since. */
export default async function SentClaimPage({ params }: Props) {
  await mayOpen("/claims/[claim]/sent/[filing]");
  const { claim, filing } = await params;
  const number = decodeURIComponent(claim);
  const sent = /^\d{1,4}$/.test(filing) ? await readOnly((db) => loadSentBytes(db, number, Number(filing))) : undefined;
  if (sent === undefined) notFound();
  const { packet, claim: neutral } = readSentText(sent.content.toString("utf8"));
  const { sentOn, way, contentSha256 } = sent.submission;
  const path = `/claims/${encodeURIComponent(number)}`;
  return (
    <main id="main" tabIndex={-1}>
      <PacketPage
        above={
          <>
            <Link href={path}>Claim {number}</Link> — as it was sent on {formatDay(sentOn)} (
            {sendingWays[way].toLowerCase()}), fingerprint (SHA-256){" "}
            <span className={`figures ${styles.hash}`}>{contentSha256}</span>{" "}
            <a href={`${path}/sent/${filing}/content.json`} download>
              The bytes that it was made of
            </a>
            {neutral === undefined ? null : (
              <>
                {" · "}
                <a href={`${path}/sent/${filing}/claim.json`} download>
                  The claim for other programs, as sent
                </a>
              </>
            )}
          </>
        }
        packet={packet}
        photoHref={(id) => `/jobs/${encodeURIComponent(packet.cover.jobNumber)}/photos/${id}`}
      />
    </main>
  );
}
