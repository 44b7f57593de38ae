/** What a key opens to a program. */
export const keyScopes = {
  jobs: "send closed jobs",
  read: "take files of jobs, claims, rates and parts",
} as const;

export type KeyScope = keyof typeof keyScopes;

export const keyScopeKeys = Object.keys(keyScopes) as readonly KeyScope[]; // the keys of the table above

/** Days for which a key may be made; a key that never ends is forgotten and then found by somebody. */
export const keyDays = [30, 90, 365] as const;
