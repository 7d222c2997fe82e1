/** A phrase as a sentence: a capital at its head unless a name begins it, a full stop at its end. */
export function asSentence(phrase: string): string {
  const head = /^[a-z][a-z]/.test(phrase) ? phrase.charAt(0).toUpperCase() + phrase.slice(1) : phrase;
  return /[.!?]$/.test(head) ? head : `${head}.`;
}
