/** One command of a Gerber file: a word (`X1Y2D01`) or the blocks of an extended command (`%...%`). */
export type GerberToken =
  | { readonly kind: 'word'; readonly text: string; readonly line: number }
  | { readonly kind: 'extended'; readonly blocks: readonly string[]; readonly line: number };

const LINE_FEED = 10;
const PERCENT = 37;
const STAR = 42;

/**
 * Splits Gerber text into commands (Gerber format specification, sections 3.3 and 3.4). Line ends may stand
 * anywhere and mean nothing; words end with `*`, extended commands lie between two `%`. An unclosed last command is yielded as it stands.
 */
export function* gerberTokens(text: string): Generator<GerberToken> {
  let line = 1;
  let start = 0;
  let startLine = 1;
  let extended = false;
  let blocks: string[] = [];
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    if (code === LINE_FEED) line++;
    else if (code === STAR) {
      const word = clean(text.slice(start, index));
      start = index + 1;
      if (extended) blocks.push(word);
      else if (word !== '') yield { kind: 'word', text: word, line: startLine };
      startLine = line;
    } else if (code === PERCENT) {
      const rest = clean(text.slice(start, index));
      start = index + 1;
      if (rest !== '') {
        if (extended) blocks.push(rest);
        else yield { kind: 'word', text: rest, line: startLine };
      }
      if (extended && blocks.length > 0) yield { kind: 'extended', blocks, line: startLine };
      extended = !extended;
      blocks = [];
      startLine = line;
    }
  }
  const rest = clean(text.slice(start));
  if (extended && blocks.length > 0) yield { kind: 'extended', blocks, line: startLine };
  else if (rest !== '') yield { kind: 'word', text: rest, line: startLine };
}

function clean(text: string): string {
  return text.replace(/[\r\n]+/g, '').trim();
}
