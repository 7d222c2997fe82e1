import { type ReactNode, useEffect, useState } from 'react';
import type { RequestOutput } from '../../shared-types/contract.ts';
import type { Settings } from '../../shared-types/settings.ts';
import { frameWords, settingsWords as words } from '../../shared-types/words/window/frame.ts';
import { useApp, useAppState } from '../state/use-app.ts';
import { Segmented } from '../widgets/Buttons.tsx';
import { Dialogue } from '../widgets/Dialogue.tsx';
import { TextEntry } from '../widgets/TextEntry.tsx';
import './dialogs.css';

const themes = (['system', 'light', 'dark'] as const).map((id) => ({ id, label: words.themes[id] }));

const wheelChoices = (['zoom', 'pan'] as const).map((id) => ({ id, label: words.wheelDoes[id] }));

export function SettingsSheet({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const settings = useAppState((state) => state.settings);
  const set = (fields: Partial<Settings>) => app.changeSettings(fields);
  return (
    <Dialogue title={words.title} onClose={onClose}>
      <div className="settings-sheet">
        <Row label={words.theme}>
          <Segmented label={words.theme} value={settings.theme} choices={themes} onChange={(theme) => set({ theme })} />
        </Row>
        <Row label={words.temperature}>
          <Segmented
            label={words.temperature}
            value={settings.temperatureUnit}
            choices={[
              { id: 'C', label: '°C' },
              { id: 'F', label: '°F' },
            ]}
            onChange={(temperatureUnit) => set({ temperatureUnit })}
          />
        </Row>
        <Row label={words.length}>
          <Segmented
            label={words.length}
            value={settings.lengthUnit}
            choices={[
              { id: 'mm', label: 'mm' },
              { id: 'mil', label: 'mil' },
            ]}
            onChange={(lengthUnit) => set({ lengthUnit })}
          />
        </Row>
        <Row label={words.wheel}>
          <Segmented
            label={words.wheel}
            value={settings.wheelDoes}
            choices={wheelChoices}
            onChange={(wheelDoes) => set({ wheelDoes })}
          />
        </Row>
        <TextEntry
          label={words.technician}
          value={settings.technician}
          longest={200}
          onDone={(technician) => technician !== settings.technician && set({ technician })}
        />
        <Facts />
      </div>
    </Dialogue>
  );
}

const Row = ({ label, children }: { label: string; children: ReactNode }) => (
  <div className="setting">
    <span className="soft">{label}</span>
    {children}
  </div>
);

function Facts() {
  const app = useApp();
  const [about, setAbout] = useState<RequestOutput<'about.read'> | null>(null);
  useEffect(() => {
    void app.backend.request('about.read', {}).then((answer) => answer.ok && setAbout(answer.value));
  }, [app]);
  if (!about) return null;
  const drawn = app.canvas.current?.rendererName();
  return (
    <dl className="facts">
      <dt>{words.shelfFolder}</dt>
      <dd>{about.shelfFolder}</dd>
      <dt>{words.version}</dt>
      <dd>
        {frameWords.program} {about.version}, {words.shells[about.shell]}
      </dd>
      {drawn && (
        <>
          <dt>{words.drawnWith}</dt>
          <dd>{drawn}</dd>
        </>
      )}
    </dl>
  );
}
