/** Claims of one download: what a browser and a person wait for in one go. */
export const mostPacketClaims = 100;
