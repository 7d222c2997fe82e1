import { FileDiff } from 'lucide-react';
import { boxOf, flattenContour } from '../../../shared-types/geometry.ts';
import { boardWords as words } from '../../../shared-types/words/window/board.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { setBoardData } from '../../editing/board-data.ts';
import { useApp, useDocument, useTypedEdit } from '../../state/use-app.ts';
import { useUnits } from '../../state/use-units.ts';
import { Button } from '../../widgets/Buttons.tsx';
import { Section } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';
import { chooseUpdateFiles } from '../start/take-files.ts';
import { ClassSection } from './ClassSection.tsx';
import { HealthSection } from './HealthSection.tsx';
import { LaminateSection } from './LaminateSection.tsx';
import { OutlineSection } from './OutlineSection.tsx';
import { PlaceFold } from './PlaceFold.tsx';
import { CoverSection } from './parts/CoverSection.tsx';
import { OwnPackagesFold } from './parts/OwnPackagesFold.tsx';
import { PlaceSection } from './parts/PlaceSection.tsx';
import '../stages.css';
import './board.css';

export function BoardStage() {
  return (
    <>
      <BoardSection />
      <OutlineSection />
      <PlaceFold />
      <PlaceSection />
      <HealthSection />
      <ClassSection />
      <LaminateSection />
      <CoverSection />
      <OwnPackagesFold />
    </>
  );
}

function BoardSection() {
  const app = useApp();
  const { board } = useDocument();
  const { measures } = useUnits();
  const name = useTypedEdit(editLabels.board, (value) => (document) => setBoardData(document, { name: value }));
  const revision = useTypedEdit(editLabels.board, (value) => (document) => setBoardData(document, { revision: value }));
  const box = boxOf(flattenContour(board.outline, 0.1));
  const top = board.parts.filter((part) => part.side === 'top').length;
  const empty = board.parts.filter((part) => !part.fitted).length;
  return (
    <Section title={words.board}>
      <TextEntry label={words.name} value={board.name} longest={200} needed {...name} />
      <TextEntry label={words.revision} value={board.revision} longest={100} {...revision} />
      <dl className="lines" style={{ paddingTop: 8 }}>
        <dt>{words.size}</dt>
        <dd className="figure">
          {measures.length(box.maxX - box.minX)} × {measures.length(box.maxY - box.minY)}
        </dd>
        <dt>{words.parts}</dt>
        <dd>{words.partsOf(top, board.parts.length - top)}</dd>
        {empty > 0 && (
          <>
            <dt>{words.empty}</dt>
            <dd className="figure">{empty}</dd>
          </>
        )}
        {board.source.licence && (
          <>
            <dt>{words.licence}</dt>
            <dd>{board.source.licence}</dd>
          </>
        )}
      </dl>
      <p className="drawn-from">
        {words.drawnFrom} {board.source.drawnFrom || words.unknownSource}
        {board.source.invented && `. ${words.invented}.`}
      </p>
      <div className="button-row">
        <Button small icon={FileDiff} onPress={() => chooseUpdateFiles(app)}>
          {words.update}
        </Button>
      </div>
    </Section>
  );
}
