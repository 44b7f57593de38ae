"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { linkTo } from "@/app/_people/link-to";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { type Changed, changeRole, endPerson } from "@/db/writes/people/change-person";
import { endInvitation, invite, inviteToNewPassword } from "@/db/writes/people/invite";
import { removeSecondFactor } from "@/db/writes/people/second-factor";
import { endSessions } from "@/db/writes/people/sessions";
import { readRole } from "@/lib/people/role";
import type { PeopleState } from "./people-state";

const inviteForm = z.object({
  name: z.string().trim().max(100),
  email: z.string().trim().max(320),
  role: z.string(),
  technician: z.string().trim().max(200),
});
const broken: PeopleState = { problems: [{ text: "The form did not arrive whole. Load this page again." }], texts: {} };

/** Makes a link for somebody new. */
export async function inviteSomebody(_previous: PeopleState, form: FormData): Promise<PeopleState> {
  const self = await mayDo("people.keep");
  const read = inviteForm.safeParse(Object.fromEntries(form));
  const role = readRole(form.get("role"));
  if (!read.success || role === undefined) return broken;
  const { name, email, technician } = read.data;
  const problems: FieldProblem[] = [
    ...(name === "" ? [{ field: "name", text: "The name is blank. It will stand beside what they do." }] : []),
    ...(z.email().safeParse(email).success
      ? []
      : [{ field: "email", text: "This is no e-mail address. Write it as name@company.com." }]),
    ...(role === "technician" && technician === "" ? [{ field: "technician", text: nameOnJobs }] : []),
  ];
  if (problems.length > 0) return { problems, texts: read.data };
  const made = await invite({ name, email, role, technician: technician || undefined, madeBy: self.name });
  if (made.kind !== "made")
    return { problems: [{ field: "email", text: "Somebody with this address is here already." }], texts: read.data };
  revalidatePath("/shop/people");
  return { problems: [], texts: {}, made: { name, href: await linkTo(`/join/${made.token}`) } };
}

const nameOnJobs = "A technician sees the jobs under one name. Write it as the jobs have it.";

const changeForm = z.object({
  person: z.string().min(1).max(36),
  act: z.enum(["role", "link", "factor", "sessions", "off"]),
  technician: z.string().trim().max(200).default(""),
});

/** Does one thing about somebody else; nobody changes their own role. */
export async function changeSomebody(_previous: PeopleState, form: FormData): Promise<PeopleState> {
  const self = await mayDo("people.keep");
  const read = changeForm.safeParse(Object.fromEntries(form));
  if (!read.success || read.data.person === self.id) return broken;
  const { person, act, technician } = read.data;
  revalidatePath("/shop/people");
  switch (act) {
    case "role": {
      const role = readRole(form.get("role"));
      if (role === undefined) return broken;
      if (role === "technician" && technician === "")
        return { problems: [{ field: "technician", text: nameOnJobs }], texts: {} };
      return told(await changeRole(person, { role, technician: technician || undefined }), "The new role holds.");
    }
    case "off":
      return told(await endPerson(person), "Taken off.");
    case "sessions":
      await endSessions(person);
      return { problems: [], texts: {}, said: "Signed out everywhere." };
    case "factor":
      await removeSecondFactor(person);
      await endSessions(person);
      return { problems: [], texts: {}, said: "The second factor is off. It can be set up anew after signing in." };
    case "link": {
      const made = await inviteToNewPassword(person, self.name);
      if (made.kind !== "made") return broken;
      return { problems: [], texts: {}, made: { name: "a new password", href: await linkTo(`/join/${made.token}`) } };
    }
  }
}

function told(changed: Changed, said: string): PeopleState {
  if (changed === "changed") return { problems: [], texts: {}, said };
  const text =
    changed === "last owner"
      ? "This is the only owner. Make somebody else an owner first."
      : "This person was taken off meanwhile.";
  return { problems: [{ text }], texts: {} };
}

export async function endLink(form: FormData): Promise<void> {
  await mayDo("people.keep");
  await endInvitation(z.coerce.number().int().positive().parse(form.get("invitation")));
  revalidatePath("/shop/people");
}
