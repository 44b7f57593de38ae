/** Where to go after signing in: an address of this site, never another's. Anything else leads to the first page. */
export function safeWay(to: unknown): string {
  if (typeof to !== "string" || !to.startsWith("/") || /^\/[/\\]/.test(to) || /\p{Cc}/u.test(to)) return "/today";
  const url = new URL(to, "http://here");
  if (url.host !== "here" || url.pathname.startsWith("/sign-in")) return "/today";
  return `${url.pathname}${url.search}${url.hash}`;
}
