import { succeed } from '../../shared-types/problem.ts';
import { readLog } from '../document/imports/logs/read-log.ts';
import { type Bench, wantedOf } from './bench.ts';
import type { Handlers } from './dispatch.ts';

type StudyHandlers = Pick<Handlers, 'calibration.readLog' | 'calibration.fit' | 'search.run' | 'study.cancel'>;

/** Long work that a user asks for: the answer comes when it is done. */
export const studyHandlers = (bench: Bench): StudyHandlers => ({
  'calibration.readLog'({ file }) {
    const log = readLog(file.bytes, file.name);
    if (!log.ok) return log;
    const { columns, rows, seconds } = log.value;
    return succeed({
      ...{ rows, seconds },
      columns: columns.map(({ name, gaps, samples }) => ({
        ...{ name, gaps },
        samples: {
          atS: Float32Array.from(samples, ({ atS }) => atS),
          celsius: Float32Array.from(samples, ({ celsius }) => celsius),
        },
      })),
    });
  },
  async 'calibration.fit'({ id, order }) {
    const session = bench.session(id);
    return session.ok ? bench.studies.run(wantedOf(session.value), { about: 'calibration', order }) : session;
  },
  async 'search.run'({ id, order }) {
    const session = bench.session(id);
    return session.ok ? bench.studies.run(wantedOf(session.value), { about: 'search', order }) : session;
  },
  'study.cancel'({ id }) {
    bench.studies.cancel(id);
    return succeed({});
  },
});
