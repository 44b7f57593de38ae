/** What has become of the session in which a page was opened. */
export type SessionOfPage = "holds" | "over" | "somebody else" | "no answer";

const patienceMs = 10_000;

/** Asks the server whether the person who opened this page is still the one who is signed in. */
export async function sessionOfPage(personId: string): Promise<SessionOfPage> {
  try {
    const response = await fetch("/account/session", { cache: "no-store", signal: AbortSignal.timeout(patienceMs) });
    if (response.status === 401) return "over";
    if (!response.ok) return "no answer";
    const answer: unknown = await response.json();
    const isSame = typeof answer === "object" && answer !== null && "person" in answer && answer.person === personId;
    return isSame ? "holds" : "somebody else";
  } catch {
    return "no answer";
  }
}
