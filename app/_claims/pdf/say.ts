import type { Fact } from "../packet-words";
import { ink, keepTogether, type Sheet } from "./sheet";

export interface Style {
  readonly font: "text" | "bold" | "figures";
  readonly size: number;
  readonly colour: string;
}

export const styles = {
  title: { font: "bold", size: 19, colour: ink.text },
  heading: { font: "bold", size: 14, colour: ink.text },
  subheading: { font: "bold", size: 10, colour: ink.text },
  body: { font: "text", size: 9.5, colour: ink.text },
  small: { font: "text", size: 8, colour: ink.text },
  smallBold: { font: "bold", size: 8, colour: ink.text },
  note: { font: "text", size: 8, colour: ink.soft },
  figures: { font: "figures", size: 8, colour: ink.text },
} as const satisfies Record<string, Style>;

/** One paragraph in the flow; it runs on over as many pages as it needs. */
export function say(sheet: Sheet, text: string, style: Style = styles.body, gap = 4): void {
  keepTogether(sheet, 2 * style.size);
  setStyle(sheet, style).text(clean(text), sheet.left, sheet.doc.y, { width: sheet.width });
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
  for (const line of lines) {
    keepTogether(sheet, Math.min(heightOf(sheet, line, style, sheet.width - indent), 120));
    const { doc, left, width } = sheet;
    const y = doc.y;
    setStyle(sheet, style).text("•", left, y, { lineBreak: false });
    doc.text(clean(line), left + indent, y, { width: width - indent });
    doc.y += 3;
  }
}

/** Names on the left, facts on the right. */
export function sayFacts(sheet: Sheet, facts: readonly Fact[], inset = 0, termWidth = 120): void {
  const { doc, left, width } = sheet;
  const room = width - 2 * inset - termWidth;
  for (const { term, detail } of facts) {
    keepTogether(sheet, Math.min(heightOf(sheet, detail, styles.body, room), 120));
    const y = doc.y;
    setStyle(sheet, styles.note).text(term, left + inset, y + 1, { width: termWidth - 8 });
    const below = doc.y;
    setStyle(sheet, styles.body).text(clean(detail), left + inset + termWidth, y, { width: room });
    doc.y = Math.max(below, doc.y) + 3;
  }
}

export function setStyle({ doc }: Sheet, { font, size, colour }: Style): PDFKit.PDFDocument {
  return doc.font(font).fontSize(size).fillColor(colour);
}

export function heightOf(sheet: Sheet, text: string, style: Style, width: number): number {
  return setStyle(sheet, style).heightOfString(clean(text), { width });
}

/** Control characters of pasted text have no glyph; ends of lines stay. */
export function clean(text: string): string {
  return text.replace(/\r\n?/g, "\n").replace(/[^\P{Cc}\n]/gu, " ");
}
