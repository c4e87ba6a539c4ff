/** A name at the head of a line: `Under mat 1` of `under mat 1`. */
export const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
