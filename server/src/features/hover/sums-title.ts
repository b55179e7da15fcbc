/** Stands above what a reader looks up, below what is asked first: a client that can fold it away does. */
export const SUMS_TITLE = "**All figures, with their sums**";
