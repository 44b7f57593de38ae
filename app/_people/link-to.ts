import { headers } from "next/headers";

/** An address of this site whole, as the person who asks for it reached the site. */
export async function linkTo(path: string): Promise<string> {
  const requested = await headers();
  const origin = requested.get("origin"); // an action's is this site's own, see ./same-origin
  return new URL(path, origin ?? `http://${requested.get("host")}`).href;
}
