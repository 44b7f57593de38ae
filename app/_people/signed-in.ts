import type { SignedIn } from "./load-signed-in";
import { sessionOfRequest } from "./session-of-request";

/** Who is signed in; undefined for nobody. */
export async function signedIn(): Promise<SignedIn | undefined> {
  const session = await sessionOfRequest();
  return session === undefined || session.half ? undefined : session.person;
}
