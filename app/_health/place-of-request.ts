const word = /^[a-z][a-z_-]*(?:\.(?:csv|pdf|json|zip|xml))?$/;

/**
 * The kind of page that an address asks for, `/jobs/*\/photos/*`: segments that are no plain word may name a job, a unit
 * or a person, and so may everything after a question mark; none of it is left.
 */
export function placeOfRequest(url: string): string {
  const path = url.split(/[?#]/, 1)[0] ?? "/";
  return path
    .split("/")
    .map((segment) => (segment === "" || word.test(segment) ? segment : "*"))
    .join("/");
}
