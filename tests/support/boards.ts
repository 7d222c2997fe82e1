import { type Board, emptyBoard, type Part } from '../../shared-types/board.ts';

/** A fitted 10 x 10 mm array part at (50, 40) on top; fields to change may be given. */
export function partNamed(refdes: string, fields: Partial<Part> = {}): Part {
  return {
    refdes,
    side: 'top',
    x: 50,
    y: 40,
    turn: 0,
    package: { name: 'BGA 10x10', shape: 'rectangle', lengthMm: 10, widthMm: 10, heightMm: 1.2 },
    class: 'bga',
    classGuessed: false,
    value: '',
    fitted: true,
    alloy: 'sac305',
    edgeBonded: false,
    underfilled: false,
    coated: false,
    ...fields,
  };
}

/** A 100 x 80 mm board with these parts. */
export const boardWith = (parts: Part[]): Board => ({ ...emptyBoard('Probe board', 100, 80), parts });
