import type { Fact } from "../packet-words";
import { clean } from "./clean";
import { ink, keepTogether, type Sheet } from "./sheet";
import { type Tag, tagged, within } from "./tags";

export interface Style {
  readonly font: "text" | "bold" | "figures";
  readonly size: number;
  readonly colour: string;
  /** What a reading program announces it as; a paragraph where nothing is said. */
  readonly tag?: Tag;
}

export const styles = {
  title: { font: "bold", size: 19, colour: ink.text, tag: "H1" },
  heading: { font: "bold", size: 14, colour: ink.text, tag: "H2" },
  /** On the cover, where no section heading stands above it. */
  coverHeading: { font: "bold", size: 10, colour: ink.text, tag: "H2" },
  subheading: { font: "bold", size: 10, colour: ink.text, tag: "H3" },
  body: { font: "text", size: 9.5, colour: ink.text },
  small: { font: "text", size: 8, colour: ink.text },
  smallBold: { font: "bold", size: 8, colour: ink.text },
  note: { font: "text", size: 8, colour: ink.soft },
  figures: { font: "figures", size: 8, colour: ink.text },
} as const satisfies Record<string, Style>;

/** One paragraph in the flow; it runs on over as many pages as it needs. */
export function say(sheet: Sheet, text: string, style: Style = styles.body, gap = 4): void {
  keepTogether(sheet, 2 * style.size);
  tagged(sheet, style.tag ?? "P", () => write(sheet, text, style, sheet.left, sheet.doc.y, { width: sheet.width }));
  sheet.doc.y += gap;
}

/** A heading with room below it for what it heads. */
export function sayHeading(sheet: Sheet, text: string, style: Style = styles.subheading, room = 60): void {
  keepTogether(sheet, style.size + room);
  if (sheet.doc.y > sheet.top) sheet.doc.y += 6;
  say(sheet, text, style);
}

export function sayList(sheet: Sheet, lines: readonly string[], style: Style = styles.body): void {
  const indent = 12;
  if (lines.length === 0) return;
  within(sheet, "L", () => {
    for (const line of lines) {
      keepTogether(sheet, Math.min(heightOf(sheet, line, style, sheet.width - indent), 120));
      const { doc, left, width } = sheet;
      const y = doc.y;
      within(sheet, "LI", () => {
        tagged(sheet, "Lbl", () => write(sheet, "•", style, left, y, { lineBreak: false }));
        tagged(sheet, "LBody", () => write(sheet, line, style, left + indent, y, { width: width - indent }));
      });
      doc.y += 3;
    }
  });
}

/** Names on the left, facts on the right. */
export function sayFacts(sheet: Sheet, facts: readonly Fact[], inset = 0, termWidth = 120): void {
  const { doc, left, width } = sheet;
  const room = width - 2 * inset - termWidth;
  if (facts.length === 0) return;
  within(sheet, "Table", () => {
    for (const { term, detail } of facts) {
      keepTogether(sheet, Math.min(heightOf(sheet, detail, styles.body, room), 120));
      const y = doc.y;
      within(sheet, "TR", () => {
        const terms = () => write(sheet, term, styles.note, left + inset, y + 1, { width: termWidth - 8 });
        tagged(sheet, "TH", terms, { scope: "Row" });
        const below = doc.y;
        const details = () => write(sheet, detail, styles.body, left + inset + termWidth, y, { width: room });
        tagged(sheet, "TD", details);
        doc.y = Math.max(below, doc.y) + 3;
      });
    }
  });
}

/** Ink at a place, inside an element that is already open. */
export function write(
  sheet: Sheet,
  text: string,
  style: Style,
  x: number,
  y: number,
  options: PDFKit.Mixins.TextOptions,
): void {
  setStyle(sheet, style);
  sheet.doc.text(clean(sheet, text), x, y, options);
}

export function setStyle({ doc }: Sheet, { font, size, colour }: Style): PDFKit.PDFDocument {
  return doc.font(font).fontSize(size).fillColor(colour);
}

export function heightOf(sheet: Sheet, text: string, style: Style, width: number): number {
  setStyle(sheet, style);
  return sheet.doc.heightOfString(clean(sheet, text), { width });
}
