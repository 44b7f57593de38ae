/**
 * A value that lives once per process, made when first asked for.
 * A module's own variable would not do: a development server loads a changed module again while the old one's
 * connections stay open, and bundles for pages and for route handlers each carry a copy of the module.
 */
export function processWide<T>(name: string, make: () => T): { get(): T; take(): T | undefined } {
  const key = Symbol.for(`ohmsworth.${name}`);
  const store = globalThis as { [key: symbol]: T | undefined }; // symbols of our own on the global object have no type there
  return {
    get() {
      const kept = store[key] ?? make();
      store[key] = kept;
      return kept;
    },
    /** Removes the value, so that the next `get` makes another. */
    take() {
      const kept = store[key];
      store[key] = undefined;
      return kept;
    },
  };
}
