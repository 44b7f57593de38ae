import { createHmac, timingSafeEqual } from "node:crypto";
import { isServedSecurely } from "./own-origin";

export function sessionCookieName(): string {
  return isServedSecurely() ? "__Host-ohmsworth-session" : "ohmsworth-session";
}

/**
 * The mark of the session that a Cookie header holds, where this site has signed it; undefined for any other. It may have
 * ended since, so it tells one browser from another and opens nothing by itself.
 */
export function sessionMarkIn(cookies: string | undefined): string | undefined {
  const start = `${sessionCookieName()}=`;
  const value = cookies
    ?.split(";")
    .map((cookie) => cookie.trim())
    .find((cookie) => cookie.startsWith(start))
    ?.slice(start.length);
  const [mark, seal] = decoded(value ?? "").split(".");
  if (mark === undefined || mark === "" || seal === undefined) return undefined;
  const wanted = createHmac("sha256", process.env.OHMSWORTH_SECRET ?? "")
    .update(mark)
    .digest();
  const given = Buffer.from(seal, "base64");
  return given.length === wanted.length && timingSafeEqual(given, wanted) ? mark : undefined;
}

function decoded(value: string): string {
  try {
    return decodeURIComponent(value);
  } catch {
    return "";
  }
}
