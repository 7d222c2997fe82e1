import { useMemo } from 'react';
import { Button as BareButton } from 'react-aria-components';
import type { Part } from '../../../shared-types/board.ts';
import { classById } from '../../../shared-types/library/classes.ts';
import { boardWords as words } from '../../../shared-types/words/window/board.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { confirmClass } from '../../editing/parts.ts';
import { useApp, useDocument } from '../../state/use-app.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';

/** Guessed classes, many at once: confirm them, or select their parts and set another class. */
export function ClassSection() {
  const app = useApp();
  const { parts } = useDocument().board;
  const groups = useMemo(() => guessedGroups(parts), [parts]);
  if (parts.length === 0) return <Section title={words.classes}>{words.noParts}</Section>;
  const all = groups.flatMap((group) => group.refdes);
  const confirm = (refdes: readonly string[]) =>
    app.bench.apply(editLabels.classes(refdes), (document) => confirmClass(document, refdes));
  return (
    <Section title={words.classes} count={all.length}>
      <p className="empty">{all.length > 0 ? words.classesText : words.classesDone}</p>
      <ul className="class-groups">
        {groups.map(({ id, refdes }) => (
          <li key={id}>
            <BareButton
              className="pick"
              aria-label={words.selectClass(classById(id).name)}
              onPress={() =>
                app.bench.select(
                  refdes.map((one) => ({ kind: 'part', refdes: one })),
                  'replace',
                )
              }
            >
              <span>{classById(id).name}</span>
            </BareButton>
            <span className="number">{refdes.length}</span>
            <Button look="link" small onPress={() => confirm(refdes)}>
              {words.confirm}
            </Button>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function guessedGroups(parts: readonly Part[]): { id: string; refdes: string[] }[] {
  const groups = new Map<string, string[]>();
  for (const part of parts) {
    if (!part.classGuessed) continue;
    const list = groups.get(part.class);
    if (list) list.push(part.refdes);
    else groups.set(part.class, [part.refdes]);
  }
  return [...groups]
    .map(([id, refdes]) => ({ id, refdes }))
    .toSorted((a, b) => a.refdes.length - b.refdes.length || classById(a.id).name.localeCompare(classById(b.id).name));
}
