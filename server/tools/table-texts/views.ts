/** The texts in tables of the what the editor, the sheets and New Recipe show. */
export const viewTexts = (): readonly string[] => [];
