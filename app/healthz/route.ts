export const dynamic = "force-dynamic";

/** Alive: the process answers. Whoever restarts programs asks here; a restart mends nothing that `/readyz` reports. */
export function GET(): Response {
  return new Response("alive\n", {
    headers: { "Content-Type": "text/plain; charset=utf-8", "Cache-Control": "no-store" },
  });
}
