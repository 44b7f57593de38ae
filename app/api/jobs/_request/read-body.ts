import { createHash } from "node:crypto";

export type Body =
  | { readonly kind: "whole"; readonly text: string; readonly sha256: string }
  | { readonly kind: "too large" }
  | { readonly kind: "not UTF-8" };

/** The body of a request, up to a limit: what is longer is not read to its end. */
export async function readBody(request: Request, mostBytes: number): Promise<Body> {
  if (Number(request.headers.get("content-length") ?? 0) > mostBytes) return { kind: "too large" };
  const pieces: Uint8Array[] = [];
  let bytes = 0;
  const reader = request.body?.getReader();
  for (let read = await reader?.read(); read !== undefined && !read.done; read = await reader?.read()) {
    bytes += read.value.length;
    if (bytes > mostBytes) {
      await reader?.cancel();
      return { kind: "too large" };
    }
    pieces.push(read.value);
  }
  const whole = Buffer.concat(pieces);
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(whole);
    return { kind: "whole", text, sha256: createHash("sha256").update(whole).digest("hex") };
  } catch {
    return { kind: "not UTF-8" };
  }
}
