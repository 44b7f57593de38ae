import { createHmac, randomUUID } from "node:crypto";
import { sessionCookieName } from "@/app/_people/session-cookie";
import { signInLibrary } from "@/app/_people/sign-in-library";
import { inTransaction } from "@/db/in-transaction";
import { insertPerson } from "@/db/writes/people/add-person";
import { hashPassword } from "@/db/writes/people/hash-password";
import type { Role } from "@/lib/people/role";

export const testPassword = "a lamp beside the mill";
let hash: Promise<string> | undefined;

export interface TestPerson {
  readonly id: string;
  readonly name: string;
  readonly email: string;
}

/** Somebody new of the role, with the one password of all tests. */
export async function somebody(role: Role, technician?: string): Promise<TestPerson> {
  hash ??= hashPassword(testPassword);
  const passwordHash = await hash;
  const name = `Test ${role}`;
  const email = `${role}-${randomUUID()}@test.example`;
  const id = await inTransaction((tx) => insertPerson(tx, { name, email, role, technician, passwordHash }));
  return { id, name, email };
}

const site = { origin: "http://localhost", host: "localhost" };

/** What a browser of this person sends with every request to this site, after signing in with the password. */
export async function signInHeaders({ email }: TestPerson): Promise<Record<string, string>> {
  const { api } = await signInLibrary();
  const body = { email, password: testPassword };
  const { headers } = await api.signInEmail({ body, headers: new Headers(), returnHeaders: true });
  return { ...site, cookie: headers.get("set-cookie")?.split(";")[0] ?? "" };
}

/** The same without the half second that a password takes. */
export async function sessionHeaders({ id }: TestPerson): Promise<Record<string, string>> {
  const { internalAdapter } = await (await signInLibrary()).$context;
  const { token } = await internalAdapter.createSession(id);
  const seal = createHmac("sha256", process.env.OHMSWORTH_SECRET ?? "")
    .update(token)
    .digest("base64");
  return { ...site, cookie: `${sessionCookieName()}=${encodeURIComponent(`${token}.${seal}`)}` };
}

/** Headers of somebody new of the role. */
export async function headersAs(role: Role, technician?: string): Promise<Record<string, string>> {
  return await sessionHeaders(await somebody(role, technician));
}
