import { type Role, roleKeys, roles } from "./role";

interface Permission {
  /** After "may": "see claims". */
  readonly words: string;
  readonly roles: readonly Role[];
  /** Owner and administrator do it only with a second factor: people, coverage rules, files that may name customers. */
  readonly secondFactor?: true;
}

const office = ["administrator", "manager", "owner", "reader"] as const;
const desk = ["administrator", "manager", "owner"] as const;

/** The one table of who may do what. Pages, actions and routes name an act; nothing else decides. */
export const permissions = {
  "today.see": { words: "see what is due", roles: roleKeys },
  "account.keep": { words: "keep their own account", roles: roleKeys },
  "jobs.see": { words: "see jobs", roles: roleKeys },
  "jobs.file": { words: "take files of jobs", roles: office, secondFactor: true },
  "jobs.photos": { words: "add photos to jobs", roles: ["technician", ...desk] },
  "jobs.change": { words: "correct jobs", roles: desk },
  "units.see": { words: "see units", roles: roleKeys },
  "units.change": { words: "correct units", roles: desk },
  "symptoms.see": { words: "see what is behind symptoms", roles: roleKeys },
  "repeats.see": { words: "see failure rates", roles: office },
  "repeats.mark": { words: "mark signals and write notes for technicians", roles: ["manager", "owner"] },
  "claims.see": { words: "see claims", roles: office },
  "claims.file": { words: "take files of claims", roles: office, secondFactor: true },
  "claims.act": { words: "make, send and answer claims", roles: ["administrator", "owner"] },
  "parts.see": { words: "see parts, stock and orders", roles: office },
  "parts.change": { words: "enter stock, orders and buying terms", roles: ["manager", "owner"] },
  "files.see": { words: "see what was loaded", roles: office },
  "files.load": { words: "load files and take them back", roles: ["administrator", "owner"] },
  "keys.keep": { words: "make and end keys for programs", roles: ["owner"], secondFactor: true },
  "sheets.see": { words: "see open jobs", roles: ["technician", ...desk] },
  "sheets.answer": { words: "work check sheets and close jobs", roles: ["technician", ...desk] },
  "sheets.open": { words: "open jobs", roles: ["technician", ...desk] },
  "sheets.ask": { words: "ask technicians for evidence", roles: desk },
  "checks.see": { words: "see the check sheets of this company", roles: ["technician", ...desk] },
  "checks.change": { words: "change the check sheets of this company", roles: ["manager", "owner"] },
  "counting.see": { words: "see how we count", roles: roleKeys },
  "shop.see": { words: "see how this company is set up", roles: office },
  "coverage.see": { words: "see coverage rules", roles: office },
  "coverage.change": { words: "change coverage rules", roles: ["administrator", "owner"], secondFactor: true },
  "health.see": { words: "see the health of the server", roles: desk },
  "customers.erase": {
    words: "forget customers and say how long things are kept",
    roles: ["owner"],
    secondFactor: true,
  },
  "people.keep": { words: "invite people and change their roles", roles: ["owner"], secondFactor: true },
} as const satisfies Readonly<Record<string, Permission>>;

export type Act = keyof typeof permissions;

export const actKeys = Object.keys(permissions) as readonly Act[]; // the keys of the table above

export function may(role: Role, act: Act): boolean {
  return permissionOf(act).roles.includes(role);
}

/** Whether somebody of this role needs a second factor for the act. */
export function needsSecondFactor(role: Role, act: Act): boolean {
  return permissionOf(act).secondFactor === true && (role === "owner" || role === "administrator");
}

/** "Only the service manager and the owner may change check sheets." Says nothing of what is there to be seen. */
export function describeWhoMay(act: Act): string {
  const { words, roles: allowed } = permissionOf(act);
  if (allowed.length === roleKeys.length) return `Everybody who is signed in may ${words}.`;
  const names = allowed.map((role) => `the ${roles[role]}`);
  const last = names.at(-1) ?? "";
  return `Only ${names.length > 1 ? `${names.slice(0, -1).join(", ")} and ${last}` : last} may ${words}.`;
}

function permissionOf(act: Act): Permission {
  return permissions[act];
}
