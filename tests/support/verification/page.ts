import { chartSvg, escaped } from './chart.ts';
import type { Row } from './record.ts';
import { type Outcome, type Report, type ReportedProblem, worstUse } from './report.ts';
import { NOT_CHECKED } from './requirements.ts';
import { STYLE } from './style.ts';

export type PageFonts = { family: string; weight: number; woff2: Uint8Array }[];

const HEADS = ['figure', 'expected', 'got', 'error', 'limit', 'used'];

/** The whole report as one file that asks nothing of the network. `made`: a date for people. */
export function pageOf(report: Report, made: string, program: string, fonts: PageFonts): string {
  const summary = report.failed === 0 ? 'none failed' : `<span class="mark bad">${report.failed} failed</span>`;
  const problems = report.topics.flatMap((topic) => topic.problems);
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>Heatmargin: verification</title><style>${fonts.map(fontFace).join('\n')}${STYLE}</style></head><body>
<header><h1>Heatmargin: verification</h1>
<p>What the program computes, against sources outside it. <b>${report.figures} figures</b> in ${problems.length} problems compared, ${summary}.</p>
<p class="soft">Made on ${escaped(made)} by <span class="figure">npm run verify</span>, ${escaped(program)}. Each row was written by a check while it ran; what did not run is not here. ‘From memory’ marks a printed value that was not read again for this page.</p></header>
${overview(report)}
${report.topics
  .filter(({ problems: found }) => found.length > 0)
  .map(
    ({ topic, problems: found }) =>
      `<section><h2 id="${anchor(topic)}">${escaped(topic)}</h2>${found.map(article).join('\n')}</section>`,
  )
  .join('\n')}
${itemList(report)}
${others(report.others)}
</body></html>
`;
}

const anchor = (topic: string): string => topic.toLowerCase().replaceAll(' ', '-');
const fontFace = ({ family, weight, woff2 }: PageFonts[number]): string =>
  `@font-face{font-family:'${family}';font-weight:${weight};src:url(data:font/woff2;base64,${Buffer.from(woff2).toString('base64')}) format('woff2')}`;

function overview({ topics }: Report): string {
  const rows = topics
    .filter(({ problems }) => problems.length > 0)
    .map(({ topic, problems }) => {
      const figures = problems.reduce((sum, one) => sum + one.rows.length, 0);
      const shares = problems.flatMap((one) => worstUse(one) ?? []);
      const failed = problems.filter((one) => one.failed).length;
      const worst = shares.length > 0 ? Math.max(...shares) : null;
      return `<tr><td><a href="#${anchor(topic)}">${escaped(topic)}</a></td><td class="figure">${problems.length}</td><td class="figure">${figures}</td>${use(worst === null ? null : worst / 100)}<td class="figure">${worst === null ? '' : `${worst} %`}</td><td>${failed > 0 ? `<span class="mark bad">${failed} failed</span>` : 'holds'}</td></tr>`;
    });
  return `<table style="margin-top:20px"><thead><tr><th>topic</th><th class="figure">problems</th><th class="figure">figures</th><th colspan="2">largest share of its limit that an error used</th><th></th></tr></thead><tbody>${rows.join('\n')}</tbody></table>`;
}

function article(problem: ReportedProblem): string {
  const pictured = problem.charts.length > 0 ? ' pictured' : '';
  const failed = problem.failed ? ' <span class="mark bad">failed</span>' : '';
  const messages = problem.failed
    ? problem.messages.map((text) => `<p class="message">${escaped(text)}</p>`).join('')
    : '';
  const columns = HEADS.filter((_, index) => problem.rows.some((row) => cellText(row)[index] !== ''));
  return `<article id="${problem.id}"><h3>${escaped(problem.problem)}${failed}</h3><p class="source">Source: ${escaped(problem.source)}</p>${messages}
<div class="body${pictured}"><div class="scroll"><table><thead><tr>${columns.map((name) => `<th${name === 'figure' ? '' : ' class="figure"'}>${name === 'used' ? 'of limit' : name}</th>`).join('')}</tr></thead>
<tbody>${problem.rows.map((row) => line(row, columns)).join('\n')}</tbody></table></div>
${pictured ? `<div>${problem.charts.map(chartSvg).join('\n')}</div>` : ''}</div></article>`;
}

const cellText = (row: Row): string[] => [
  row.what,
  row.expected,
  row.got,
  row.error,
  row.limit,
  row.used === null ? '' : 'bar',
];

function line(row: Row, columns: string[]): string {
  const texts = cellText(row);
  const cells = HEADS.map((name, index) => {
    if (!columns.includes(name)) return '';
    if (name === 'figure')
      return `<td>${escaped(row.what)}${row.ok ? '' : ' <span class="mark bad">failed</span>'}</td>`;
    if (name === 'used') return use(row.used);
    const long = texts[index]!.length > 26;
    return `<td class="figure${long ? ' text' : ''}">${escaped(texts[index]!)}</td>`;
  });
  return `<tr${row.ok ? '' : ' class="failed"'}>${cells.join('')}</tr>`;
}

const use = (share: number | null): string =>
  share === null
    ? '<td class="use"></td>'
    : `<td class="use" title="${Math.round(share * 100)} %"><span><i style="width:${Math.min(100, share * 100).toFixed(0)}%"></i></span></td>`;

function itemList({ items }: Report): string {
  const lines = items.map(({ sentence, problems }) => {
    const links = problems.map(
      (one) =>
        `<a href="#${one.id}">${escaped(one.problem)}</a>${one.failed ? ' <span class="mark bad">failed</span>' : ''}`,
    );
    return `<li>${escaped(sentence)}: ${links.length > 0 ? links.join('; ') : '<span class="mark bad">not checked in this run</span>'}</li>`;
  });
  const missing = NOT_CHECKED.map(({ what, why }) => `<li><b>${escaped(what)}.</b> ${escaped(why)}</li>`);
  return `<section><h2>What was asked for, and where it is answered</h2><ol class="items">${lines.join('\n')}</ol></section>
<section><h2>What is not checked, and why</h2><ul>${missing.join('\n')}</ul></section>`;
}

function others(outcomes: readonly Outcome[]): string {
  if (outcomes.length === 0) return '';
  const words = { passed: 'holds', failed: '', skipped: 'did not run', pending: 'did not run' };
  const lines = outcomes.map(({ file, name, state, messages }) => {
    const said = state === 'failed' ? '<span class="mark bad">failed</span>' : words[state];
    const why = state === 'failed' ? `<p class="message">${escaped(messages.join('\n'))}</p>` : '';
    return `<li>${escaped(name)} <span class="soft">(${escaped(file)})</span>: ${said}${why}</li>`;
  });
  return `<section><h2>Other tests of the suite</h2><p class="soft">Properties without a figure of their own.</p><ul>${lines.join('\n')}</ul></section>`;
}
