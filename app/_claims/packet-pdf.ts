import type { ClaimPacket, PacketSection, SectionKey } from "@/lib/claims/packet";
import { packetTitle, sectionLine } from "./packet-words";
import { drawCover, fillContents } from "./pdf/cover";
import { numberPages } from "./pdf/number-pages";
import { drawPhotos } from "./pdf/photos";
import { drawReadings } from "./pdf/readings";
import { say, sayHeading, styles } from "./pdf/say";
import { drawCoverage, drawDocuments, drawHistory, drawManifest, drawMoney, drawStory } from "./pdf/sections";
import { closeSheet, keepTogether, openSheet, type Paper, type Sheet } from "./pdf/sheet";
import { ornament, within } from "./pdf/tags";

interface Options {
  readonly paper: Paper;
  /** Stands in the file as its day of making: equal packets of one moment are equal to the byte. */
  readonly createdAt: Date;
}

/** The packet as a file to send. A photo whose bytes are not given is said to be missing, never left out. */
export async function packetPdf(
  packet: ClaimPacket,
  photoBytes: ReadonlyMap<string, Buffer>,
  { paper, createdAt }: Options,
): Promise<Buffer> {
  if (Number.isNaN(createdAt.getTime())) throw new RangeError("createdAt must be a date");
  const title = packetTitle(packet);
  const sheet = openSheet({ paper, title, author: packet.cover.servicer, createdAt });
  const drawings: Readonly<Record<SectionKey, () => void>> = {
    coverage: () => drawCoverage(sheet, packet),
    story: () => drawStory(sheet, packet),
    readings: () => drawReadings(sheet, packet),
    money: () => drawMoney(sheet, packet),
    photos: () => drawPhotos(sheet, packet, photoBytes),
    documents: () => drawDocuments(sheet, packet),
    history: () => drawHistory(sheet, packet),
    manifest: () => drawManifest(sheet, packet),
  };
  const contents = drawCover(sheet, packet);
  sheet.doc.addPage();
  const pages = new Map<SectionKey, number>();
  for (const section of packet.index) {
    within(sheet, "Sect", () => {
      openSection(sheet, packet, section);
      pages.set(section.key, sheet.doc.bufferedPageRange().count);
      drawings[section.key]();
    });
    sheet.doc.y += 14;
  }
  fillContents(sheet, contents, pages);
  numberPages(sheet, title);
  return await closeSheet(sheet);
}

/** Title and first lines stay on one page. */
function openSection(sheet: Sheet, packet: ClaimPacket, section: PacketSection): void {
  const { doc, left, width, top } = sheet;
  // Photos begin a page, so that two stand on each; a first reading is as tall as its gauge and sources.
  if (section.key === "photos" && section.entries > 0 && doc.y > top) doc.addPage();
  keepTogether(sheet, section.key === "readings" ? 230 : 170);
  if (doc.y > top) {
    ornament(sheet, () => {
      doc.lineWidth(0.75).moveTo(left, doc.y);
      doc.lineTo(left + width, doc.y).stroke("#000000");
    });
    doc.y += 8;
  }
  doc.outline.addItem(`${section.number}. ${section.title}`);
  doc.addNamedDestination(section.key, "XYZ", left, doc.y, null);
  say(sheet, sectionLine(packet, section), styles.note, 2);
  sayHeading(sheet, section.title, styles.heading, 0);
}
