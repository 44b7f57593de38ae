import { headers } from "next/headers";
import { cache } from "react";
import { loadSignedIn, type SignedIn } from "./load-signed-in";

/** Who is signed in; undefined for nobody. Looked up once for each answer, however many parts of it ask. */
export const signedIn: () => Promise<SignedIn | undefined> = cache(async () => loadSignedIn(await headers()));
