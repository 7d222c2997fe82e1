import { succeed } from '../../shared-types/problem.ts';
import type { Bench } from './bench.ts';
import type { Handlers } from './dispatch.ts';
import type { Services } from './program.ts';

type ShelfHandlers = Pick<Handlers, 'shelf.list' | 'samples.list' | 'ticket.remove' | 'ticket.versions'>;

export const shelfHandlers = ({ tickets, samples }: Services, bench: Bench): ShelfHandlers => ({
  async 'shelf.list'() {
    const cards = await tickets.shelf.list();
    return cards.ok ? succeed({ folder: tickets.shelf.folder, cards: cards.value }) : cards;
  },
  'samples.list': async () => succeed({ cards: await samples.list() }),
  async 'ticket.remove'({ id }) {
    const problem = await bench.put(id);
    return problem ? { ok: false, problem } : tickets.remove(id);
  },
  async 'ticket.versions'({ id }) {
    const path = await tickets.shelf.find(id);
    return succeed({ versions: path === undefined ? [] : await tickets.versions.list(path) });
  },
});
