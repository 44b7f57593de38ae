import { createHash } from "node:crypto";

/** First 63 bits of the hash of what was received and the job: the same photo on the same job twice is one photo. */
export function attachmentId({
  receivedSha256,
  jobNumber,
}: {
  readonly receivedSha256: string;
  readonly jobNumber: string;
}): string {
  const hash = createHash("sha256").update(`${receivedSha256}|${jobNumber}`).digest();
  return String(BigInt.asUintN(63, hash.readBigUInt64BE()));
}
