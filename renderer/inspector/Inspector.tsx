import { X } from 'lucide-react';
import type { Part } from '../../shared-types/board.ts';
import { inspectorWords as words } from '../../shared-types/words/window/inspector.ts';
import { useApp, useAppState, useDocument } from '../state/use-app.ts';
import { IconButton } from '../widgets/Buttons.tsx';
import { ExposureSection } from './ExposureSection.tsx';
import { PartDataSection } from './PartDataSection.tsx';
import { TagFields } from './TagFields.tsx';
import { TagStrip } from './TagStrip.tsx';
import './inspector.css';

/** What is selected: tags, what it gets, its data. It lies at the foot of the panel, so the stage above stays where it is. */
export function Inspector() {
  const app = useApp();
  const selected = useAppState((state) => state.selection.parts);
  const { board } = useDocument();
  const parts = selected.size > 0 ? board.parts.filter((part) => selected.has(part.refdes)) : [];
  if (parts.length === 0) return null;
  return (
    <section className="inspector" aria-label={words.title}>
      <header>
        <Title parts={parts} />
        <IconButton icon={X} small label={words.clear} keys="Esc" onPress={() => app.bench.clearSelection()} />
      </header>
      <TagStrip />
      <div className="body scrolls">
        {parts.length === 1 && <ExposureSection refdes={parts[0].refdes} />}
        {parts.length === 1 && <TagFields refdes={parts[0].refdes} />}
        <PartDataSection key={parts.length === 1 ? parts[0].refdes : 'many'} parts={parts} />
      </div>
    </section>
  );
}

function Title({ parts }: { parts: readonly Part[] }) {
  if (parts.length > 1) return <h2>{words.many(parts.length)}</h2>;
  const [part] = parts;
  const said = [part.value, part.package.name].filter(Boolean).join(', ');
  return (
    <h2>
      {part.refdes}
      <span className="soft">
        {words.side[part.side]}
        {said && `, ${said}`}
      </span>
    </h2>
  );
}
