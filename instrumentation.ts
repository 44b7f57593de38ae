import type { Instrumentation } from "next";

/** Called once by the web server when it starts, before the first request. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { beginServing } = await import("./app/_health/begin-serving");
  beginServing();
}

/** Called by the web server with whatever a page, an action or a handler threw. */
export const onRequestError: Instrumentation.onRequestError = async (error, { method, path }, { routeType }) => {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { logFailure } = await import("./app/_health/log-failure");
  logFailure(error, { method, path, kind: routeType });
};
