import type { ClaimPacket, PacketFile } from "@/lib/claims/packet";
import { capitalised } from "@/lib/format/capitalised";
import { fileWords, photoAlt, shortHash, takenWords } from "../packet-words";
import { heightOf, say, styles, write } from "./say";
import { ink, keepTogether, type Sheet } from "./sheet";
import { ornament, tagged } from "./tags";

const headingHeight = 60;
const gap = 5;
const lineHeight = 12;
/** A caption may take room from its picture, down to this height; what is longer still is in the claim's JSON. */
const leastPicture = 120;

/** Two a page, each with its caption below it. */
export function drawPhotos(sheet: Sheet, packet: ClaimPacket, photoBytes: ReadonlyMap<string, Buffer>): void {
  const { photos } = packet;
  if (photos.length === 0) say(sheet, "No photos were supplied.");
  const slot = (sheet.bottom - sheet.top - headingHeight) / 2;
  for (const photo of photos) {
    keepTogether(sheet, slot);
    const { doc, left, width } = sheet;
    const words = `${photo.name}. ${fileWords(photo)}`;
    const room = slot - leastPicture - lineHeight - 3 * gap;
    const captionHeight = Math.min(heightOf(sheet, words, styles.small, width) + 1, room);
    const end = doc.y + slot;
    drawPicture(sheet, photo, photoBytes.get(photo.id), slot - captionHeight - lineHeight - 3 * gap);
    const y = doc.y;
    const caption = { width, height: captionHeight, ellipsis: true };
    tagged(sheet, "P", () => write(sheet, words, styles.small, left, y, caption));
    const facts = `${capitalised(takenWords(photo, packet))} · SHA-256 begins ${shortHash(photo)}`;
    tagged(sheet, "P", () =>
      write(sheet, facts, styles.note, left, y + captionHeight + 1, { width, height: lineHeight }),
    );
    doc.y = end;
  }
}

function drawPicture(sheet: Sheet, photo: PacketFile, bytes: Buffer | undefined, height: number): void {
  const { doc, left, width } = sheet;
  const y = doc.y;
  const problem = bytes === undefined ? "its picture is not in the store" : placeImage(sheet, photo, bytes, height);
  if (problem !== undefined) {
    ornament(sheet, () => doc.lineWidth(0.5).strokeColor(ink.line).rect(left, y, width, height).stroke());
    const words = `Not supplied: ${photo.name}, ${problem}.`;
    const options = { width: width - 24, align: "center" } as const;
    tagged(sheet, "P", () => write(sheet, words, styles.body, left + 12, y + height / 2, options));
  }
  doc.x = left;
  doc.y = y + height + gap;
}

/** @returns why the picture could not be drawn, or undefined where it was */
function placeImage(sheet: Sheet, photo: PacketFile, bytes: Buffer, height: number): string | undefined {
  const { doc, left, width } = sheet;
  const y = doc.y;
  let problem: string | undefined;
  const draw = () => {
    try {
      doc.image(bytes, left, y, { fit: [width, height], align: "center", valign: "center" });
    } catch {
      problem = "its file is not a picture that can be printed (JPEG or PNG)";
    }
  };
  tagged(sheet, "Figure", draw, { alt: photoAlt(photo), bbox: [left, y, left + width, y + height] });
  return problem;
}
