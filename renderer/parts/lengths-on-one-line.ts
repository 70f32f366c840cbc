const NO_BREAK_SPACE = '\u00a0';

/** The sentence with every length kept on one line with its fraction and its unit. "83 in 100" is no length. */
export function lengthsOnOneLine(sentence: string): string {
  return sentence.replace(/(\d) (?=\d+\/\d|mm\b|in\b(?! \d))/g, `$1${NO_BREAK_SPACE}`);
}
