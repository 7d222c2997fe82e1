import type { Part } from '../../../../shared-types/board.ts';

/** A part of a class with a body in mm; everything else as usual. */
export function partOf(
  classId: string,
  body: [lengthMm: number, widthMm: number, heightMm: number | null],
  more: Partial<Part> = {},
): Part {
  return {
    refdes: 'U1',
    side: 'top',
    x: 0,
    y: 0,
    turn: 0,
    package: { name: '', shape: 'rectangle', lengthMm: body[0], widthMm: body[1], heightMm: body[2] },
    class: classId,
    classGuessed: false,
    value: '',
    fitted: true,
    alloy: 'sac305',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...more,
  };
}
