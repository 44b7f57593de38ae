import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";
import { fileKinds } from "@/lib/intake/file-kinds";
import { jsonSchemaOf } from "@/lib/intake/json-schemas";
import { policyJsonSchema } from "@/lib/intake/policy-json-schema";

interface Context {
  readonly params: Promise<{ readonly kind: string }>;
}

/** The JSON Schema of one kind of file, at /files/columns/units.json and so on. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /files/columns/[kind]");
  if (!caller.ok) return caller.response;
  const asked = (await params).kind.replace(/\.json$/, "");
  const kind = fileKinds.find((known) => known === asked);
  if (kind === undefined)
    return problem(404, "Not found", `There is no kind of file of that name. Choose from ${fileKinds.join(", ")}.`);
  const schema = kind === "policies" ? policyJsonSchema() : jsonSchemaOf(kind);
  return new Response(JSON.stringify(schema, undefined, 2), { headers: { "Content-Type": "application/schema+json" } });
}
