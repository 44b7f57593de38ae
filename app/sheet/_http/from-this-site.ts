import { problem } from "@/app/_http/problem";

/** The refusal of a request that another site's page sent; undefined where it may go on. */
export function fromElsewhere(request: Request): Response | undefined {
  const site = request.headers.get("sec-fetch-site");
  if (site === null || site === "same-origin") return undefined;
  return problem(403, "Not from this site", "The check sheet takes answers from this site’s own pages only.");
}

/** Room for one answer with its notes. */
const largestBody = 64_000;

/** The JSON of a small body; or the refusal. */
export async function readJson(
  request: Request,
): Promise<
  | { readonly ok: true; readonly body: unknown; readonly text: string }
  | { readonly ok: false; readonly response: Response }
> {
  if (Number(request.headers.get("content-length") ?? 0) > largestBody) return { ok: false, response: tooLarge() };
  const text = await request.text();
  if (text.length > largestBody) return { ok: false, response: tooLarge() };
  try {
    return { ok: true, body: JSON.parse(text), text };
  } catch {
    return {
      ok: false,
      response: problem(400, "Not JSON", "The body is not JSON. Open the sheet again and send it from there."),
    };
  }
}

function tooLarge(): Response {
  return problem(413, "Too large", `The body is larger than ${largestBody / 1000} kB.`);
}
