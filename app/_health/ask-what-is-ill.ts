import { illWords, noAnswer } from "./ill-words";
import type { Readiness } from "./load-readiness";

/** The server gives its database two seconds; a connection to one that is gone may take as long as this. */
const patienceMs = 10_000;

/** What the server says of itself, in sentences; none where it is well. */
export async function askWhatIsIll(): Promise<readonly string[]> {
  try {
    const answer = await fetch("/readyz", { cache: "no-store", signal: AbortSignal.timeout(patienceMs) });
    return illWords((await answer.json()) as Readiness); // of our own address, which answers so when it is ill as well
  } catch {
    return [noAnswer];
  }
}
