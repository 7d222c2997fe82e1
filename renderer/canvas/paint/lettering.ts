import '@fontsource/ibm-plex-mono/latin-400.css';
import '@fontsource/ibm-plex-mono/latin-500.css';
import '@fontsource/ibm-plex-mono/latin-700.css';
import { Rectangle, Texture } from 'pixi.js';
import { type Face, LETTER_PX, LINE_PX, TEXT_PX } from '../drawing/marks.ts';
import { cssColour, type Theme } from '../theme.ts';

/** One letter, ready to be laid down: its picture, and its size in CSS pixels (larger than its advance: rims overlap). */
export type Letter = { texture: Texture; width: number; height: number };

/** Letters of every face, drawn once each at the size they are shown in. */
export type Lettering = {
  letter(face: Face, character: string): Letter;
  /** The letter's rim, to lie under the letters of the whole word; null: the face has none. */
  rim(face: Face, character: string): Letter | null;
};

/** Free pixels round each letter for its rim and its overhang. */
const MARGIN_PX = 3;
const CELL_WIDTH = LETTER_PX + 2 * MARGIN_PX;
const CELL_HEIGHT = LINE_PX + 2 * MARGIN_PX;
const SHEET_COLUMNS = 24;
const SHEET_ROWS = 12;
const FONT_STACK = '"IBM Plex Mono", "DejaVu Sans Mono", monospace';

type FaceStyle = { weight: number; colour: number; rim: number | null };

function styleOf(face: Face, theme: Theme): FaceStyle {
  const styles: Record<Face, FaceStyle> = {
    ink: { weight: 500, colour: theme.ink, rim: null },
    soft: { weight: 400, colour: theme.softInk, rim: null },
    halo: { weight: 500, colour: theme.ink, rim: theme.paper },
    'halo-bold': { weight: 700, colour: theme.ink, rim: theme.paper },
    'soft-halo': { weight: 500, colour: theme.softInk, rim: theme.paper },
    'accent-halo': { weight: 700, colour: theme.accent, rim: theme.paper },
    badge: { weight: 700, colour: theme.paper, rim: null },
  };
  return styles[face];
}

/** Loads the weights the canvas letters with; a font that does not come leaves the stand-in. */
export async function loadFonts(): Promise<void> {
  const weights = [400, 500, 700].map((weight) => document.fonts.load(`${weight} ${TEXT_PX}px "IBM Plex Mono"`));
  await Promise.allSettled(weights);
}

export function makeLettering(theme: Theme, ratio: number): Lettering {
  const letters = new Map<string, Letter>();
  let sheet: Sheet | null = null;
  const drawn = (key: string, character: string, style: FaceStyle): Letter => {
    const known = letters.get(key);
    if (known) return known;
    if (!sheet || sheet.used >= SHEET_COLUMNS * SHEET_ROWS) sheet = newSheet(ratio);
    const letter = drawLetter(sheet, character, style, ratio);
    letters.set(key, letter);
    return letter;
  };
  return {
    letter: (face, character) => drawn(face + character, character, { ...styleOf(face, theme), rim: null }),
    rim(face, character) {
      const style = styleOf(face, theme);
      return style.rim === null ? null : drawn(`rim ${style.weight} ${character}`, character, style);
    },
  };
}

type Sheet = { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D; texture: Texture; used: number };

function newSheet(ratio: number): Sheet {
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(SHEET_COLUMNS * CELL_WIDTH * ratio);
  canvas.height = Math.ceil(SHEET_ROWS * CELL_HEIGHT * ratio);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no 2D canvas');
  context.scale(ratio, ratio);
  context.textAlign = 'center';
  context.textBaseline = 'alphabetic';
  context.lineJoin = 'round';
  const texture = Texture.from({ resource: canvas, resolution: ratio }, true);
  return { canvas, context, texture, used: 0 };
}

function drawLetter(sheet: Sheet, character: string, style: FaceStyle, ratio: number): Letter {
  const column = sheet.used % SHEET_COLUMNS;
  const row = Math.floor(sheet.used / SHEET_COLUMNS);
  sheet.used++;
  const left = Math.round(column * CELL_WIDTH * ratio) / ratio;
  const top = Math.round(row * CELL_HEIGHT * ratio) / ratio;
  const { context } = sheet;
  const x = left + CELL_WIDTH / 2;
  const baseline = top + CELL_HEIGHT / 2 + Math.round(TEXT_PX * 0.35);
  context.font = `${style.weight} ${TEXT_PX}px ${FONT_STACK}`;
  if (style.rim !== null) {
    context.strokeStyle = cssColour(style.rim);
    context.lineWidth = 2.75;
    context.strokeText(character, x, baseline);
  } else {
    context.fillStyle = cssColour(style.colour);
    context.fillText(character, x, baseline);
  }
  sheet.texture.source.update();
  const texture = new Texture({
    source: sheet.texture.source,
    frame: new Rectangle(left, top, CELL_WIDTH, CELL_HEIGHT),
  });
  return { texture, width: CELL_WIDTH, height: CELL_HEIGHT };
}
