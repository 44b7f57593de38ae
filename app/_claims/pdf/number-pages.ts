import { setStyle, styles, write } from "./say";
import type { Sheet } from "./sheet";
import { ornament } from "./tags";

/** "Page 2 of 7" on every page, written last, when the number of pages is known. */
export function numberPages(sheet: Sheet, title: string): void {
  const { doc, left, width, bottom } = sheet;
  const { count } = doc.bufferedPageRange();
  for (let index = 0; index < count; index++) {
    doc.switchToPage(index);
    const { bottom: kept } = doc.page.margins;
    // Text below the margin would open a page of its own.
    doc.page.margins.bottom = 0;
    const words = `Page ${index + 1} of ${count}`;
    const y = bottom + 18;
    setStyle(sheet, styles.note);
    const numberWidth = doc.widthOfString(words);
    ornament(
      sheet,
      () => {
        write(sheet, title, styles.note, left, y, { width: width - numberWidth - 24, height: 10, ellipsis: true });
        write(sheet, words, styles.note, left + width - numberWidth, y, { lineBreak: false });
      },
      "Pagination",
    );
    doc.page.margins.bottom = kept;
  }
}
