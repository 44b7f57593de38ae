import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

export interface PdfPage {
  /** As a reader gives it, spaces and line breaks as one space. */
  readonly text: string;
  /** Pieces of text that do not lie whole on the paper. */
  readonly cut: readonly string[];
}

/** Opens a PDF with a reader that did not make it. */
export async function readPdf(bytes: Uint8Array): Promise<readonly PdfPage[]> {
  const reading = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 });
  const document = await reading.promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++)
    pages.push(await readPage(await document.getPage(number)));
  await reading.destroy();
  return pages;
}

type Page = Awaited<ReturnType<Awaited<ReturnType<typeof getDocument>["promise"]>["getPage"]>>;

async function readPage(page: Page): Promise<PdfPage> {
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const { items } = await page.getTextContent();
  let text = "";
  const cut: string[] = [];
  for (const item of items) {
    if (!("str" in item)) continue;
    text += `${item.str}${item.hasEOL ? "\n" : ""}`;
    const x: number = item.transform[4];
    const y: number = item.transform[5];
    const isWhole = x >= left && x + item.width <= right + 0.5 && y >= bottom && y + item.height <= top + 0.5;
    if (item.str.trim() !== "" && !isWhole) cut.push(item.str);
  }
  return { text: text.replaceAll(/\s+/g, " "), cut };
}
