import { useMemo } from 'react';
import type { HealthEntry, HealthKind } from '../../../shared-types/rules/health/types.ts';
import { healthWords } from '../../../shared-types/words/board-health.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { hasUsualHeight, removeSites, takeClassHeights } from '../../editing/health-fixes.ts';
import { confirmClass } from '../../editing/parts.ts';
import { removeTagsById } from '../../editing/tags.ts';
import type { Edit } from '../../state/canvas-model.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';

type Fix = { words: string; label: string; edit: Edit };
type Props = { kind: HealthKind; entries: readonly HealthEntry[] };

/** The button that mends a whole kind in one undo step, where there is one obvious way to. */
export function HealthFix({ kind, entries }: Props) {
  const app = useApp();
  const { parts } = useDocument().board;
  const classes = useMemo(() => new Map(parts.map((part) => [part.refdes, part.class])), [parts]);
  const fix = fixOf(kind, entries, (refdes) => classes.get(refdes) ?? '');
  if (!fix) return null;
  return (
    <Button small onPress={() => app.bench.apply(fix.label, fix.edit)}>
      {fix.words}
    </Button>
  );
}

function fixOf(kind: HealthKind, entries: readonly HealthEntry[], classOf: (refdes: string) => string): Fix | null {
  const { fixes } = healthWords;
  const refdes = entries.flatMap((entry) => entry.refdes.slice(0, 1));
  switch (kind) {
    case 'class-guessed':
      return {
        words: fixes.classes(refdes.length),
        label: editLabels.classes(refdes),
        edit: (document) => confirmClass(document, refdes),
      };
    case 'height-missing': {
      const known = refdes.filter((one) => hasUsualHeight(classOf(one)));
      if (known.length === 0) return null;
      return {
        words: fixes.heights(known.length),
        label: editLabels.heights(known),
        edit: (document) => takeClassHeights(document, known),
      };
    }
    case 'tag-lost': {
      const ids = entries.flatMap(({ tagId }) => tagId ?? []);
      return {
        words: fixes.tags(ids.length),
        label: editLabels.lostTags,
        edit: (document) => removeTagsById(document, ids),
      };
    }
    case 'site-lost': {
      const ids = entries.flatMap(({ siteId }) => siteId ?? []);
      return {
        words: fixes.sites(ids.length),
        label: editLabels.lostSites,
        edit: (document) => removeSites(document, ids),
      };
    }
    default:
      return null;
  }
}
