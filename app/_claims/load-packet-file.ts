import type { Reader } from "@/db/database-types";
import { loadAttachment } from "@/db/queries/attachment";
import { loadShop } from "@/db/queries/shop";
import { neutralClaim } from "@/lib/claims/neutral/neutral-claim";
import type { NeutralClaim } from "@/lib/claims/neutral/neutral-claim-document";
import type { ClaimPacket } from "@/lib/claims/packet";
import { loadClaim } from "./load-claim";
import { paperOf } from "./paper-of";
import type { Paper } from "./pdf/sheet";

export type PacketFileParts =
  | {
      readonly kind: "packet";
      readonly packet: ClaimPacket;
      readonly neutral: NeutralClaim;
      readonly photos: ReadonlyMap<string, Buffer>;
      /** What the shop's printers hold. */
      readonly paper: Paper;
    }
  | { readonly kind: "none"; readonly sentence: string };

/** What the files of one claim are made from, with the bytes of its photos where they are wanted. */
export async function loadPacketFile(
  db: Reader,
  claimNumber: string,
  { withPhotos = false }: { readonly withPhotos?: boolean } = {},
): Promise<PacketFileParts> {
  const open = await loadClaim(db, claimNumber);
  if (open === undefined) return { kind: "none", sentence: `There is no claim ${claimNumber}.` };
  const { packet, row } = open;
  const { assembly, given } = open.claim;
  if (packet === undefined || assembly.kind === "blocked") {
    const reasons = assembly.kind === "blocked" ? assembly.reasons.map(({ sentence }) => sentence) : [];
    return {
      kind: "none",
      sentence: `Claim ${claimNumber} has no packet: its job no longer supports it. ${reasons.join(" ")}`.trim(),
    };
  }
  const photos = new Map<string, Buffer>();
  for (const { id } of withPhotos ? packet.photos : []) {
    const stored = await loadAttachment(db, row.jobNumber, id);
    if (stored !== undefined) photos.set(id, stored.content);
  }
  const { territory } = await loadShop(db);
  const neutral = neutralClaim({ given, claim: assembly.claim, packet });
  return { kind: "packet", packet, neutral, photos, paper: paperOf(territory) };
}
