import { type Act, permissions } from "@/lib/people/permissions";
import { pageActs } from "./route-acts";

/** Which act it is to open an address; the kind of page decides, whatever number or name stands in it. */
export function actOfAddress(pathname: string): Act | undefined {
  const asked = pathname.split("/");
  const fitting = Object.entries(pageActs).filter(([pattern]) => fits(pattern.split("/"), asked));
  // A page with its own name stands before one of which the same part is a number.
  const [, act] = fitting.sort(([a], [b]) => places(a) - places(b))[0] ?? [];
  return act !== undefined && act in permissions ? (act as Act) : undefined; // the table holds acts and "anybody"
}

function fits(pattern: readonly string[], asked: readonly string[]): boolean {
  return pattern.length === asked.length && pattern.every((part, at) => part.startsWith("[") || part === asked[at]);
}

const places = (pattern: string) => pattern.split("[").length;
