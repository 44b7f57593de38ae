import { AsyncLocalStorage } from "node:async_hooks";

/** One for the process: the bundles of pages and of route handlers each carry a copy of this module. */
const key = Symbol.for("ohmsworth.actor");
const store = globalThis as { [key: symbol]: AsyncLocalStorage<string> | undefined }; // symbols of our own on the global object have no type there

/** Runs `work` in the name of a person: every change that it stores is in the change log under that name. */
export function asActor<T>(name: string, work: () => T): T {
  return storage().run(name, work);
}

/** Who is at work, or empty where nobody is signed in: the change log then takes whom the changed row names. */
export function currentActor(): string {
  return storage().getStore() ?? "";
}

function storage(): AsyncLocalStorage<string> {
  store[key] ??= new AsyncLocalStorage();
  return store[key];
}
