import { isAPIError } from "better-auth/api";
import { parseSetCookieHeader } from "better-auth/cookies";
import { headers } from "next/headers";
import { normalPassword } from "@/lib/people/password-rules";
import { signInLibrary } from "./sign-in-library";

export interface FreshSession {
  readonly personId: string;
  readonly sessionId: string;
  /** To be set in the browser, once it is settled that the session may be used. */
  readonly cookies: readonly { readonly name: string; readonly value: string; readonly options: CookieOptions }[];
}

interface CookieOptions {
  readonly httpOnly: true;
  readonly sameSite: "lax";
  readonly secure: boolean;
  readonly path: "/";
  readonly maxAge?: number;
}

/** A new session under a new mark for whoever knows the password; undefined for anybody else, after as long a time. */
export async function freshSession(typed: {
  readonly email: string;
  readonly password: string;
}): Promise<FreshSession | undefined> {
  const { api, $context } = await signInLibrary();
  const body = { email: typed.email.trim().toLowerCase(), password: normalPassword(typed.password) };
  try {
    const made = await api.signInEmail({ body, headers: await headers(), returnHeaders: true });
    const found = await (await $context).internalAdapter.findSession(made.response.token);
    if (found === null) return undefined;
    return { personId: found.user.id, sessionId: found.session.id, cookies: cookiesOf(made.headers) };
  } catch (error) {
    if (isAPIError(error) && Number(error.statusCode) < 500) return undefined;
    throw error;
  }
}

function cookiesOf(answered: Headers): FreshSession["cookies"] {
  return [...parseSetCookieHeader(answered.get("set-cookie") ?? "")]
    .filter(([, { value }]) => value !== "")
    .map(([name, { value, secure, "max-age": maxAge }]) => ({
      name,
      value: decodeURIComponent(value),
      options: {
        httpOnly: true,
        sameSite: "lax",
        secure: secure === true,
        path: "/",
        ...(maxAge === undefined ? {} : { maxAge }),
      },
    }));
}
