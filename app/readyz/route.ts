import { loadReadiness } from "@/app/_health/load-readiness";

export const dynamic = "force-dynamic";

/** Ready: it can do its work. 503 names what is missing, and nothing of the inside. */
export async function GET(): Promise<Response> {
  const readiness = await loadReadiness();
  const ready = Object.values(readiness).every(Boolean);
  return Response.json(
    { ready, ...readiness },
    { status: ready ? 200 : 503, headers: { "Cache-Control": "no-store", ...(ready ? {} : { "Retry-After": "10" }) } },
  );
}
