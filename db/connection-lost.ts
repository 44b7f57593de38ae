/** True when the error, or what caused it, says that the connection went away rather than that the statement was wrong. */
export function isConnectionLost(error: unknown): boolean {
  for (let cause = error; cause instanceof Error; cause = cause.cause) {
    const { code } = cause as { code?: unknown };
    if (typeof code === "string" && (lostCodes.has(code) || code.startsWith("08"))) return true;
    if (/connection (terminated|error)|not queryable|server closed the connection/i.test(cause.message)) return true;
  }
  return false;
}

/** Of the operating system, of postgres.js, and of the server when it ends sessions (57P01 to 57P03). */
const lostCodes: ReadonlySet<string> = new Set([
  "ECONNRESET",
  "ECONNREFUSED",
  "EPIPE",
  "ENOENT",
  "ETIMEDOUT",
  "CONNECTION_CLOSED",
  "CONNECTION_ENDED",
  "CONNECTION_DESTROYED",
  "CONNECT_TIMEOUT",
  "57P01",
  "57P02",
  "57P03",
]);
