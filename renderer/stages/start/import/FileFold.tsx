import type { ImportFacts } from '../../../../shared-types/import-report.ts';
import { ROLE_WORDS } from '../../../../shared-types/words/imports.ts';
import { importDialogWords as words } from '../../../../shared-types/words/window/import-dialog.ts';
import { Fold } from '../../../widgets/Section.tsx';

/** Which file was taken for what. */
export function FileFold({ files }: { files: ImportFacts['files'] }) {
  return (
    <Fold title={words.files(files.length)} summary={rolesOf(files)} open={files.length <= 4}>
      <dl className="lines">
        {files.map(({ name, role }) => (
          <div key={name} style={{ display: 'contents' }}>
            <dt>{name}</dt>
            <dd>{ROLE_WORDS[role] ?? role}</dd>
          </div>
        ))}
      </dl>
    </Fold>
  );
}

function rolesOf(files: ImportFacts['files']): string {
  return [...new Set(files.filter(({ role }) => role !== 'not-used').map(({ role }) => ROLE_WORDS[role] ?? role))].join(
    ', ',
  );
}
