import PDFDocument from "pdfkit";
import { openFont } from "./fonts";

export type Paper = "A4" | "LETTER";

/** A document with the measures of its pages, in points. */
export interface Sheet {
  readonly doc: PDFKit.PDFDocument;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
  /** Elements that are open, the innermost last; see tags.ts. */
  readonly tags: PDFKit.PDFStructureElement[];
  /** Letters that no font of this file has; see clean.ts. */
  readonly unprintable: Set<string>;
}

export interface SheetNotes {
  readonly paper: Paper;
  readonly title: string;
  readonly author: string;
  readonly createdAt: Date;
}

export const ink = { text: "#1e2a2b", soft: "#4a5657", line: "#8a9090", hairline: "#c4c8c8", band: "#dde2e2" } as const;

const margins = { top: 48, bottom: 60, left: 48, right: 48 } as const;

export function openSheet({ paper, title, author, createdAt }: SheetNotes): Sheet {
  const doc = new PDFDocument({
    size: paper,
    margins,
    bufferPages: true,
    tagged: true,
    pdfVersion: "1.7",
    lang: "en",
    displayTitle: true,
    // A default font would be compared with every other at each change of font. Null is taken, though not by the types.
    font: null as unknown as string,
    info: { Title: title, Author: author, Creator: "Ohmsworth", Producer: "Ohmsworth", CreationDate: createdAt },
  });
  for (const name of ["text", "bold", "figures"] as const) doc.registerFont(name, openFont(name));
  const { width, height } = doc.page;
  const root = doc.struct("Document");
  doc.addStructure(root);
  return {
    doc,
    left: margins.left,
    width: width - margins.left - margins.right,
    top: margins.top,
    bottom: height - margins.bottom,
    tags: [root],
    unprintable: new Set(),
  };
}

/** Turns the page where less than `height` is left of it. */
export function keepTogether({ doc, bottom, left, top }: Sheet, height: number): void {
  if (doc.y + height > bottom && doc.y > top) doc.addPage();
  doc.x = left;
}

/** Ends the document and gives its bytes. */
export function closeSheet({ doc }: Sheet): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on("data", (chunk: Buffer) => chunks.push(chunk));
    doc.on("end", () => resolve(Buffer.concat(chunks)));
    doc.on("error", reject);
    doc.end();
  });
}
