import { type FunnelCell, ratioLimits } from "@/lib/signals/cell-funnel";

/** What the funnel says of one group. */
export function limitsWords({ observed, expected }: FunnelCell, spread: number): string {
  const { lowOuter, lowInner, inner, outer } = ratioLimits(expected, spread);
  if (observed > outer) return "above what chance gives";
  if (observed > inner) return "perhaps above";
  if (observed < lowOuter) return "below what chance gives";
  if (observed < lowInner) return "perhaps below";
  return "no sign of a difference";
}
