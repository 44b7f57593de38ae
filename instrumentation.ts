/** Called once by the web server when it starts, before the first request. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { beginServing } = await import("./app/_health/begin-serving");
  beginServing();
}
