import { useState } from 'react';
import type { Part } from '../../shared-types/board.ts';
import { limitsOf } from '../../shared-types/library/limits.ts';
import { editLabels } from '../../shared-types/words/window/edits.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { setOwnLimits } from '../editing/parts.ts';
import { useApp } from '../state/use-app.ts';
import { useUnits } from '../state/use-units.ts';
import { TextEntry } from '../widgets/TextEntry.tsx';
import { TemperatureEntry } from '../widgets/UnitEntry.tsx';

const fields = [
  { name: 'bodyC', judged: 'body', label: words.ownBody },
  { name: 'skinC', judged: 'skin', label: words.ownSkin },
  { name: 'jointC', judged: 'joint', label: words.ownJoint },
] as const;

/** Limits of the part's own data sheet: they win over the class, and each needs its source. */
export function OwnLimitFields({ part }: { part: Part }) {
  const app = useApp();
  const { measures } = useUnits();
  const [source, setSource] = useState(part.limits?.source ?? '');
  const byClass = limitsOf({ ...part, limits: undefined });
  const set = (name: string, value: number | null) => {
    const limits = { ...part.limits, [name]: value ?? undefined, source: source.trim() || words.ownSourceHint };
    const any = fields.some((field) => limits[field.name as 'bodyC'] !== undefined);
    app.bench.apply(editLabels.part([part.refdes]), (document) =>
      setOwnLimits(document, [part.refdes], any ? limits : null),
    );
  };
  const keepSource = (value: string) => {
    setSource(value);
    if (part.limits && value.trim()) {
      const limits = { ...part.limits, source: value.trim() };
      app.bench.apply(editLabels.part([part.refdes]), (document) => setOwnLimits(document, [part.refdes], limits));
    }
  };
  return (
    <>
      <h4 className="sub-head">{words.ownLimits}</h4>
      {fields.map(({ name, judged, label }) => {
        const usual = byClass[judged];
        return (
          <TemperatureEntry
            key={name}
            label={label}
            value={part.limits?.[name] ?? null}
            least={20}
            most={600}
            emptyIs={usual ? measures.degrees(usual.celsius) : '–'}
            onChange={(value) => set(name, value)}
          />
        );
      })}
      <TextEntry
        label={words.ownSource}
        value={source}
        placeholder={words.ownSourceHint}
        longest={500}
        onDone={keepSource}
      />
    </>
  );
}
