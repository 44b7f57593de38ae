import { join } from "node:path";
import * as fontkit from "fontkit";

const files = { text: "DejaVuSans", bold: "DejaVuSans-Bold", figures: "DejaVuSansMono" } as const;
export type FontName = keyof typeof files;

/** What pdfkit takes for a font that is open already; its types know only files and bytes. */
type OpenFont = PDFKit.Mixins.PDFFontSource;

const opened = new Map<FontName, OpenFont>();

/**
 * Opened once and kept: reading a font's tables costs more than all the rest of a packet. Fonts are embedded, so that
 * Ω, ≤ and ½ print alike everywhere.
 */
export function openFont(name: FontName): OpenFont {
  const known = opened.get(name);
  if (known !== undefined) return known;
  // From the folder the app is started in: a path found by the bundler would point into its own output.
  const path = join(process.cwd(), "node_modules", "dejavu-fonts-ttf", "ttf", `${files[name]}.ttf`);
  const font = fontkit.openSync(path) as unknown as OpenFont; // pdfkit takes whatever has a layout function
  opened.set(name, font);
  return font;
}
