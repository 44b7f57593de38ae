/** True when the error, or what caused it, says that the connection went away rather than that the statement was wrong. */
export function isConnectionLost(error: unknown): boolean {
  return causes(error).some(
    ({ code, message }) =>
      lostCodes.has(code) || code.startsWith("08") || /connection terminated|not queryable/i.test(message),
  );
}

/** True when a statement ran into its time limit, whether the server stopped it or did not answer at all. */
export function isTimeout(error: unknown): boolean {
  return isUnanswered(error) || causes(error).some(({ code }) => code === "57014");
}

export function isUnanswered(error: unknown): boolean {
  return causes(error).some(({ message }) => message === "Query read timeout");
}

/** Of the operating system, and of the server when it ends sessions or is not up yet (57P01 to 57P03). */
const lostCodes: ReadonlySet<string> = new Set([
  "ECONNRESET",
  "ECONNREFUSED",
  "EPIPE",
  "ENOENT",
  "ETIMEDOUT",
  "57P01",
  "57P02",
  "57P03",
]);

function causes(error: unknown): { code: string; message: string }[] {
  if (!(error instanceof Error)) return [];
  const { code } = error as { code?: unknown };
  return [{ code: typeof code === "string" ? code : "", message: error.message }, ...causes(error.cause)];
}
