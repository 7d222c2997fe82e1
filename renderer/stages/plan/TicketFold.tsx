import type { Plan } from '../../../shared-types/plan.ts';
import { editLabels } from '../../../shared-types/words/window/edits.ts';
import { planWords as words } from '../../../shared-types/words/window/plan.ts';
import { setTicketData } from '../../editing/ticket-data.ts';
import { useDocument, useTypedEdit } from '../../state/use-app.ts';
import { Fold } from '../../widgets/Section.tsx';
import { TextEntry } from '../../widgets/TextEntry.tsx';

/** Whose board it is and what was ordered. */
export function TicketFold() {
  const { ticket } = useDocument().plan;
  const summary = [ticket.customer, ticket.unit].filter(Boolean).join(', ') || ticket.order;
  return (
    <Fold title={words.ticket} summary={summary}>
      <Entry name="number" label={words.number} longest={100} needed />
      <Entry name="customer" label={words.customer} longest={200} />
      <Entry name="unit" label={words.unit} longest={200} hint={words.unitHint} />
      <Entry name="technician" label={words.technician} longest={200} />
      <Entry name="date" label={words.date} longest={40} />
      <Entry name="order" label={words.order} longest={4000} lines={2} hint={words.orderHint} />
      <Entry name="notes" label={words.notes} longest={20000} lines={4} />
    </Fold>
  );
}

type EntryProps = {
  name: keyof Plan['ticket'];
  label: string;
  longest: number;
  needed?: boolean;
  lines?: number;
  hint?: string;
};

function Entry({ name, label, longest, needed, lines, hint }: EntryProps) {
  const { ticket } = useDocument().plan;
  const typed = useTypedEdit(
    `${editLabels.ticket}: ${label.toLowerCase()}`,
    (value) => (document) => setTicketData(document, { [name]: value }),
  );
  return (
    <TextEntry
      label={label}
      value={ticket[name]}
      longest={longest}
      needed={needed}
      lines={lines}
      stacked={lines !== undefined}
      placeholder={hint}
      {...typed}
    />
  );
}
