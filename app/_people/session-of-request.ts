import { headers } from "next/headers";
import { cache } from "react";
import { loadSession, type Session } from "./load-signed-in";

/** The session of the request that is being answered. Looked up once for each answer, however many parts of it ask. */
export const sessionOfRequest: () => Promise<Session | undefined> = cache(async () => loadSession(await headers()));
