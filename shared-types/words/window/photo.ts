import type { Side } from '../../geometry.ts';
import type { MatchPair, PhotoFitKind } from '../../photo.ts';
import type { FitRefusal } from '../../rules/photo-spread.ts';

const seen: Record<Side, string> = { top: 'top', bottom: 'bottom' };
const list = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers[numbers.length - 1]}`;
const kinds: Record<PhotoFitKind, string> = {
  similarity: 'Scale and turn',
  affine: 'Scale, turn and shear',
  projective: 'Photo taken at an angle',
};

/** Words of the stage Photo. */
export const photoWords = {
  looks: 'Look and map',
  ofSide: (side: Side) => `Photos of the ${seen[side]}`,
  add: 'Add photos',
  none: (side: Side) => `No photo of the ${seen[side]} yet. Add one, or drop it on the window.`,
  noneHint: 'JPEG, PNG, WebP or TIFF, up to 120 megapixels. Take it from straight above, the whole board in view.',
  preparing: (name: string) => `Reading ${name}`,
  size: (widthPx: number, heightPx: number) => `${widthPx} × ${heightPx} px`,
  turned: 'set upright',
  hide: (name: string) => `Hide ${name}`,
  show: (name: string) => `Show ${name}`,
  remove: (name: string) => `Remove ${name} from the ticket`,
  raise: (name: string) => `Put ${name} on top`,
  missing: 'The picture is not in this ticket. Add the file again.',
  loading: 'Decoding',
  side: 'Seen on it',
  sides: { top: 'Top', bottom: 'Bottom' },
  opacity: 'Opacity',
  blink: 'Hold U to see the drawing without the photo.',
  kind: 'Map',
  kinds: { automatic: 'By the number of points', ...kinds },
  matching: 'Match points',
  begin: 'Match points',
  stop: 'Done',
  step: 'Click a point in the photo (a corner, a hole, pin 1), then the same place on the drawing; Enter leaves it where it lies. Drag a ring to move its point.',
  fitted: (kind: PhotoFitKind) => kinds[kind],
  guessed: 'Laid over the outline by guess.',
  need: {
    0: 'Two pairs settle place, size and turn.',
    1: 'One more pair settles place, size and turn.',
    2: 'A third pair takes out a shear, a fourth the angle of the camera.',
    3: 'A fourth pair takes out the angle of the camera.',
  } as Record<number, string>,
  close: 'The points lie close together: small errors grow towards the edges. Take some near opposite corners.',
  spare: 'One pair more than needed shows how good they are.',
  rms: 'Left-out error',
  rmsTip: 'Each pair foretold by the others: root mean square of the distances on the board.',
  refusal: ({ code, on, pairs, needed }: FitRefusal): string => {
    const where = on === 'photo' ? 'on the photo' : on === 'board' ? 'on the drawing' : 'on photo and drawing';
    const numbers = list(pairs.map((index) => index + 1));
    switch (code) {
      case 'too-few-pairs':
        return `This map needs ${needed} pairs.`;
      case 'same-place':
        return `Pairs ${numbers} lie in one place ${where}. Move one of them away.`;
      case 'on-one-line':
        return `Pairs ${numbers} lie on one line ${where}. Add one off that line.`;
      case 'all-but-one-on-one-line':
        return `Pairs ${numbers} lie on one line ${where}: the angle of the camera cannot be told. Add one off that line.`;
      case 'folded':
        return 'The pairs contradict each other: no view of the board shows them so. Look for two that were swapped.';
    }
  },
  turnedOver: (side: Side) =>
    `The photo lies mirrored: does it show the ${side === 'top' ? 'bottom' : 'top'}, or is it itself mirrored?`,
  /** `off`: null when the others put it beyond anything the camera can see. */
  suspect: (number: number, off: string | null) =>
    off === null
      ? `Pair ${number} does not go with the others at all. Check it first.`
      : `Pair ${number} does not go with the others: ${off} off. Check it first.`,
  suspectMark: 'check',
  anchors: {
    free: () => 'free point',
    part: (refdes: string) => `middle of ${refdes}`,
    'pin-1': (refdes: string) => `pin 1 of ${refdes}`,
    corner: () => 'corner of the outline',
    hole: () => 'cutout or hole',
    fiducial: () => 'fiducial',
  } satisfies Record<MatchPair['anchor'], (refdes: string) => string>,
  pairs: 'Pairs of points',
  removePair: (number: number) => `Remove pair ${number}`,
  editPair: (number: number) => `Pair ${number}: show and edit`,
  photoX: 'Photo x',
  photoY: 'Photo y',
  boardX: 'Board x',
  boardY: 'Board y',
  distance: 'Distance of the two points',
  distanceHint: 'No drawing yet? Two points of the photo and their true distance give its scale.',
  pairForPart: (refdes: string) => `Pair for ${refdes}`,
  lens: 'Photo under the pointer, magnified',
  open: (count: number) =>
    count === 1 ? '1 photo to match or pair to check' : `${count} photos to match or pairs to check`,
  needsTicket: 'Open a ticket first',
  needsTicketText: 'Then drop the photo on its drawing. A board without a drawing can be drawn over its photo.',
  ticketLeft: 'The ticket was left before its photos were in',
  ticketLeftText: (names: readonly string[]) => `Open it again and add: ${names.join(', ')}.`,
  heif: {
    found: 'a HEIC or HEIF photo',
    todo: "Save it as JPEG: on the phone set the camera's format to 'most compatible', or export the photo as JPEG.",
  },
  largestBytes: '160 MB',
  megapixels: (count: number) => `${count} megapixels`,
} as const;

/** Names of undo steps. */
export const photoEdits = {
  add: (name: string) => `add photo ${name}`,
  remove: (name: string) => `remove photo ${name}`,
  show: 'show or hide a photo',
  side: 'change the side of a photo',
  raise: 'put a photo on top',
  opacity: "change a photo's opacity",
  fit: "change a photo's map",
  addPair: 'add a pair of points',
  movePair: 'move a pair of points',
  removePair: 'remove a pair of points',
  distance: 'set the distance of two points',
} as const;
