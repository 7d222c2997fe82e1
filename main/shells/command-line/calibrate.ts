import type { TicketDocument } from '../../../shared-types/plan.ts';
import { fail, type Result, succeed } from '../../../shared-types/problem.ts';
import {
  calibrationLines,
  fitStandsWords,
  calibrationWords as words,
} from '../../../shared-types/words/calibration.ts';
import { written, wrongUse } from '../../../shared-types/words/command-line.ts';
import { readLog, type TemperatureLog } from '../../document/imports/logs/read-log.ts';
import { packTicket } from '../../document/ticket-archive.ts';
import { fitLog } from '../../heat/calibration/fit-log.ts';
import { ATTACHMENT_BIAS_K, type Attachment, type LoggedPoint } from '../../heat/calibration/log-model.ts';
import { isOutcome, readArguments } from './arguments.ts';
import { openWholeTicket } from './open-input.ts';
import { type Command, done, problem, wrong } from './outcome.ts';
import { readBytes } from './read-input.ts';
import { writeOutput } from './write-output.ts';

const options = {
  output: { type: 'string', short: 'o' },
  run: { type: 'string' },
  start: { type: 'string' },
  point: { type: 'string', multiple: true },
  peak: { type: 'string', multiple: true },
} as const;

type Wish = { watch: string; attachment: Attachment; what: string };

/** 'W1=Channel 3,epoxy': a watch point, a column (or a peak in C), and how the bead was fastened. */
function wishOf(text: string): Wish | null {
  const found = /^([^=]+)=(.+),\s*([a-z]+)$/.exec(text.trim());
  if (!found || !Object.hasOwn(ATTACHMENT_BIAS_K, found[3]!)) return null;
  return { watch: found[1]!.trim(), what: found[2]!.trim(), attachment: found[3] as Attachment };
}

/**
 * `calibrate TICKET LOG.csv --point W1=COLUMN,epoxy ... [--peak W2=231,soldered] -o OUT.hmticket`: fits the station to a
 * logged run, says what the log told and what not, and writes the ticket with it.
 */
export const calibrate: Command = async (given, { tell }) => {
  const read = readArguments(given, options, 1, 2);
  if (isOutcome(read)) return read;
  const [path, logPath] = read.positionals;
  const output = read.text('output');
  if (!output) return wrong(wrongUse(words.nameOutput));
  const start = Number(read.text('start') ?? 0);
  if (!Number.isFinite(start)) return wrong(wrongUse(words.startIsSeconds));
  const wishes = { columns: read.texts('point').map(wishOf), peaks: read.texts('peak').map(wishOf) };
  const all = [...wishes.columns, ...wishes.peaks];
  if (all.length === 0 || all.includes(null)) return wrong(wrongUse(words.pointForm));
  const opened = openWholeTicket(path!);
  if (!opened.ok) return problem(opened.problem);
  const { document } = opened.value;
  const run = document.plan.heatRuns.find(
    ({ id, name }) => !read.text('run') || [id, name].includes(read.text('run')!),
  );
  if (!run) return problem(fail('no-heat-run', { where: read.text('run') ?? 'plan' }).problem);
  const log = logPath ? readLogFile(logPath) : succeed({ columns: [], rows: 0, seconds: 0 });
  if (!log.ok) return problem(log.problem);
  const points = pointsOf(document, log.value, wishes as Wishes, start, logPath ?? '');
  if (!points.ok) return problem(points.problem);
  const fit = fitLog(document.board, document.plan, run.id, points.value, {
    logName: fileName(logPath),
    onRound: ({ round, leftK }) => tell?.(fitStandsWords(round, `${leftK.toFixed(1)} °C`)),
  });
  if (!fit.ok) return problem(fit.problem);
  const { calibration } = fit.value;
  const plan = { ...document.plan, station: { ...document.plan.station, calibration } };
  const saved = writeOutput(output, packTicket({ ...opened.value, document: { ...document, plan } }));
  if (!saved.ok) return problem(saved.problem);
  const names = new Map(document.plan.tags.flatMap((tag) => (tag.kind === 'watchPoint' ? [[tag.id, tag.name]] : [])));
  return done(...calibrationLines(fit.value, names), written(output, words.applies(plan.station.name)));
};

type Wishes = { columns: Wish[]; peaks: Wish[] };

const fileName = (path: string | undefined): string => path?.split(/[\\/]/).at(-1) ?? words.typedPeaks;

function readLogFile(path: string): Result<TemperatureLog> {
  const bytes = readBytes(path);
  return bytes.ok ? readLog(bytes.value.bytes, path) : bytes;
}

/** The wishes with their watch points and samples; one that names what is not there comes back as a problem. */
function pointsOf(
  { plan }: TicketDocument,
  log: TemperatureLog,
  { columns, peaks }: Wishes,
  startS: number,
  file: string,
): Result<LoggedPoint[]> {
  const points: LoggedPoint[] = [];
  for (const { watch, attachment, what } of [...columns, ...peaks]) {
    const tag = plan.tags.find((one) => one.kind === 'watchPoint' && one.name === watch);
    if (!tag) return fail('invalid-field', { where: watch, detail: { reason: words.noWatch, todo: words.placeIt } });
    points.push({ tagId: tag.id, attachment, samples: [], peakC: null });
    const point = points.at(-1)!;
    if (points.length > columns.length) {
      const celsius = Number(what);
      if (!Number.isFinite(celsius))
        return fail('invalid-field', { where: watch, detail: { reason: words.noPeak(what), todo: words.peakForm } });
      point.peakC = celsius;
      continue;
    }
    const column = log.columns.find(({ name }) => name === what);
    if (!column) {
      const known = log.columns.map(({ name }) => `'${name}'`).join(', ');
      return fail('invalid-field', {
        file,
        where: what,
        detail: { reason: words.noColumn, todo: words.columns(known) },
      });
    }
    point.samples = column.samples.flatMap(({ atS, celsius }) =>
      atS >= startS ? [{ atS: atS - startS, celsius }] : [],
    );
  }
  return succeed(points);
}
