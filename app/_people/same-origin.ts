/**
 * Whether a request that changes something comes from a page of this site. Browsers send Origin with every such request
 * and pages cannot forge it; a request without one comes from no page of ours. The server goes by the host that was
 * asked for, which behind a proxy is the one that the proxy names.
 */
export function comesFromThisSite(headers: Headers): boolean {
  const site = headers.get("sec-fetch-site");
  if (site !== null && site !== "same-origin") return false;
  const origin = headers.get("origin");
  if (origin === null || !URL.canParse(origin)) return false;
  return new URL(origin).host === hostOf(headers);
}

function hostOf(headers: Headers): string | null {
  return headers.get("x-forwarded-host")?.split(",").at(-1)?.trim() ?? headers.get("host");
}
