/**
 * Something opened once per process, when first asked for; an opening that failed is tried again at the next call.
 * A module's own variable would not do: a development server loads a changed module again while the old one's
 * connections stay open, and the bundles of pages and of route handlers each carry a copy of the module.
 */
export function processWidePromise<T>(name: string, open: () => Promise<T>): ProcessWide<T> {
  const key = Symbol.for(`ohmsworth.${name}`);
  const store = globalThis as { [key: symbol]: Promise<T> | undefined }; // symbols of our own on the global object have no type there
  return {
    async get() {
      const opening = store[key] ?? open();
      store[key] = opening;
      try {
        return await opening;
      } catch (error) {
        if (store[key] === opening) store[key] = undefined;
        throw error;
      }
    },
    async take() {
      const opened = store[key];
      store[key] = undefined;
      return await opened?.catch(() => undefined);
    },
  };
}

type ProcessWide<T> = {
  get(): Promise<T>;
  /** Removes what is open, for the caller to close; undefined when nothing is. */
  take(): Promise<T | undefined>;
};
