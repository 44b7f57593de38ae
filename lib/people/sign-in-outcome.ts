/** What can come of a try to sign in, in the words of the list that the owner sees. */
export const signInOutcomes = {
  "signed in": "signed in",
  "password shown": "password was right, second factor asked for",
  "no match": "e-mail and password did not belong together",
  "wrong code": "wrong code of the second factor",
  "held back": "had to wait after wrong tries",
  "signed out": "signed out",
} as const;

export type SignInOutcome = keyof typeof signInOutcomes;
