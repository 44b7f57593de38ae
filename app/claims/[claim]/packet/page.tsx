import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { loadClaim } from "@/app/_claims/load-claim";
import { PacketPage } from "@/app/_claims/packet-page";
import { mayOpen } from "@/app/_people/may-open";
import { readOnly } from "@/db/client";

export const metadata: Metadata = { title: "Claim packet" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly claim: string }>;
}

export default async function ClaimPacketPage({ params }: Props) {
  await mayOpen("/claims/[claim]/packet");
  const number = decodeURIComponent((await params).claim);
  const open = await readOnly((db) => loadClaim(db, number));
  if (open?.packet === undefined) notFound();
  const job = encodeURIComponent(open.row.jobNumber);
  return (
    <main id="main" tabIndex={-1}>
      <PacketPage
        above={<Link href={`/claims/${encodeURIComponent(number)}`}>Claim {number}</Link>}
        packet={open.packet}
        photoHref={(id) => `/jobs/${job}/photos/${id}`}
      />
    </main>
  );
}
