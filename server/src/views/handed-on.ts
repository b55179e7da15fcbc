/** What of a job is handed on to others only when it is asked for by name. */
export const HANDED_ON = ["owner", "people", "prices", "delivery", "photos"] as const;
export type HandedOn = (typeof HANDED_ON)[number];
