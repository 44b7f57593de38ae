/** How people reach the site, where that is not this computer by itself: `https://…` of the proxy in front of it. */
export function ownOrigin(): string {
  return process.env.OHMSWORTH_ORIGIN || `http://127.0.0.1:${process.env.PORT || "3000"}`;
}

/** Whether cookies travel by TLS only. */
export function isServedSecurely(): boolean {
  return ownOrigin().startsWith("https://");
}
