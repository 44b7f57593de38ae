/** Of one request. Whoever has more sends several, or a file. */
export const mostBytes = 10_000_000;
export const mostJobs = 1_000;
/** Of an Idempotency-Key. */
export const longestKey = 200;
