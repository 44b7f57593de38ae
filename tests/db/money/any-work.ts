/** Covered work without its pay, filtered by nothing. */
export const anyWork = {
  leak: undefined,
  payer: undefined,
  component: undefined,
  within: undefined,
  from: undefined,
  to: undefined,
} as const;
