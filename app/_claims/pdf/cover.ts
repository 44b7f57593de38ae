import type { ClaimPacket, SectionKey } from "@/lib/claims/packet";
import { formatCounted } from "@/lib/format/format-count";
import { claimFacts, claimName, dateFacts, sectionHolds, unitFacts } from "../packet-words";
import { say, sayFacts, sayHeading, setStyle, styles } from "./say";
import { ink, keepTogether, type Sheet } from "./sheet";

/** Where the page number of a section belongs, to be filled in once it is known. */
export interface ContentsLine {
  readonly key: SectionKey;
  readonly pageIndex: number;
  readonly y: number;
}

export function drawCover(sheet: Sheet, packet: ClaimPacket): readonly ContentsLine[] {
  say(sheet, `Warranty claim to ${packet.cover.payer}`, styles.note, 2);
  say(sheet, claimName(packet.cover), styles.title, 10);
  drawPlate(sheet, () => sayFacts(sheet, unitFacts(packet), 12));
  sayFacts(sheet, claimFacts(packet));
  sayHeading(sheet, "Dates on file");
  const dates = dateFacts(packet);
  if (dates.length === 0) say(sheet, "No dates are on file.");
  sayFacts(sheet, dates);
  sayHeading(sheet, "Contents", styles.subheading, 16 * packet.index.length);
  const lines = drawContents(sheet, packet);
  const missing = packet.notSupplied.length;
  say(
    sheet,
    missing === 0
      ? "Nothing that this claim needs is missing."
      : `Not supplied: ${formatCounted(missing, "thing")}, named under Manifest.`,
  );
  return lines;
}

/** Writes the page of each section at the right edge of its line. */
export function fillContents(
  sheet: Sheet,
  lines: readonly ContentsLine[],
  pages: ReadonlyMap<SectionKey, number>,
): void {
  const { doc, left, width } = sheet;
  for (const { key, pageIndex, y } of lines) {
    doc.switchToPage(pageIndex);
    const page = String(pages.get(key) ?? "");
    setStyle(sheet, styles.figures);
    doc.text(page, left + width - doc.widthOfString(page), y, { lineBreak: false });
  }
}

function drawContents(sheet: Sheet, packet: ClaimPacket): readonly ContentsLine[] {
  const { doc, left, width } = sheet;
  const lines = packet.index.map((section): ContentsLine => {
    keepTogether(sheet, 16);
    const y = doc.y;
    const holds = sectionHolds(section);
    const words = `${section.number}. ${section.title}${holds === undefined ? "" : `, ${holds}`}`;
    setStyle(sheet, styles.body).text(words, left, y, { goTo: section.key, width: width - 40 });
    doc.y += 3;
    return { key: section.key, pageIndex: doc.bufferedPageRange().count - 1, y };
  });
  doc.y += 6;
  return lines;
}

/** The rating plate: a hairline around the facts with one corner clipped. */
function drawPlate({ doc, left, width }: Sheet, drawFacts: () => void): void {
  const top = doc.y;
  const cut = 12;
  doc.y = top + 10;
  drawFacts();
  const end = doc.y + 7;
  const right = left + width;
  doc.lineWidth(1).strokeColor(ink.line);
  doc.polygon([left, top], [right - cut, top], [right, top + cut], [right, end], [left, end]).stroke();
  doc.x = left;
  doc.y = end + 12;
}
