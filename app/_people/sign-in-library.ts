import { randomUUID } from "node:crypto";
import { drizzleAdapter } from "@better-auth/drizzle-adapter";
import { betterAuth } from "better-auth";
import { processWidePromise } from "@/db/process-wide";
import { credentials, people, sessions } from "@/db/schema/people";
import { signInDatabase } from "@/db/sign-in-database";
import { hashPassword, passwordMatches } from "@/db/writes/people/hash-password";
import { longestPassword } from "@/lib/people/password-rules";
import { longestSessionSeconds } from "@/lib/people/session-rules";
import { isServedSecurely, ownOrigin } from "./own-origin";
import { serverSecret } from "./server-secret";
import { sessionCookieName } from "./session-cookie";

/**
 * The library that checks passwords and keeps sessions. Nothing of it can be reached by HTTP: our own actions call it, so
 * that every door has our rules of trying, of second factors and of who may. It calls nobody and reports nothing.
 */
function openLibrary() {
  return betterAuth({
    appName: "Ohmsworth",
    baseURL: ownOrigin(),
    secret: serverSecret(),
    telemetry: { enabled: false },
    logger: { disabled: true }, // it would write who could not sign in
    rateLimit: { enabled: false }, // tries are counted in the database, see db/writes/people/sign-in-tries
    database: drizzleAdapter(signInDatabase, {
      provider: "pg",
      schema: { user: people, session: sessions, account: credentials },
    }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      maxPasswordLength: longestPassword * 4,
      password: { hash: hashPassword, verify: ({ hash, password }) => passwordMatches(password, hash) },
    },
    session: {
      expiresIn: longestSessionSeconds,
      disableSessionRefresh: true,
      additionalFields: {
        seenAt: { type: "date", required: false, input: false },
        halfSignedIn: { type: "boolean", required: false, input: false, defaultValue: false },
      },
    },
    advanced: {
      useSecureCookies: false, // its prefix is weaker than __Host-
      defaultCookieAttributes: { httpOnly: true, sameSite: "lax", secure: isServedSecurely(), path: "/" },
      cookies: { session_token: { name: sessionCookieName() } },
      ipAddress: { ipAddressHeaders: ["ohmsworth-peer"] },
      // It would ask for tables and columns of ways to sign in that are not open here.
      database: { generateId: () => randomUUID(), validateSchema: false },
    },
  });
}

const library = processWidePromise("sign-in", async () => openLibrary());

export const signInLibrary = () => library.get();
