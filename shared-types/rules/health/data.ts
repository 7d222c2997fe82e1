import type { Board, Part } from '../../board.ts';
import { insidePolygon, rectangleCorners } from '../../geometry.ts';
import { isClassId } from '../../library/classes.ts';
import { heightOf } from '../../library/limits.ts';
import type { Plan } from '../../plan.ts';
import { hasBody } from './bodies.ts';
import type { HealthEntry } from './types.ts';

const nothing = { figures: {} } as const;

/** Classes and heights that nobody has said yet. Empty positions take no heat limits, flat marks no height. */
export function guessEntries(parts: readonly Part[]): HealthEntry[] {
  return parts.flatMap((part): HealthEntry[] => {
    const refdes = [part.refdes];
    const unknown = part.fitted && (part.class === 'unknown' || !isClassId(part.class));
    return [
      ...(unknown ? [{ kind: 'class-unknown', refdes, ...nothing } as const] : []),
      ...(part.classGuessed && !unknown ? [{ kind: 'class-guessed', refdes, ...nothing } as const] : []),
      ...(hasBody(part) && part.package.heightMm === null
        ? [{ kind: 'height-missing', refdes, ...nothing } as const]
        : []),
    ];
  });
}

/** What the board as a whole does not say. */
export function boardEntries({ parts, laminate }: Board): HealthEntry[] {
  const layers = laminate.layers.length;
  const none: HealthEntry[] = parts.length === 0 ? [{ kind: 'no-parts', refdes: [], figures: {} }] : [];
  if (layers === 0) return [...none, { kind: 'no-layers', refdes: [], figures: {} }];
  return laminate.layersKnown ? none : [...none, { kind: 'layers-guessed', refdes: [], figures: { layers } }];
}

/** Cans and stiffeners lower than a part under them (a frame is open at the top). */
export function coverEntries({ covers, parts }: Board): HealthEntry[] {
  return covers.flatMap((cover): HealthEntry[] => {
    if (cover.kind === 'frame') return [];
    const corners = rectangleCorners({ ...cover, turnDeg: cover.turn });
    const roomMm = cover.kind === 'can' ? cover.heightMm - cover.sheetMm : 0;
    const tall = parts
      .filter((part) => part.side === cover.side && hasBody(part) && insidePolygon(part, corners))
      .filter((part) => heightOf(part) > roomMm)
      .toSorted((a, b) => heightOf(b) - heightOf(a));
    if (tall.length === 0) return [];
    const figures = { roomMm: Math.max(0, roomMm), heightMm: heightOf(tall[0]), cover: cover.kind };
    return [{ kind: 'cover-low', refdes: tall.map(({ refdes }) => refdes), coverId: cover.id, figures }];
  });
}

/** Sites and tags of the plan that name what the board does not have, and sites on the wrong side of their target. */
export function planEntries({ parts, covers }: Board, plan: Plan): HealthEntry[] {
  const byName = new Map(parts.map((part) => [part.refdes, part]));
  const known = new Set([...byName.keys(), ...covers.map(({ id }) => id)]);
  const sites = plan.sites.flatMap(({ id, name, target, side }): HealthEntry[] => {
    const part = byName.get(target);
    if (!part) return [{ kind: 'site-lost', refdes: [target], siteId: id, figures: { name } }];
    return part.side === side ? [] : [{ kind: 'site-side', refdes: [target], siteId: id, figures: { name, side } }];
  });
  const tags = plan.tags.flatMap((tag): HealthEntry[] => {
    const named = tag.kind === 'relocate' ? [tag.refdes, tag.toRefdes] : [tag.refdes];
    const lost = named.filter((refdes) => refdes !== null && refdes !== '' && !known.has(refdes));
    return lost.length > 0
      ? [{ kind: 'tag-lost', refdes: lost as string[], tagId: tag.id, figures: { tag: tag.kind } }]
      : [];
  });
  return [...sites, ...tags];
}
