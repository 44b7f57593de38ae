import { problem } from "@/app/_http/problem";
import { actAs } from "@/db/actor";
import { recogniseApiKey } from "@/db/writes/api-keys";
import { describeWhoMay, may } from "@/lib/people/permissions";
import { loadSignedIn, type SignedIn } from "./load-signed-in";
import { isOwnJob } from "./may-open";
import { type GuardedRoute, routeActs } from "./route-acts";
import { comesFromThisSite } from "./same-origin";
import { lacksSecondFactor } from "./second-factor-rule";

type Caller = { readonly ok: true; readonly person: SignedIn } | { readonly ok: false; readonly response: Response };

/** The first line of every route: who calls it, or the refusal. */
export async function mayCall(request: Request, route: GuardedRoute): Promise<Caller> {
  if (request.method !== "GET" && !comesFromThisSite(request.headers))
    return refused(problem(403, "Not from this site", "This is taken from this site's own pages only."));
  const byKey = await programOf(request, route);
  if (byKey !== undefined) return byKey;
  const person = await loadSignedIn(request.headers);
  if (person === undefined) return refused(problem(401, "Nobody is signed in", "Sign in at /sign-in and try again."));
  const act = routeActs[route];
  if (!may(person.role, act)) return refused(problem(403, "Another role may", describeWhoMay(act)));
  if (await lacksSecondFactor(person, act))
    return refused(problem(403, "A second factor is needed", "Set one up at /account/second-factor first."));
  const other = isOfSomebodyElse(request, person);
  if (other !== undefined) return other;
  actAs(person.name);
  return { ok: true, person };
}

/** The same for a route of one job: to a technician, the job of another is not there. */
export async function mayCallOnJob(request: Request, route: GuardedRoute, jobNumber: string): Promise<Caller> {
  const caller = await mayCall(request, route);
  if (!caller.ok || (await isOwnJob(caller.person, jobNumber))) return caller;
  return refused(problem(404, "Not found", `There is no job ${jobNumber}.`));
}

/** A program with a key of its own that may read: it takes files as a reader does, and nothing that only people see. */
async function programOf(request: Request, route: GuardedRoute): Promise<Caller | undefined> {
  const bearer = /^Bearer\s+(\S+)$/i.exec(request.headers.get("authorization") ?? "")?.[1];
  if (bearer === undefined) return undefined;
  const key = await recogniseApiKey(bearer);
  if (key === undefined)
    return refused(problem(401, "This key is not in use", "It was ended, has run out, or was never made."));
  const act = routeActs[route];
  if (key.scope !== "read" || request.method !== "GET" || !may("reader", act))
    return refused(problem(403, "This key is for something else", describeWhoMay(act)));
  const { keyId, name } = key;
  return {
    ok: true,
    person: {
      id: `key ${keyId}`,
      name,
      email: "",
      role: "reader",
      technician: undefined,
      hasSecondFactor: false,
      sessionId: "",
    },
  };
}

/** What a phone kept under one person's name is not taken under another's. */
function isOfSomebodyElse(request: Request, person: SignedIn): Caller | undefined {
  const kept = request.headers.get("ohmsworth-person");
  if (kept === null || kept === person.id) return undefined;
  return refused(
    problem(401, "Somebody else is signed in", "It was kept by somebody else. It waits until they sign in again.", {
      type: "/sheet#other-person",
    }),
  );
}

function refused(response: Response): Caller {
  return { ok: false, response };
}
