import { classById } from '../../library/classes.ts';
import { TAG_GLYPHS } from '../../rules/tag-glyphs.ts';
import type { TagKind } from '../../tags.ts';
import { partStateWords } from './table.ts';

type SaidPart = {
  refdes: string;
  classId: string;
  place: string;
  peak: string | null;
  state: keyof typeof partStateWords | null;
  tags: readonly TagKind[];
};

/** The drawing in words, for assistive technology. */
export const mirrorWords = {
  title: (side: 'top' | 'bottom') => `Parts on the ${side} side`,
  place: (x: string, y: string) => `at ${x}, ${y}`,
  part: ({ refdes, classId, place, peak, state, tags }: SaidPart): string =>
    [
      refdes,
      classById(classId).name,
      place,
      ...(peak ? [`body peak ${peak}`] : []),
      ...(state ? [partStateWords[state].toLowerCase()] : []),
      ...tags.map((kind) => `tag ${TAG_GLYPHS[kind].name.toLowerCase()}`),
    ].join(', '),
} as const;
