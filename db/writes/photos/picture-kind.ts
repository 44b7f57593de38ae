/** What bytes are by their own beginning, whatever the file is called. */
export type PictureKind = keyof typeof kindNames;

const kindNames = {
  jpeg: "a JPEG picture",
  png: "a PNG picture",
  webp: "a WebP picture",
  heic: "a HEIC picture",
  avif: "an AVIF picture",
  gif: "a GIF animation",
  tiff: "a TIFF picture",
  bmp: "a BMP picture",
  svg: "an SVG drawing, which is a program as much as a picture",
  html: "a web page",
  pdf: "a PDF document",
  archive: "an archive or an office document",
  video: "a video",
  unknown: "nothing that is known here",
} as const;

export function pictureKind(bytes: Buffer): PictureKind {
  const starts = (text: string, at = 0) => bytes.toString("latin1", at, at + text.length) === text;
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return "jpeg";
  if (starts("\x89PNG\r\n\x1a\n")) return "png";
  if (starts("RIFF") && starts("WEBP", 8)) return "webp";
  if (starts("GIF87a") || starts("GIF89a")) return "gif";
  if (starts("II*\0") || starts("MM\0*")) return "tiff";
  if (starts("BM")) return "bmp";
  if (starts("%PDF-")) return "pdf";
  if (starts("PK\x03\x04")) return "archive";
  if (starts("ftyp", 4)) return brandKind(bytes.toString("latin1", 8, 32));
  const text = bytes
    .toString("utf8", 0, 1024)
    .replace(/^\uFEFF/, "")
    .trimStart()
    .toLowerCase();
  if (/^(<\?xml[^>]*>\s*|<!--[\s\S]*?-->\s*|<!doctype svg[^>]*>\s*)*<svg[\s>]/.test(text)) return "svg";
  if (/^<(!doctype html|html|head|body|script)/.test(text)) return "html";
  return "unknown";
}

export function pictureKindName(kind: PictureKind): string {
  return kindNames[kind];
}

/** The first brand of the file, then those it also keeps to; ISO/IEC 23008-12. */
function brandKind(brands: string): PictureKind {
  if (/^avi[fs]/.test(brands)) return "avif";
  if (/^(heic|heix|heim|heis|hevc|hevx)|^mi[fs]1.*hei[cx]/s.test(brands)) return "heic";
  return "video";
}
