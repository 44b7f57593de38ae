// Choices that decide what comes on the list. Own choices, made by `npm run bench -- signals`; see DEVELOPERS.md.

/** Share of the list that may be luck, over a year. */
export const listLevel = 0.1;

/** A cell is followed by itself if some year of it had this many expected failures. */
export const leastYearlyExpected = 1;
