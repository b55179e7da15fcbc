/** The texts in tables of the explanations of the rules and of the computations. */
export const ruleTexts = (): readonly string[] => [];
