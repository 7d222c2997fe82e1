import { fail, succeed } from '../../shared-types/problem.ts';
import type { Bench } from './bench.ts';
import type { Handlers } from './dispatch.ts';

type PhotoHandlers = Pick<Handlers, 'photo.add' | 'photo.read'>;

export const photoHandlers = (bench: Bench): PhotoHandlers => ({
  async 'photo.add'(piece) {
    const session = bench.session(piece.id);
    return session.ok ? session.value.addPicture(piece) : session;
  },
  'photo.read'({ id, sha256 }) {
    const session = bench.session(id);
    if (!session.ok) return session;
    const bytes = session.value.pictures.get(sha256);
    return bytes ? succeed({ bytes: bytes as Uint8Array<ArrayBuffer> }) : fail('not-found');
  },
});
