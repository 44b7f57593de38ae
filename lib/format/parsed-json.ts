/** What a text says as JSON; undefined where it is none, which no JSON text says. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
