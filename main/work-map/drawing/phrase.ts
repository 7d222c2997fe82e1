import type { Phrase } from '../../../shared-types/words/work-map.ts';
import type { Face, Typefaces } from './typeface.ts';
import { LINE_PITCH } from './typeface.ts';

export type TextStyle = { face: Face; strong: Face; size: number; colour?: string };
export type Piece = { text: string; face: Face };
export type Line = { pieces: Piece[]; width: number };

type Word = { pieces: Piece[]; width: number; spaceBefore: boolean };

export const lineHeight = (style: TextStyle): number => style.size * LINE_PITCH;

/** Breaks a phrase into lines no wider than `width`; a word that is wider alone is cut where it must be. */
export function wrap(phrase: Phrase | string, width: number, style: TextStyle, type: Typefaces): Line[] {
  const parts = typeof phrase === 'string' ? [phrase] : phrase;
  const paragraphs: (string | { strong: string })[][] = [[]];
  for (const part of parts) {
    const text = typeof part === 'string' ? part : part.strong;
    text.split(/\r\n|\r|\n/).forEach((stretch, index) => {
      if (index > 0) paragraphs.push([]);
      paragraphs[paragraphs.length - 1].push(typeof part === 'string' ? stretch : { strong: stretch });
    });
  }
  return paragraphs.flatMap((paragraph) => wrapParagraph(paragraph, width, style, type));
}

function wrapParagraph(
  parts: (string | { strong: string })[],
  width: number,
  style: TextStyle,
  type: Typefaces,
): Line[] {
  const space = type.width(' ', style.face, style.size);
  const lines: Line[] = [{ pieces: [], width: 0 }];
  for (const word of wordsOf(parts, style, type).flatMap((one) => cutWord(one, width, style, type))) {
    let line = lines[lines.length - 1];
    const gap = line.pieces.length > 0 && word.spaceBefore ? space : 0;
    if (line.pieces.length > 0 && line.width + gap + word.width > width + 0.01) {
      line = { pieces: [], width: 0 };
      lines.push(line);
    } else if (gap > 0) {
      line.pieces.push({ text: ' ', face: style.face });
      line.width += gap;
    }
    line.pieces.push(...word.pieces);
    line.width += word.width;
  }
  return lines;
}

/** Words with the pieces they are made of; a strong figure directly beside plain text stays one word with it. */
function wordsOf(parts: (string | { strong: string })[], style: TextStyle, type: Typefaces): Word[] {
  const words: Word[] = [];
  let spaceBefore = false;
  let open = false;
  for (const part of parts) {
    const face = typeof part === 'string' ? style.face : style.strong;
    const text = typeof part === 'string' ? part : part.strong;
    for (const token of text.split(/([ \t]+)/).filter((one) => one !== '')) {
      if (/^[ \t]+$/.test(token)) {
        spaceBefore = true;
        open = false;
        continue;
      }
      const piece = { text: token, face };
      const pieceWidth = type.width(token, face, style.size);
      const last = words.at(-1);
      if (open && last) {
        last.pieces.push(piece);
        last.width += pieceWidth;
      } else words.push({ pieces: [piece], width: pieceWidth, spaceBefore });
      spaceBefore = false;
      open = true;
    }
  }
  return words;
}

function cutWord(word: Word, width: number, style: TextStyle, type: Typefaces): Word[] {
  if (word.width <= width) return [word];
  const cut: Word[] = [];
  let current: Word = { pieces: [], width: 0, spaceBefore: word.spaceBefore };
  for (const piece of word.pieces)
    for (const character of piece.text) {
      const characterWidth = type.width(character, piece.face, style.size);
      if (current.pieces.length > 0 && current.width + characterWidth > width) {
        cut.push(current);
        current = { pieces: [], width: 0, spaceBefore: false };
      }
      const last = current.pieces.at(-1);
      if (last && last.face === piece.face) last.text += character;
      else current.pieces.push({ text: character, face: piece.face });
      current.width += characterWidth;
    }
  return current.pieces.length > 0 ? [...cut, current] : cut;
}
