import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import type { Station } from '../../../shared-types/plan.ts';
import { rounded } from '../../../shared-types/words/measures.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { stationWords as words } from '../../../shared-types/words/window/station.ts';
import { setFlowLevel, setStation } from '../../editing/station.ts';
import type { Edit } from '../../state/canvas-model.ts';
import { useApp, useTypedEdit } from '../../state/use-app.ts';
import { Button, IconButton } from '../../widgets/Buttons.tsx';
import { Check } from '../../widgets/Check.tsx';
import { NumberEntry } from '../../widgets/NumberEntry.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

type Levels = Station['flowLevels'];
const MOST = 12;

/** What the dial says and the flow at it; a bag and a clock measure it. */
export function LevelTable({ levels }: { levels: Levels }) {
  const app = useApp();
  const [bag, setBag] = useState(false);
  const edit = (change: Edit) => app.bench.apply(editLabels.station, change);
  const put = (flowLevels: Levels) => edit((document) => setStation(document, { flowLevels }));
  return (
    <>
      <div className="level-table">
        {levels.map((level, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the place on the dial is the identity
          <Level key={index} level={level} index={index} edit={edit} onRemove={() => put(levels.toSpliced(index, 1))} />
        ))}
      </div>
      {levels.length < MOST && (
        <Button look="quiet" small icon={Plus} onPress={() => put([...levels, nextLevel(levels)])}>
          {words.addLevel}
        </Button>
      )}
      <Check on={bag} onChange={setBag}>
        {words.bag}
      </Check>
      {bag && (
        <Bag
          levels={levels}
          onUse={(index, flowLMin) => edit((document) => setFlowLevel(document, index, { flowLMin }))}
        />
      )}
    </>
  );
}

const nextLevel = (levels: Levels): Levels[number] => ({
  name: String(levels.length + 1),
  flowLMin: Math.min(500, (levels.at(-1)?.flowLMin ?? 10) + 10),
});

type LevelProps = { level: Levels[number]; index: number; edit: (change: Edit) => void; onRemove: () => void };

function Level({ level, index, edit, onRemove }: LevelProps) {
  const name = useTypedEdit(
    `${editLabels.station} level ${index}`,
    (value) => (document) => setFlowLevel(document, index, { name: value }),
  );
  return (
    <>
      <TextEntry bare label={words.level(level.name)} value={level.name} longest={40} needed {...name} />
      <NumberEntry
        bare
        label={words.levelFlow(level.name)}
        value={level.flowLMin}
        unit="L/min"
        least={0}
        most={500}
        onChange={(flowLMin) => flowLMin !== null && edit((document) => setFlowLevel(document, index, { flowLMin }))}
      />
      <IconButton icon={X} small label={words.removeLevel(level.name)} onPress={onRemove} />
    </>
  );
}

/** Flow from the volume of a bag and the time until it is full. */
function Bag({ levels, onUse }: { levels: Levels; onUse: (index: number, flowLMin: number) => void }) {
  const [litres, setLitres] = useState<number | null>(null);
  const [seconds, setSeconds] = useState<number | null>(null);
  const flow = litres && seconds ? Math.min(500, Math.round((litres / seconds) * 600) / 10) : null;
  return (
    <>
      <NumberEntry label={words.bagVolume} value={litres} unit="L" least={0.1} most={500} onChange={setLitres} />
      <NumberEntry label={words.bagSeconds} value={seconds} unit="s" least={0.1} most={3600} onChange={setSeconds} />
      {flow !== null &&
        levels.map((level, index) => (
          <Button key={level.name} look="quiet" small onPress={() => onUse(index, flow)}>
            {words.bagUse(level.name, rounded(flow, 1))}
          </Button>
        ))}
    </>
  );
}
