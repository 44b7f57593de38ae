import type { ClaimPacket, PacketFile } from "@/lib/claims/packet";
import { fileWords, shortHash, takenWords } from "../packet-words";
import { clean, say, setStyle, styles } from "./say";
import { ink, keepTogether, type Sheet } from "./sheet";

const captionHeight = 40;
const headingHeight = 60;
const pictureGap = 5;

/** Two a page, each with its caption below it. */
export function drawPhotos(sheet: Sheet, { photos }: ClaimPacket, photoBytes: ReadonlyMap<string, Buffer>): void {
  if (photos.length === 0) say(sheet, "No photos were supplied.");
  const height = (sheet.bottom - sheet.top - headingHeight) / 2 - captionHeight - pictureGap;
  for (const photo of photos) {
    keepTogether(sheet, height + pictureGap + captionHeight);
    drawPicture(sheet, photo, photoBytes.get(photo.id), height);
    const { doc, left, width } = sheet;
    const y = doc.y;
    setStyle(sheet, styles.small).text(clean(`${photo.name}. ${fileWords(photo)}`), left, y, {
      width,
      height: 22,
      ellipsis: true,
    });
    setStyle(sheet, styles.note).text(`Taken: ${takenWords(photo)} · SHA-256 begins ${shortHash(photo)}`, { width });
    doc.y = y + captionHeight;
  }
}

function drawPicture({ doc, left, width }: Sheet, photo: PacketFile, bytes: Buffer | undefined, height: number): void {
  const y = doc.y;
  const problem =
    bytes === undefined ? "its picture is not in the store" : placeImage(doc, bytes, left, y, width, height);
  if (problem !== undefined) {
    doc.lineWidth(0.5).strokeColor(ink.line).rect(left, y, width, height).stroke();
    doc.font("text").fontSize(9).fillColor(ink.text);
    doc.text(`Not supplied: ${photo.name}, ${problem}.`, left + 12, y + height / 2, {
      width: width - 24,
      align: "center",
    });
  }
  doc.x = left;
  doc.y = y + height + pictureGap;
}

/** @returns why the picture could not be drawn, or undefined where it was */
function placeImage(
  doc: PDFKit.PDFDocument,
  bytes: Buffer,
  x: number,
  y: number,
  width: number,
  height: number,
): string | undefined {
  try {
    doc.image(bytes, x, y, { fit: [width, height], align: "center", valign: "center" });
    return undefined;
  } catch {
    return "its file is not a picture that can be printed (JPEG or PNG)";
  }
}
