import sharp from "sharp";
import { packetPdf } from "@/app/_claims/packet-pdf";
import { assembleClaim } from "@/lib/claims/assemble-claim";
import { claimPacket } from "@/lib/claims/claim-packet";
import { claimCase, pumpRecord } from "../claims/claim-case";

const photoCount = 12;

/** A packet with twelve photos of the size in which they are kept, first in a fresh process and then again. */
export async function benchPacket(say: (what: string, value: string) => void): Promise<void> {
  const photo = await sharp({
    create: { width: 2000, height: 1500, channels: 3, background: "#889", noise: { type: "gaussian", sigma: 12 } },
  })
    .jpeg({ quality: 85 })
    .toBuffer();
  const { packet, photos } = packetWith(photo);
  const seconds = async () => {
    const before = performance.now();
    await packetPdf(packet, photos, { paper: "A4", createdAt: new Date("2025-03-20T00:00:00Z") });
    return performance.now() - before;
  };
  const first = await seconds();
  const again = await Promise.all([await seconds(), await seconds(), await seconds()]);
  say(
    `packet with ${photoCount} photos of ${(photo.length / 1_000_000).toFixed(1)} MB, the first of a process`,
    `${first.toFixed(0)} ms`,
  );
  say("  and again (limit 2000 ms)", `${Math.min(...again).toFixed(0)} ms`);
}

function packetWith(photo: Buffer) {
  const record = pumpRecord();
  const [one] = record.attachments;
  if (one === undefined) throw new Error("the record lost its photos");
  const attachments = Array.from({ length: photoCount }, (_, index) => ({
    ...one,
    id: String(index),
    bytes: photo.length,
  }));
  const given = claimCase({
    ...record,
    attachments: [...record.attachments.filter(({ subject }) => subject === "receipt"), ...attachments.slice(1)],
  });
  const assembly = assembleClaim(given);
  if (assembly.kind === "blocked") throw new Error("the made record is claimable");
  const packet = claimPacket(given, assembly.claim, [], { claimNumber: "C-2025-0001", servicer: "Servicer" });
  return { packet, photos: new Map(packet.photos.map(({ id }) => [id, photo])) };
}
