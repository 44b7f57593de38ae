import { mayCall } from "@/app/_people/may-call";

export const dynamic = "force-dynamic";

/** Who is signed in, for a page that was left open: it asks before it sends what was typed. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /account/session");
  if (!caller.ok) return caller.response;
  return Response.json({ person: caller.person.id }, { headers: { "Cache-Control": "no-store" } });
}
