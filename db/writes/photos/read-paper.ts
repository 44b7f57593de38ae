import { createHash } from "node:crypto";
import { largestPhotoBytes } from "./photo-limits";
import type { PhotoRefusal } from "./photo-reading";
import { pictureKind, pictureKindName } from "./picture-kind";

export interface KeptPaper {
  readonly content: Buffer;
  readonly receivedSha256: string;
}

/** Names of what a paper must not do when it is opened; a compressed part can still hide one, so it is never shown inline. */
const acting = ["/JavaScript", "/JS", "/Launch", "/EmbeddedFile", "/RichMedia", "/XFA"] as const;

/** A PDF as it came: it can't be written anew without losing what it proves, so it is only ever handed out as a download. */
export function readPaper(received: Buffer): { readonly ok: true; readonly paper: KeptPaper } | PhotoRefusal {
  const refuse = (problem: string, fix: string): PhotoRefusal => ({ ok: false, problem, fix });
  if (received.length > largestPhotoBytes)
    return refuse(`is larger than ${largestPhotoBytes / 1_000_000} MB`, "Send a smaller one.");
  if (pictureKind(received) !== "pdf") return refuse(`is ${pictureKindName(pictureKind(received))}`, "Send a PDF.");
  const text = received.toString("latin1");
  if (!text.slice(-2048).includes("%%EOF"))
    return refuse("is a PDF without its end", "It was cut short on its way: send it again.");
  if (/\/Encrypt\b/.test(text)) return refuse("is a locked PDF", "Save it without a password and send it again.");
  const found = acting.find((name) => new RegExp(`${name}\\b`).test(text));
  if (found !== undefined)
    return refuse(
      `is a PDF with something in it that acts (${found.slice(1)})`,
      "Print it to a plain PDF, or send a photo of it.",
    );
  const receivedSha256 = createHash("sha256").update(received).digest("hex");
  return { ok: true, paper: { content: received, receivedSha256 } };
}
