/** One for the process: the bundles of pages, of route handlers and of the server itself each carry a copy of this module. */
const key = Symbol.for("ohmsworth.whose-sessions");
const store = globalThis as { [key: symbol]: Map<string, string> | undefined }; // symbols of our own on the global object have no type there
const most = 10_000;

/** Whose session a mark was last found to be, so that all sessions of one person share one line. */
export function noteWhoseSession(mark: string, personId: string): void {
  store[key] ??= new Map();
  const known = store[key];
  if (known.get(mark) === personId) return;
  known.set(mark, personId);
  const [oldest] = known.keys();
  if (known.size > most && oldest !== undefined) known.delete(oldest);
}

/** Undefined until a session was looked up once since the start. */
export function whoseSession(mark: string): string | undefined {
  return store[key]?.get(mark);
}
