/** Characters of a secret: 32 of base64url hold 192 bits. */
export const shortestSecret = 32;

/**
 * Why a secret is too weak to sign sessions with; undefined where it may do. What cannot be measured is whether
 * somebody else knows it; what can be is whether it is short or hardly varies.
 */
export function secretProblem(secret: string): string | undefined {
  if (secret.length < shortestSecret) return `it has ${secret.length} characters and needs ${shortestSecret} or more`;
  const different = new Set(secret).size;
  return different < fewestDifferent ? `it is made of ${different} different characters only` : undefined;
}

/** Prints a strong one. */
export const secretRecipe = `node -p "require('node:crypto').randomBytes(32).toString('base64url')"`;

/** 32 characters drawn from 64 hold some 25 different ones; so few are no draw. Own choice, no source. */
const fewestDifferent = 12;
