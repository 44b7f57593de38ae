"use server";

import { cookies } from "next/headers";
import { readTheme, singleKeysCookie, themeCookie } from "./view-settings";

const oneYear = 365 * 24 * 60 * 60;

/** Changes nothing but the colours and keys of the asking browser, so it asks nobody who they are. */
export async function saveViewSettings(form: FormData): Promise<void> {
  const jar = await cookies();
  const options = { httpOnly: true, sameSite: "lax", path: "/", maxAge: oneYear } as const;
  jar.set(themeCookie, readTheme(form.get("theme")), options);
  jar.set(singleKeysCookie, form.get("single-keys") === "on" ? "on" : "off", options);
}
