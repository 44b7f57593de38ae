/** "claim-C-2025-0001": letters, digits and dashes, which every system takes. */
export function claimFileName(claimNumber: string): string {
  return `claim-${claimNumber.replaceAll(/[^A-Za-z0-9-]/g, "").slice(0, 60)}`;
}
