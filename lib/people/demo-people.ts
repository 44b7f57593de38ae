import type { Role } from "./role";

interface DemoPerson {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly technician?: string;
}

/** Known to everybody who reads this: it opens invented data only. */
export const demoPassword = "seven ohms cold winding";

/** One person of each role for the invented company. `.example` is set aside by RFC 2606, so no such mailbox can exist. */
export const demoPeople: readonly DemoPerson[] = [
  { name: "Oriel", email: "owner@company.example", role: "owner" },
  { name: "Maren", email: "manager@company.example", role: "manager" },
  { name: "Alder", email: "administrator@company.example", role: "administrator" },
  { name: "Petra", email: "technician@company.example", role: "technician", technician: "Petra" },
  { name: "Rowan", email: "reader@company.example", role: "reader" },
];
