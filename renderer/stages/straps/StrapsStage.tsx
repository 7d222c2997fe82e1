import { useState } from 'react';
import { useDocument } from '../../state/use-app.ts';
import { ExchangeFold } from './ExchangeFold.tsx';
import { FittedFold } from './FittedFold.tsx';
import { type EditedGroup, GroupDialog } from './GroupDialog.tsx';
import { GroupSection } from './GroupSection.tsx';
import { MarkingFold } from './MarkingFold.tsx';
import { MoveSection } from './MoveSection.tsx';
import { PasteDialog } from './PasteDialog.tsx';
import { StockFold } from './StockFold.tsx';
import '../stages.css';
import './straps.css';

/** What the board must be told about its parts, and the least work that tells it. */
export function StrapsStage() {
  const { board } = useDocument();
  const [edited, setEdited] = useState<EditedGroup | null>(null);
  const [pasting, setPasting] = useState(false);
  return (
    <>
      {board.straps.length > 0 && <MoveSection />}
      <GroupSection onEdit={setEdited} onPaste={() => setPasting(true)} />
      {board.straps.length > 0 && <FittedFold />}
      <StockFold />
      <ExchangeFold />
      <MarkingFold />
      {pasting && (
        <PasteDialog
          onClose={() => setPasting(false)}
          onDraft={(draft) => {
            setPasting(false);
            setEdited({ draft, before: null });
          }}
        />
      )}
      {edited && <GroupDialog edited={edited} onClose={() => setEdited(null)} />}
    </>
  );
}
