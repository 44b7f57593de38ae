import { requirePositive, requireWholeNumber } from "@/lib/statistics/require";
import type { DemandPaths } from "./paths";

const most = 0xffff;

/**
 * Futures as two bytes a month, least first, future by future. A month of more than 65,535 pieces is kept as that many.
 * @throws RangeError for futures of different lengths
 */
export function packedFutures(paths: DemandPaths): Uint8Array {
  const months = paths[0]?.length ?? 0;
  const bytes = new Uint8Array(2 * months * paths.length);
  const view = new DataView(bytes.buffer);
  for (const [future, row] of paths.entries()) {
    if (row.length !== months)
      throw new RangeError(`paths[${future}] must hold ${months} months like paths[0]; it holds ${row.length}`);
    for (const [month, count] of row.entries()) {
      view.setUint16(2 * (future * months + month), Math.min(most, count), true);
    }
  }
  return bytes;
}

/** The futures again. @throws RangeError where the bytes are no whole number of futures */
export function unpackedFutures(bytes: Uint8Array, months: number): DemandPaths {
  requireWholeNumber("months", months);
  requirePositive("months", months);
  const futures = bytes.length / (2 * months);
  requireWholeNumber("futures in bytes", futures);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Array.from({ length: futures }, (_, future) =>
    Array.from({ length: months }, (_, month) => view.getUint16(2 * (future * months + month), true)),
  );
}
