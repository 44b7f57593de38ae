/** "65.00", as it is typed into a field: without currency and without separators. */
export function centsAsTyped(cents: number): string {
  return `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, "0")}`;
}
