import { Pencil, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { OwnPackage } from '../../../../shared-types/own-package.ts';
import { ownPackageWords as words } from '../../../../shared-types/words/window/parts.ts';
import { offerOfOwn } from '../../../editing/own-packages.ts';
import { useApp, useAppState, useDocument } from '../../../state/use-app.ts';
import { Button, IconButton } from '../../../widgets/Buttons.tsx';
import { Fold } from '../../../widgets/Section.tsx';
import { dropPackage, type Home, type PackageDraft } from './keep-package.ts';
import { sizeOf } from './PackageBox.tsx';
import { PackageEditor } from './PackageEditor.tsx';

const EMPTY: OwnPackage = {
  name: '',
  shape: 'rectangle',
  lengthMm: 5,
  widthMm: 5,
  heightMm: null,
  class: 'unknown',
};

/** Packages of the board's and the user's own: a list of each, and an editor. */
export function OwnPackagesFold() {
  const app = useApp();
  const { packages } = useDocument().board;
  const users = useAppState((state) => state.settings.packages);
  const [draft, setDraft] = useState<PackageDraft | null>(null);
  const rows: { home: Home; own: OwnPackage }[] = [
    ...packages.map((own) => ({ home: 'board' as const, own })),
    ...users.map((own) => ({ home: 'user' as const, own })),
  ];
  return (
    <Fold title={words.title} summary={words.count(packages.length, users.length)}>
      <ul className="class-groups">
        {rows.map(({ home, own }) => (
          <li key={`${home} ${own.name}`} className="own-package">
            <span>
              {own.name} <span className="soft">{sizeOf(offerOfOwn(own, home))}</span>
            </span>
            <span className="soft">{words.homes[home]}</span>
            <span className="tool-row">
              <IconButton
                icon={Pencil}
                small
                label={words.edit(own.name)}
                onPress={() => setDraft({ home, former: own.name, own })}
              />
              <IconButton
                icon={Trash2}
                small
                label={words.remove(own.name)}
                onPress={() => dropPackage(app, home, own.name)}
              />
            </span>
          </li>
        ))}
      </ul>
      <Button small onPress={() => setDraft({ home: 'board', former: null, own: EMPTY })}>
        {words.add}
      </Button>
      {draft && <PackageEditor draft={draft} onClose={() => setDraft(null)} />}
    </Fold>
  );
}
