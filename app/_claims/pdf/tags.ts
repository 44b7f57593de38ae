// The tree that reading programs follow through the file: every piece of ink belongs to one of its elements, or is
// marked as an ornament that they pass over.
import type { Sheet } from "./sheet";

export type Tag =
  | "Sect"
  | "H1"
  | "H2"
  | "H3"
  | "P"
  | "L"
  | "LI"
  | "Lbl"
  | "LBody"
  | TableTag
  | "TOC"
  | "TOCI"
  | "Figure";
type TableTag = "Table" | "TR" | "TH" | "TD";

interface TagNotes {
  readonly alt?: string;
  readonly scope?: "Column" | "Row";
  /** Left, top, right, bottom in the sheet's own measure. */
  readonly bbox?: [number, number, number, number];
}

/** Opens an element, lets `build` fill it with others, and closes it. */
export function within(sheet: Sheet, tag: Tag, build: () => void, notes: TagNotes = {}): void {
  const element = openElement(sheet, tag, notes);
  sheet.tags.push(element);
  build();
  sheet.tags.pop();
  element.end();
}

/** An element whose content is the ink that `draw` leaves; over as many pages as it needs. */
export function tagged(sheet: Sheet, tag: Tag, draw: () => void, notes: TagNotes = {}): void {
  const { doc } = sheet;
  const content = doc.markStructureContent(tag);
  draw();
  doc.endMarkedContent();
  parentOf(sheet).add(doc.struct(tag, notes, [content]));
}

/** Rules, frames, and what is repeated on every page. */
export function ornament({ doc }: Sheet, draw: () => void, type: "Layout" | "Pagination" = "Layout"): void {
  doc.markContent("Artifact", { type });
  draw();
  doc.endMarkedContent();
}

/** An element that stays open until its maker ends it; for what is written last. */
export function openElement(sheet: Sheet, tag: Tag, notes: TagNotes = {}): PDFKit.PDFStructureElement {
  const element = sheet.doc.struct(tag, notes);
  parentOf(sheet).add(element);
  return element;
}

function parentOf({ tags }: Sheet): PDFKit.PDFStructureElement {
  const parent = tags.at(-1);
  if (parent === undefined) throw new RangeError("tags: no element is open");
  return parent;
}
