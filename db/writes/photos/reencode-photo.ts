import { createHash } from "node:crypto";
import sharp, { type Sharp } from "sharp";
import { captureTime } from "./capture-time";
import { decodeHeic } from "./decode-heic";
import { largestPhotoBytes, mostPixels } from "./photo-limits";
import type { PhotoReading, PhotoRefusal } from "./photo-reading";
import { type PictureKind, pictureKind, pictureKindName } from "./picture-kind";

const longestEdge = 2000;
const readable: ReadonlySet<PictureKind> = new Set(["jpeg", "png", "webp", "heic"]);

/**
 * Reads a received picture by its content, never by its name, and writes it anew as JPEG. The received bytes are not
 * kept: place, camera and whatever else they carry beside the pixels is left behind, but for the time.
 */
export async function reencodePhoto(received: Buffer): Promise<PhotoReading> {
  if (received.length === 0) return refuse("is empty", "Take it from the camera again.");
  if (received.length > largestPhotoBytes)
    return refuse(`is larger than ${largestPhotoBytes / 1_000_000} MB`, "Send a smaller one.");
  const kind = pictureKind(received);
  if (!readable.has(kind))
    return refuse(`is ${pictureKindName(kind)}`, fixes[kind] ?? "Send a JPEG, PNG, WebP or HEIC picture.");
  try {
    const { width, height, exif } = await sharp(received, { limitInputPixels: false }).metadata();
    if (width * height > mostPixels) return tooMany(width, height);
    const opened = kind === "heic" ? await openHeic(received) : { ok: true as const, picture: openPlain(received) };
    if (!opened.ok) return opened;
    const { data, info } = await opened.picture
      .resize({ width: longestEdge, height: longestEdge, fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" })
      .jpeg({ quality: 85 })
      .timeout({ seconds: 20 })
      .toBuffer({ resolveWithObject: true });
    const hashes = { receivedSha256: sha256(received), storedSha256: sha256(data) };
    const taken = captureTime(exif);
    return { ok: true, photo: { content: data, width: info.width, height: info.height, ...hashes, taken } };
  } catch {
    return refuse(
      `begins as ${pictureKindName(kind)} but cannot be read to its end`,
      "It may have been cut short on its way: send it again, or another one that opens.",
    );
  }
}

/** Only the first picture of an animation is read; `failOn` refuses one that was cut short. */
function openPlain(received: Buffer): Sharp {
  return sharp(received, { limitInputPixels: mostPixels, failOn: "error", pages: 1 }).rotate();
}

async function openHeic(received: Buffer): Promise<{ readonly ok: true; readonly picture: Sharp } | PhotoRefusal> {
  const decoded = await decodeHeic(received);
  if (decoded.kind === "too many pixels") return tooMany(decoded.width, decoded.height);
  if (decoded.kind === "unreadable")
    return refuse(
      "is a HEIC picture that cannot be read here",
      "Send it as JPEG: on the phone set the camera to the most compatible format, or share the photo by mail, which makes a JPEG of it.",
    );
  const { width, height, pixels } = decoded;
  return { ok: true, picture: sharp(pixels, { raw: { width, height, channels: 4 } }) };
}

function tooMany(width: number, height: number): PhotoRefusal {
  return refuse(
    `has ${width} × ${height} pixels, more than the ${mostPixels / 1_000_000} million that are read`,
    "Send a smaller one.",
  );
}

const fixes: Readonly<Partial<Record<PictureKind, string>>> = {
  gif: "Send the photo itself, as JPEG, PNG, WebP or HEIC.",
  pdf: "A PDF is taken for proof of purchase and for part invoices; otherwise send a photo.",
  video: "Send a still picture of it.",
  unknown: "Send a JPEG, PNG, WebP or HEIC picture that opens. Its name doesn’t count, only what is in it.",
};

function refuse(problem: string, fix: string): PhotoRefusal {
  return { ok: false, problem, fix };
}

function sha256(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}
