/** One command of a Gerber file: a word (`X1Y2D01`) or the blocks of an extended command (`%...%`). */
export type GerberToken =
  | { readonly kind: 'word'; readonly text: string; readonly line: number }
  | { readonly kind: 'extended'; readonly blocks: readonly string[]; readonly line: number };

const LINE_FEED = 10;
const BLANK = 32;
const PERCENT = 37;
const STAR = 42;

/**
 * Splits Gerber text into commands (Gerber format specification, sections 3.3 and 3.4). Line ends may stand
 * anywhere and mean nothing; words end with `*`, extended commands lie between two `%`. An unclosed last command is yielded as it stands.
 */
export function* gerberTokens(text: string): Generator<GerberToken> {
  let line = 1;
  let start = 0;
  let startLine = 0;
  let extended = false;
  let blocks: string[] = [];
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    if (code === LINE_FEED) line++;
    else if (code > BLANK && startLine === 0) startLine = line;
    if (code !== STAR && code !== PERCENT) continue;
    if (code === PERCENT && !extended && isComment(text, start)) continue;
    const word = clean(text.slice(start, index));
    start = index + 1;
    if (extended && (code === STAR || word !== '')) blocks.push(word);
    else if (word !== '') yield { kind: 'word', text: word, line: startLine };
    if (code === PERCENT) {
      if (extended && blocks.length > 0) yield { kind: 'extended', blocks, line: startLine };
      extended = !extended;
      blocks = [];
    }
    if (!extended || code === PERCENT) startLine = 0;
  }
  const rest = clean(text.slice(start));
  if (extended && blocks.length > 0) yield { kind: 'extended', blocks, line: startLine };
  else if (rest !== '') yield { kind: 'word', text: rest, line: startLine };
}

/** A percent sign inside a comment is text. */
function isComment(text: string, start: number): boolean {
  return /^\s*G0?4\b/.test(text.slice(start, start + 40));
}

function clean(text: string): string {
  return text.replace(/[\r\n]+/g, '').trim();
}
