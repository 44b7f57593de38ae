import { createHash } from "node:crypto";
import sharp from "sharp";

export const largestPhotoBytes = 15_000_000;
const mostPixels = 50_000_000;
const longestEdge = 2000;
const readable: ReadonlySet<string> = new Set(["jpeg", "png", "webp"]);

/** A picture as it is kept: upright, small enough to print well, and with nothing in it but pixels. */
export interface KeptPhoto {
  readonly content: Buffer;
  readonly width: number;
  readonly height: number;
  readonly receivedSha256: string;
  readonly storedSha256: string;
}

export type PhotoReading =
  | { readonly ok: true; readonly photo: KeptPhoto }
  | { readonly ok: false; readonly problem: string; readonly fix: string };

/**
 * Reads a received picture by its content, never by its name, and writes it anew as JPEG. The received bytes are not
 * kept: place, camera and whatever else they carry beside the pixels is left behind.
 */
export async function reencodePhoto(received: Buffer): Promise<PhotoReading> {
  if (received.length === 0) return { ok: false, problem: "is empty", fix: "Take it from the camera again." };
  if (received.length > largestPhotoBytes)
    return { ok: false, problem: `is larger than ${largestPhotoBytes / 1_000_000} MB`, fix: "Send a smaller one." };
  try {
    const picture = sharp(received, { limitInputPixels: mostPixels, failOn: "error" });
    const { format } = await picture.metadata();
    if (!readable.has(format))
      return { ok: false, problem: `is of the kind ${format}`, fix: "Send a JPEG, PNG or WebP picture." };
    const { data, info } = await picture
      .rotate()
      .resize({ width: longestEdge, height: longestEdge, fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" })
      .jpeg({ quality: 85 })
      .toBuffer({ resolveWithObject: true });
    return {
      ok: true,
      photo: {
        content: data,
        width: info.width,
        height: info.height,
        receivedSha256: sha256(received),
        storedSha256: sha256(data),
      },
    };
  } catch (error) {
    const tooMany = error instanceof Error && /pixel limit/i.test(error.message);
    if (tooMany)
      return {
        ok: false,
        problem: `has more than ${mostPixels / 1_000_000} million pixels`,
        fix: "Send a smaller one.",
      };
    return {
      ok: false,
      problem: "cannot be read as a picture, or not to its end",
      fix: "Send a JPEG, PNG or WebP picture that opens.",
    };
  }
}

function sha256(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}
