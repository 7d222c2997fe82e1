import type { ImportNote } from '../../../../shared-types/import-report.ts';
import { SHAPE_KIND_WORDS } from '../../../../shared-types/words/drawings.ts';
import type { DrawnOutline } from './drawings.ts';

/** What reading DXF and SVG drawings brought up. */
export function drawingNotes(drawn: readonly DrawnOutline[]): ImportNote[] {
  return drawn.flatMap((one) => {
    const { file, drawing, unit, layer, loops } = one;
    const notes: (ImportNote | false)[] = [
      loops === 0 && { weight: 'warn', code: 'drawing-no-loop', file },
      drawing.cutShort && { weight: 'warn', code: 'drawing-cut-short', file },
      unitNote(one),
      layer !== null && { weight: 'note', code: 'drawing-layer', file, detail: { layer } },
      passedOver(one),
      loops > 0 && one.unitBy === 'said' && { weight: 'note', code: 'drawing-unit-said', file, detail: { unit } },
    ];
    return notes.filter((note) => note !== false);
  });
}

function unitNote({ file, unit, unitBy, refused, loops }: DrawnOutline): ImportNote | false {
  if (loops === 0) return false;
  if (refused) return { weight: 'warn', code: 'drawing-unit-refused', file, detail: { said: refused, unit } };
  if (unitBy === 'parts') return { weight: 'note', code: 'drawing-unit-by-parts', file, detail: { unit } };
  if (unitBy === 'size') return { weight: 'warn', code: 'drawing-unit-by-size', file, detail: { unit } };
  return unitBy === 'usual' && { weight: 'warn', code: 'drawing-unit-pixels', file };
}

function passedOver({ file, drawing }: DrawnOutline): ImportNote | false {
  const kinds = [...drawing.passedOver]
    .slice(0, 8)
    .map(([kind, count]) => `${SHAPE_KIND_WORDS[kind] ?? kind} ${count}`);
  return kinds.length > 0 && { weight: 'note', code: 'drawing-passed-over', file, detail: { kinds: kinds.join(', ') } };
}
