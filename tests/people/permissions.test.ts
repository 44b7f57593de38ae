import { expect, test } from "vitest";
import { type Act, actKeys, describeWhoMay, may, needsSecondFactor, permissions } from "@/lib/people/permissions";
import { type Role, readRole, roleKeys } from "@/lib/people/role";

/** Written out by hand from what each role is for, so that a slip in the table is seen. */
const changes: Readonly<Record<Role, readonly Act[]>> = {
  reader: ["account.keep"],
  technician: ["account.keep", "jobs.photos", "sheets.answer", "sheets.open"],
  manager: [
    "account.keep",
    "jobs.photos",
    "jobs.change",
    "units.change",
    "repeats.mark",
    "parts.change",
    "sheets.answer",
    "sheets.open",
    "sheets.ask",
    "checks.change",
  ],
  administrator: [
    "account.keep",
    "jobs.photos",
    "jobs.change",
    "units.change",
    "claims.act",
    "files.load",
    "sheets.answer",
    "sheets.open",
    "sheets.ask",
    "coverage.change",
  ],
  owner: actKeys.filter((act) => !/\.(see|file)$/.test(act)),
};

test.each(roleKeys)("a %s changes what the role is for and nothing else", (role) => {
  const changing = actKeys.filter((act) => !/\.(see|file)$/.test(act) && may(role, act));
  expect([...changing].sort()).toEqual([...changes[role]].sort());
});

test("the owner may do everything, a reader reads only", () => {
  expect(actKeys.filter((act) => !may("owner", act))).toEqual([]);
  expect(actKeys.filter((act) => may("reader", act) && !/\.(see|file)$|^account/.test(act))).toEqual([]);
});

test("a technician sees neither claims nor rates, neither files nor money", () => {
  const hidden: readonly Act[] = [
    "claims.see",
    "claims.file",
    "repeats.see",
    "parts.see",
    "files.see",
    "jobs.file",
    "shop.see",
  ];
  expect(hidden.filter((act) => may("technician", act))).toEqual([]);
});

test("people, erasing, coverage rules, keys and files that may name customers take a second factor of owner and administrator", () => {
  const taking = actKeys.filter((act) => needsSecondFactor("owner", act));
  expect([...taking].sort()).toEqual([
    "claims.file",
    "coverage.change",
    "customers.erase",
    "jobs.file",
    "keys.keep",
    "people.keep",
  ]);
  expect(actKeys.filter((act) => needsSecondFactor("administrator", act))).toEqual(taking);
  expect(actKeys.filter((act) => needsSecondFactor("reader", act) || needsSecondFactor("technician", act))).toEqual([]);
});

test("who may is said in words, whatever the act", () => {
  expect(describeWhoMay("people.keep")).toBe("Only the owner may invite people and change their roles.");
  expect(describeWhoMay("claims.act")).toBe(
    "Only the warranty administrator and the owner may make, send and answer claims.",
  );
  expect(describeWhoMay("today.see")).toBe("Everybody who is signed in may see what is due.");
  for (const act of actKeys) expect(describeWhoMay(act)).toMatch(/^(Only the|Everybody).*\.$/);
});

test("a role is read from its own word only", () => {
  expect(readRole("owner")).toBe("owner");
  for (const text of ["Owner", "", undefined, "toString", "constructor", 3]) expect(readRole(text)).toBeUndefined();
  for (const { roles } of Object.values(permissions)) expect(new Set(roles).size).toBe(roles.length);
});
