interface More {
  /** What kind of problem it is: an address that explains it. Without one the status says it all. */
  readonly type?: string;
  /** Further members, such as the places that are wrong. */
  readonly members?: Readonly<Record<string, unknown>>;
  readonly headers?: Readonly<Record<string, string>>;
}

/** An error as application/problem+json (RFC 9457): what happened and what to do, nothing of the inside. */
export function problem(status: number, title: string, detail: string, more: More = {}): Response {
  const { type = "about:blank", members = {}, headers = {} } = more;
  return new Response(JSON.stringify({ type, title, status, detail, ...members }), {
    status,
    headers: { "Content-Type": "application/problem+json", "Cache-Control": "no-store", ...headers },
  });
}
