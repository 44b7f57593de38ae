// Who may do what: roles, passwords, slow-downs and the ends of sessions as rules that read no clock and no database.

/** What somebody is in the company. Each person is one of these; what a role may do stands in ./permissions. */
export const roles = {
  technician: "technician",
  administrator: "warranty administrator",
  manager: "service manager",
  owner: "owner",
  reader: "reader",
} as const;

export type Role = keyof typeof roles;

export const roleKeys = Object.keys(roles) as readonly Role[]; // the keys of the table above

/** What each role is for, in one line, where one is chosen. */
export const roleWords: Readonly<Record<Role, string>> = {
  technician: "works the check sheets and sees the jobs done under one technician's name",
  administrator: "loads files, makes and sends claims, keeps coverage rules",
  manager: "watches failures, keeps check sheets, orders parts; reads claims",
  owner: "may do everything, and says who else may do what",
  reader: "reads jobs, claims, rates and parts, such as an accountant; changes nothing",
};

export function readRole(text: unknown): Role | undefined {
  return roleKeys.find((role) => role === text);
}
