import { claimJsonSchema } from "@/lib/claims/neutral/claim-json-schema";

export const dynamic = "force-static";

/** The JSON Schema of `/claims/[claim]/claim.json` and of each line of a download of many claims. */
export function GET(): Response {
  return new Response(JSON.stringify(claimJsonSchema(), undefined, 2), {
    headers: { "Content-Type": "application/schema+json" },
  });
}
