import type { TurnRule } from '../../../../shared-types/import-choices.ts';
import { BY_WORDS } from '../../../../shared-types/words/imports.ts';
import {
  bottomTurnWords,
  topTurnWords,
  importDialogWords as words,
} from '../../../../shared-types/words/window/import-dialog.ts';
import type { ImportedBoard } from '../../../state/app-state.ts';
import { Choice } from '../../../widgets/Choice.tsx';
import { Section } from '../../../widgets/Section.tsx';
import { LengthEntry } from '../../../widgets/UnitEntry.tsx';
import type { Choose } from './choose.ts';

const entries = <T extends string>(labels: Record<T, string>) =>
  (Object.keys(labels) as T[]).map((id) => ({ id, label: labels[id] }));
const topTurns = entries(topTurnWords);
const bottomTurns = entries(bottomTurnWords);
const bottomXs = entries(words.bottomXs);
const panels = entries(words.panels);

/** How positions and turns were read, each with its reason, each to be changed. */
export function SenseSection({ imported, choose }: { imported: ImportedBoard; choose: Choose }) {
  const { report } = imported.read;
  const { sense, offset, panel, counts } = report;
  // An outline alone has no positions.
  if (counts.top + counts.bottom + counts.inner === 0) return null;
  const turn: TurnRule = { top: sense.top as TurnRule['top'], bottom: sense.bottom as TurnRule['bottom'] };
  const move = (fields: { x?: number; y?: number }) =>
    choose({ offset: { x: fields.x ?? offset.xMm, y: fields.y ?? offset.yMm } });
  const offsetWhy = [BY_WORDS[offset.by], words.votes(offset)].filter(Boolean).join(', ');
  return (
    <Section title={words.conventions}>
      {counts.bottom > 0 && (
        <Choice
          label={`${words.bottomX} (${BY_WORDS[sense.xBy]})`}
          value={sense.xNegated ? 'negated' : 'asSeenFromTop'}
          items={bottomXs}
          onChange={(bottomX) => choose({ bottomX })}
        />
      )}
      {counts.bottom > 0 && (
        <Choice
          label={words.bottomY}
          value={sense.yNegated ? 'negated' : 'asSeenFromTop'}
          items={bottomXs}
          onChange={(bottomY) => choose({ bottomY })}
        />
      )}
      <Choice
        label={words.turnTop}
        value={turn.top}
        items={topTurns}
        onChange={(top) => choose({ turn: { ...turn, top } })}
      />
      {counts.bottom > 0 && (
        <Choice
          label={words.turnBottom}
          value={turn.bottom}
          items={bottomTurns}
          onChange={(bottom) => choose({ turn: { ...turn, bottom } })}
        />
      )}
      <p className="soft reason">{words.turnCheck(sense)}</p>
      <LengthEntry label={words.offsetX} value={offset.xMm} onChange={(x) => x !== null && move({ x })} />
      <LengthEntry label={words.offsetY} value={offset.yMm} onChange={(y) => y !== null && move({ y })} />
      <p className="soft reason">{offsetWhy}</p>
      {panel && (
        <>
          <Choice
            label={words.panel}
            value={panel.taken}
            items={panels}
            onChange={(taken) => choose({ panel: taken })}
          />
          <p className="soft reason">{words.panelOf(panel.images)}</p>
        </>
      )}
    </Section>
  );
}
