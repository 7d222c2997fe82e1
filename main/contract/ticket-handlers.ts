import { succeed } from '../../shared-types/problem.ts';
import type { Bench } from './bench.ts';
import type { Handlers } from './dispatch.ts';

type TicketHandlers = Pick<Handlers, 'ticket.patch' | 'ticket.replace' | 'ticket.save' | 'ticket.close'>;

export const ticketHandlers = (bench: Bench): TicketHandlers => ({
  'ticket.patch'({ id, base, patches }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const patched = session.value.patch(base, patches);
    if (patched.ok && !patched.value.gap) bench.changed(session.value);
    return patched;
  },
  'ticket.replace'({ id, document }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const replaced = session.value.replace(document);
    if (replaced.ok) bench.changed(session.value);
    return replaced;
  },
  async 'ticket.save'({ id }) {
    const session = bench.session(id);
    return session.ok ? session.value.save() : session;
  },
  async 'ticket.close'({ id }) {
    const problem = await bench.put(id);
    return problem ? { ok: false, problem } : succeed({});
  },
});
