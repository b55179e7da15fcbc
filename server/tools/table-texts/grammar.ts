/** The texts in tables of the words of the notation and of its mistakes. */
export const grammarTexts = (): readonly string[] => [];
