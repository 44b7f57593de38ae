// Dirt of the kinds that exports of service companies carry, at the shares that the trade reports (common practice, no
// source). Intake takes all of it in; where it costs a failure its unit or its cause, the observable share falls.
import { drawWhole, happens } from "./draws";
import type { Random } from "./random";

/** Chance of each kind on one closed row. */
export const dirtShares = {
  serial_blank: 0.02,
  serial_wrong: 0.015,
  suffix_missing: 0.14,
  request_missing: 0.015,
  visit_missing: 0.02,
  component_missing: 0.01,
  cause_unknown: 0.008,
  invoice_missing: 0.03,
} as const;
export type DirtKind = keyof typeof dirtShares;

/**
 * Share of closed failures that the files still tie to a unit of the register and to their component as its own fault.
 * Each kind is drawn apart from the others and from the failure, so the product is exact.
 */
export const observableShare =
  (1 - dirtShares.serial_blank) *
  (1 - dirtShares.serial_wrong) *
  (1 - dirtShares.component_missing) *
  (1 - dirtShares.cause_unknown);

export function drawDirt(random: Random): Set<DirtKind> {
  const kinds = new Set<DirtKind>();
  for (const kind of Object.keys(dirtShares) as DirtKind[]) {
    // Object.keys loses the key type
    if (happens(random, dirtShares[kind])) kinds.add(kind);
  }
  // A serial that is lost or wrong leaves the model as the only tie, so those rows keep it whole.
  if (kinds.has("serial_blank")) kinds.delete("serial_wrong");
  if (kinds.has("serial_blank") || kinds.has("serial_wrong")) kinds.delete("suffix_missing");
  return kinds;
}

/** The serial as somebody mistyped it: letter O for a zero, or two digits changed places. */
export function mistyped(random: Random, serial: string): string {
  const zero = serial.lastIndexOf("0");
  if (zero > 0) return `${serial.slice(0, zero)}O${serial.slice(zero + 1)}`;
  const at = drawWhole(random, 1, serial.length - 1);
  return `${serial.slice(0, at)}X${serial.slice(at + 1)}`;
}
