import type { ClaimPacket, SectionKey } from "@/lib/claims/packet";
import { formatCounted } from "@/lib/format/format-count";
import { claimFacts, claimName, dateFacts, sectionHolds, unitFacts } from "../packet-words";
import { say, sayFacts, sayHeading, setStyle, styles, write } from "./say";
import { ink, keepTogether, type Sheet } from "./sheet";
import { openElement, ornament, tagged } from "./tags";

/** Where the page number of a section belongs, to be filled in once it is known. */
export interface ContentsLine {
  readonly key: SectionKey;
  readonly pageIndex: number;
  readonly y: number;
  readonly element: PDFKit.PDFStructureElement;
}

export function drawCover(sheet: Sheet, packet: ClaimPacket): readonly ContentsLine[] {
  say(sheet, `Warranty claim to ${packet.cover.payer}`, styles.note, 2);
  say(sheet, claimName(packet.cover), styles.title, 10);
  drawPlate(sheet, () => sayFacts(sheet, unitFacts(packet), 12));
  sayFacts(sheet, claimFacts(packet));
  sayHeading(sheet, "Dates on file", styles.coverHeading);
  const dates = dateFacts(packet);
  if (dates.length === 0) say(sheet, "No dates are on file.");
  sayFacts(sheet, dates);
  sayHeading(sheet, "Contents", styles.coverHeading, 16 * packet.index.length);
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
  for (const { key, pageIndex, y, element } of lines) {
    doc.switchToPage(pageIndex);
    const page = String(pages.get(key) ?? "");
    setStyle(sheet, styles.figures);
    const x = left + width - doc.widthOfString(page);
    sheet.tags.push(element);
    tagged(sheet, "P", () => write(sheet, page, styles.figures, x, y, { lineBreak: false }));
    sheet.tags.pop();
    element.end();
  }
}

function drawContents(sheet: Sheet, packet: ClaimPacket): readonly ContentsLine[] {
  const { doc, left, width } = sheet;
  const contents = openElement(sheet, "TOC");
  sheet.tags.push(contents);
  const lines = packet.index.map((section): ContentsLine => {
    keepTogether(sheet, 16);
    const y = doc.y;
    const holds = sectionHolds(section);
    const words = `${section.number}. ${section.title}${holds === undefined ? "" : `, ${holds}`}`;
    const element = openElement(sheet, "TOCI");
    const link = doc.struct("Link", { alt: words }, () =>
      write(sheet, words, styles.body, left, y, { goTo: section.key, width: width - 40 }),
    );
    element.add(link);
    link.end();
    doc.y += 3;
    return { key: section.key, pageIndex: doc.bufferedPageRange().count - 1, y, element };
  });
  sheet.tags.pop();
  doc.y += 6;
  return lines;
}

/** The rating plate: a hairline around the facts with one corner clipped. */
function drawPlate(sheet: Sheet, drawFacts: () => void): void {
  const { doc, left, width } = sheet;
  const top = doc.y;
  const cut = 12;
  doc.y = top + 10;
  drawFacts();
  const end = doc.y + 7;
  const right = left + width;
  ornament(sheet, () => {
    doc.lineWidth(1).strokeColor(ink.line);
    doc.polygon([left, top], [right - cut, top], [right, top + cut], [right, end], [left, end]).stroke();
  });
  doc.x = left;
  doc.y = end + 12;
}
