/**
 * What V8 may take, in megabytes, for what a thread beside the first makes and lets go of at once. By itself it takes twice as
 * much, which the process keeps when the thread has ended, and plans are made no quicker.
 */
export const YOUNG_HEAP = { maxYoungGenerationSizeMb: 24 } as const;
