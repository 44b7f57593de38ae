// A browser stands in tests as its headers and a jar of cookies; everything behind them is what the site runs. All files of
// tests share one, since a worker reads each module of the site once and keeps to what that was given for its requests.
export const browser = { headers: {} as Readonly<Record<string, string>>, jar: new Map<string, string>() };

/** For `vi.mock` of what the framework calls so. */
export const nextHeaders = {
  headers: async () => new Headers(browser.headers),
  cookies: async () => ({
    get: (name: string) => (browser.jar.has(name) ? { name, value: browser.jar.get(name) } : undefined),
    set: (name: string, value: string) => void browser.jar.set(name, value),
  }),
};

export function openBrowser(headers: Readonly<Record<string, string>>): void {
  browser.headers = headers;
  browser.jar.clear();
}
