/** What an error says of itself, for logs: its stack where it has one. */
export const errorText = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error);
