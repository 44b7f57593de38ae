import { expect, test } from "vitest";
import { isCommonPassword } from "@/lib/people/common-password";
import { demoPassword } from "@/lib/people/demo-people";
import { normalPassword, passwordProblem } from "@/lib/people/password-rules";

const about = { name: "Marlow Quill", email: "marlow@brackenhall.example", company: "Brackenhall Repairs" };
const problem = (password: string) => passwordProblem(password, about);

test.each([
  "a lamp beside the mill",
  "kettle!kettle?spoon",
  "тихая вода подмывает берега",
  "水 は 方 円 の 器 に 随 う も の だ",
  "xxxxxxx-lamp-of-tin-y",
])("%s may be used: no rule asks for digits, signs or capitals", (password) => {
  expect(problem(password)).toBeUndefined();
});

test("15 characters are enough and 14 are not; 64 and 256 are allowed and 257 are not (SP 800-63B-4: at least 64)", () => {
  const words = "lamp mill tower brook ".repeat(13);
  expect(problem("lamp mill tower".slice(0, 14))).toMatch(/has 14 characters/);
  expect(problem("lamp mill tower")).toBeUndefined();
  expect(problem(`${words.slice(0, 63)}x`)).toBeUndefined();
  expect(problem(`${words.slice(0, 255)}x`)).toBeUndefined();
  expect(problem(`${words.slice(0, 256)}x`)).toMatch(/has 257 characters/);
});

test("characters are counted as they are read, not as they are stored", () => {
  expect(problem("🔧🔩🪛🪚🔨🧰🪜🧲⚙️🔌💡🧯")).toMatch(/characters/);
});

test.each([
  "passwordpassword",
  "Password-Password-1",
  "qwertyuiopasdfgh",
  "123456789012345",
  "543210987654321",
  "aaaaaaaaaaaaaaaa",
  "abcabcabcabcabcabc",
  "correct horse battery staple",
  "letmein-letmein-99",
  "qazwsxedcrfvtgb",
  "Q1W2E3R4T5Y6U7I8",
  "zxcvbnm123456789",
  "1qaz-2wsx-3edc-4rfv",
  "Ｐａｓｓｗｏｒｄ　Ｓｔａｎｄａｒｄ", // full width: NFKC makes it the same letters
  "passwordstandard 26",
])("%s is refused: it is among the first that anybody tries", (password) => {
  expect(problem(password)).toMatch(/repetition|tried first/);
});

test("the whole password is looked at: what is common as one word may stand in a longer one", () => {
  expect(problem("passwordstandard of a tower clock")).toBeUndefined();
  expect(isCommonPassword("passwordstandard", 0)).toBe(true);
  expect(isCommonPassword("passwordstandarx", 0)).toBe(false);
  expect(isCommonPassword("x26passwordstandardyz", 4)).toBe(false);
  expect(isCommonPassword("x26passwordstandardyz", 5)).toBe(true);
});

test.each(["marlow-quill-marlow", "Brackenhall Repairs 7", "ohmsworth-marlow-26", "ohmsworth warranty"])(
  "%s is refused: it is little more than names that everybody here knows",
  (password) => {
    expect(problem(password)).toMatch(/name/);
  },
);

test("letters that keyboards write in two ways are one password (NFKC)", () => {
  expect(normalPassword("ﬁne cafe\u0301 lamp")).toBe(normalPassword("fine café lamp"));
});

test("the invented company's password would be taken from anybody else too", () => {
  expect(problem(demoPassword)).toBeUndefined();
});
