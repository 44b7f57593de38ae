import { join } from "node:path";
import PDFDocument from "pdfkit";

export type Paper = "A4" | "LETTER";

/** A document with the measures of its pages, in points. */
export interface Sheet {
  readonly doc: PDFKit.PDFDocument;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

export interface SheetNotes {
  readonly paper: Paper;
  readonly title: string;
  readonly author: string;
  readonly createdAt: Date;
}

export const ink = { text: "#1e2a2b", soft: "#4a5657", line: "#8a9090", hairline: "#c4c8c8", band: "#dde2e2" } as const;

const margins = { top: 48, bottom: 60, left: 48, right: 48 } as const;

/** Fonts are embedded, so that Ω, ≤ and ½ print alike everywhere. */
export function openSheet({ paper, title, author, createdAt }: SheetNotes): Sheet {
  const doc = new PDFDocument({
    size: paper,
    margins,
    bufferPages: true,
    pdfVersion: "1.7",
    lang: "en",
    displayTitle: true,
    font: fontFile("DejaVuSans"),
    info: { Title: title, Author: author, Creator: "Ohmsworth", Producer: "Ohmsworth", CreationDate: createdAt },
  });
  doc.registerFont("text", fontFile("DejaVuSans"));
  doc.registerFont("bold", fontFile("DejaVuSans-Bold"));
  doc.registerFont("figures", fontFile("DejaVuSansMono"));
  const { width, height } = doc.page;
  return {
    doc,
    left: margins.left,
    width: width - margins.left - margins.right,
    top: margins.top,
    bottom: height - margins.bottom,
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

/** From the folder the app is started in: a path found by the bundler would point into its own output. */
function fontFile(name: string): string {
  return join(process.cwd(), "node_modules", "dejavu-fonts-ttf", "ttf", `${name}.ttf`);
}
