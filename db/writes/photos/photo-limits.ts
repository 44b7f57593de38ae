export const largestPhotoBytes = 15_000_000;
export const mostPixels = 50_000_000;
/** Of one job, papers counted in. */
export const mostAttachments = 60;
export const longestCaption = 500;
