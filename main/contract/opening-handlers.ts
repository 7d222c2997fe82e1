import type { OpenedTicket } from '../../shared-types/contract.ts';
import { fail, type Result, succeed } from '../../shared-types/problem.ts';
import { packTicket } from '../document/ticket-archive.ts';
import { documentProblem } from '../files/document-check.ts';
import { type EnteredFile, enterFile } from '../files/entered-file.ts';
import { readForImport } from '../files/read-drawing.ts';
import { newTicketBytes } from '../files/tickets.ts';
import type { Bench } from './bench.ts';
import type { Handlers } from './dispatch.ts';
import type { Services } from './program.ts';

type OpeningHandlers = Pick<
  Handlers,
  'ticket.new' | 'ticket.open' | 'ticket.fromSample' | 'ticket.openFile' | 'ticket.openVersion' | 'import.read'
>;

export const openingHandlers = (services: Services, bench: Bench): OpeningHandlers => ({
  async 'ticket.new'({ number, document }) {
    const problem = documentProblem(document, null);
    if (problem) return { ok: false, problem };
    return bench.take(await services.tickets.create(number, newTicketBytes(document), true));
  },
  async 'ticket.open'({ id }) {
    const present = await bench.present(id);
    return present ? succeed(present) : bench.take(await services.tickets.open(id));
  },
  'ticket.fromSample': ({ id, number }) => openSample(services, bench, id, number),
  async 'ticket.openFile'({ file }) {
    const entered = enterFile(file);
    return entered.ok ? openEntered(services, bench, entered.value) : entered;
  },
  'ticket.openVersion': async ({ id, version }) => bench.take(await services.tickets.openVersion(id, version)),
  'import.read': ({ files, choices, onto }) => {
    const session = onto === undefined ? null : bench.session(onto);
    if (session && !session.ok) return session;
    return succeed(
      readForImport(files, { ...choices, unitMayBeChosen: true }, session ? session.value.document.board : null),
    );
  },
});

async function openSample(services: Services, bench: Bench, id: string, number: string): Promise<Result<OpenedTicket>> {
  const sample = await services.samples.read(id);
  if (!sample) return fail('not-found');
  if (!sample.ok) return sample;
  const { document, photos } = sample.value;
  const plan = { ...document.plan, ticket: { ...document.plan.ticket, number } };
  const bytes = packTicket({ document: { ...document, plan }, photos });
  return bench.take(await services.tickets.create(number, bytes, false));
}

async function openEntered(services: Services, bench: Bench, entered: EnteredFile): Promise<Result<OpenedTicket>> {
  await bench.saveAll();
  const opened = bench.take(await services.tickets.create(entered.stem, entered.bytes, false));
  return opened.ok && entered.notes.length > 0 ? succeed({ ...opened.value, notes: entered.notes }) : opened;
}
