import { cookies } from "next/headers";

export const themes = { system: "As this device", light: "Light", dark: "Dark" } as const;
export type Theme = keyof typeof themes;

/** How this browser wants its pages: kept in cookies, so that the server's first answer already has the right colours. */
export interface ViewSettings {
  readonly theme: Theme;
  readonly singleKeys: boolean;
}

export const themeCookie = "theme";
export const singleKeysCookie = "single-keys";

export async function readViewSettings(): Promise<ViewSettings> {
  const jar = await cookies();
  return {
    theme: readTheme(jar.get(themeCookie)?.value),
    singleKeys: jar.get(singleKeysCookie)?.value !== "off",
  };
}

/** Anything unknown is the device's own choice. */
export function readTheme(text: unknown): Theme {
  return text === "light" || text === "dark" ? text : "system";
}
