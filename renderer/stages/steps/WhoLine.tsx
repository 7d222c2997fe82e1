import { stepEdits, stepStageWords as words } from '../../../shared-types/words/window/steps.ts';
import { setTicketData } from '../../editing/ticket-data.ts';
import { useDocument, useTypedEdit } from '../../state/use-app.ts';
import { TextEntry } from '../../widgets/TextEntry.tsx';

/** Who ticks, and when; an empty time is the moment of the tick. */
export function WhoLine({ at, onAt }: { at: string; onAt: (at: string) => void }) {
  const { technician } = useDocument().plan.ticket;
  const typed = useTypedEdit(
    stepEdits.technician,
    (value) => (document) => setTicketData(document, { technician: value }),
  );
  return (
    <div className="step-who">
      <TextEntry label={words.by} value={technician} longest={200} {...typed} />
      <TextEntry label={words.at} value={at} placeholder={words.now} longest={40} onDone={onAt} />
    </div>
  );
}
