/** A position for a drawing's x, y, width or height: shares of the plot scale with the page, and text beside them does not. */
export function percentOfPlot(share: number): string {
  return `${Math.round(share * 100_000) / 1000}%`;
}
