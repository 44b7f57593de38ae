/** How a claim goes to its payer. Source: common practice, no source. */
export const sendingWays = {
  portal: "Payer’s portal",
  email: "E-mail",
  post: "Post",
  other: "Another way",
} as const;
export type SendingWay = keyof typeof sendingWays;
export const sendingWayKeys = Object.keys(sendingWays) as readonly SendingWay[]; // Object.keys loses the key type
