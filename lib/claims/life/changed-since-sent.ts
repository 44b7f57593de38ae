import { canonicalJson } from "../neutral/canonical-json";
import type { ClaimPacket } from "../packet";

/** Parts of a packet that people know by name; the index follows from the others. */
const parts = {
  cover: "Unit, dates or payer",
  coverage: "Coverage",
  story: "Complaint, cause or correction",
  evidence: "Evidence",
  readings: "Readings",
  money: "Parts and labour",
  photos: "Photos",
  documents: "Documents",
  history: "Earlier jobs on this unit",
} as const satisfies Partial<Record<keyof ClaimPacket, string>>;

/** What of a claim's job is no longer as it was sent. Days that only tell when each was put together are left aside. */
export function changedSinceSent(sent: ClaimPacket, now: ClaimPacket): readonly string[] {
  const keys = Object.keys(parts) as readonly (keyof typeof parts)[]; // Object.keys loses the key type
  return keys.filter((key) => comparable(sent, key) !== comparable(now, key)).map((key) => parts[key]);
}

/** As JSON, which is how the sent one was kept: a field that is undefined is no field there, and order says nothing. */
function comparable(packet: ClaimPacket, key: keyof typeof parts): string {
  const { preparedOn: _, filing: __, ...cover } = packet.cover;
  return canonicalJson(JSON.parse(JSON.stringify(key === "cover" ? cover : packet[key])));
}
