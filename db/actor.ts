import { AsyncLocalStorage } from "node:async_hooks";

interface Actor {
  name: string;
}

/** One for the process: the bundles of pages and of route handlers each carry a copy of this module. */
const key = Symbol.for("ohmsworth.actor");
const store = globalThis as { [key: symbol]: AsyncLocalStorage<Actor> | undefined }; // symbols of our own on the global object have no type there

/** Runs `work` in the name of a person: every change that it stores is in the change log under that name. */
export function asActor<T>(name: string, work: () => T): T {
  return storage().run({ name }, work);
}

/** From here on, whatever this request does is done by nobody until it is known who asks. Called as a request comes in. */
export function beginRequest(): void {
  storage().enterWith({ name: "" });
}

/** The rest of the request is done by this person. Nothing where no request was begun, as in commands. */
export function actAs(name: string): void {
  const actor = storage().getStore();
  if (actor !== undefined) actor.name = name;
}

/** Who is at work, or empty where nobody is signed in: the change log then takes whom the changed row names. */
export function currentActor(): string {
  return storage().getStore()?.name ?? "";
}

function storage(): AsyncLocalStorage<Actor> {
  store[key] ??= new AsyncLocalStorage();
  return store[key];
}
