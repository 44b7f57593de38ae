import readExif from "exif-reader";
import type { ClockTime } from "./photo-reading";

/** When the camera says it took the picture; undefined where it does not say, or says nothing that is a time. */
export function captureTime(exif: Buffer | undefined): ClockTime | undefined {
  if (exif === undefined) return undefined;
  try {
    const { Photo, Image } = readExif(exif);
    const at = Photo?.DateTimeOriginal ?? Photo?.DateTimeDigitized ?? Image?.DateTime;
    // The reader takes the camera's clock for UTC, so its UTC digits are the clock's.
    if (!(at instanceof Date) || Number.isNaN(at.getTime())) return undefined;
    const year = at.getUTCFullYear();
    if (year < 1990 || year > 2200) return undefined;
    return { clock: at.toISOString().slice(0, 19), offset: offsetOf(Photo?.OffsetTimeOriginal) };
  } catch {
    return undefined;
  }
}

function offsetOf(text: unknown): string | undefined {
  return typeof text === "string" && /^[+-](0\d|1[0-4]):[0-5]\d$/.test(text) ? text : undefined;
}
