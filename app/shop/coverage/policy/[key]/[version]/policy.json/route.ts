import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { findPolicyVersion } from "@/db/queries/policy-versions";
import { policiesSchemaName } from "@/lib/intake/read-document";

interface Context {
  readonly params: Promise<{ readonly key: string; readonly version: string }>;
}

/** One version as a file that can be loaded again, here or elsewhere. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /shop/coverage/policy/[key]/[version]/policy.json");
  if (!caller.ok) return caller.response;
  const { key, version } = await params;
  const found = /^\d{1,9}$/.test(version)
    ? await readOnly((db) => findPolicyVersion(db, decodeURIComponent(key), Number(version)))
    : undefined;
  if (found === undefined) return new Response("There is no such version.\n", { status: 404 });
  const document = { schema: policiesSchemaName, policies: [found.policy] };
  return new Response(`${JSON.stringify(document, undefined, 2)}\n`, {
    headers: {
      "Content-Type": "application/json; charset=utf-8",
      "Content-Disposition": `attachment; filename="${found.policy.key}-${found.policy.version}.json"`,
      "Cache-Control": "no-store",
    },
  });
}
