import { readingGauge } from "@/lib/figures/reading-gauge";
import type { OpenRange } from "@/lib/format/format-reading";
import { setStyle, styles } from "./say";
import { ink, type Sheet } from "./sheet";

export const gaugeHeight = 28;

/** Range bar between brackets, arrow at an open end, tick at the reading: one ink, nothing said by colour. */
export function drawGauge(sheet: Sheet, expected: OpenRange, value: number, x: number, y: number, width: number): void {
  const gauge = readingGauge(expected, value);
  if (gauge.kind === "no-range") return;
  const { doc } = sheet;
  const middle = y + 9;
  const across = (at: number) => x + 4 + at * (width - 8);
  const from = across(gauge.from);
  const to = across(gauge.to);
  doc.lineWidth(0.5).strokeColor(ink.line).moveTo(across(0), middle).lineTo(across(1), middle).stroke();
  doc.rect(from, middle - 2.5, to - from, 5).fill(ink.band);
  doc.lineWidth(1).strokeColor(ink.soft);
  drawEnd(doc, from, middle, gauge.lowOpen, 1);
  drawEnd(doc, to, middle, gauge.highOpen, -1);
  if (gauge.reading !== undefined) drawTick(doc, across(gauge.reading.at), middle, gauge.reading.beyond);
  setStyle(sheet, { ...styles.note, size: 6.5 });
  for (const { at, label } of gauge.ends) {
    doc.text(label, across(at) - doc.widthOfString(label) / 2, middle + 9, { lineBreak: false });
  }
}

/** A bracket, or an arrow where the range is open; `inward` points to the bar's inside. */
function drawEnd(doc: PDFKit.PDFDocument, x: number, middle: number, isOpen: boolean, inward: 1 | -1): void {
  if (isOpen) {
    doc
      .moveTo(x + 3 * inward, middle - 4)
      .lineTo(x, middle)
      .lineTo(x + 3 * inward, middle + 4)
      .stroke();
    return;
  }
  const arm = x + 3 * inward;
  doc
    .moveTo(arm, middle - 5)
    .lineTo(x, middle - 5)
    .lineTo(x, middle + 5)
    .lineTo(arm, middle + 5)
    .stroke();
}

function drawTick(doc: PDFKit.PDFDocument, x: number, middle: number, beyond: "left" | "right" | undefined): void {
  doc
    .lineWidth(2)
    .strokeColor(ink.text)
    .moveTo(x, middle - 8)
    .lineTo(x, middle + 8)
    .stroke();
  if (beyond === undefined) return;
  const outward = beyond === "left" ? -1 : 1;
  const root = x + 2 * outward;
  doc
    .lineWidth(1)
    .moveTo(root, middle - 3)
    .lineTo(root + 3 * outward, middle)
    .lineTo(root, middle + 3)
    .stroke();
}
