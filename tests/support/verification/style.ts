/** The page's own style: quiet paper and ink of the program's window, light and dark, and on paper. */
export const STYLE = `
:root { color-scheme: light dark; --paper:#FAF8F3; --panel:#F1EDE4; --ink:#1F2328; --soft:#5B5F66; --rule:#D5D0C4; --accent:#2B5C8A; --bad:#A83A00; }
@media (prefers-color-scheme: dark) {
  :root { --paper:#17191C; --panel:#212429; --ink:#E9E5DC; --soft:#A9A599; --rule:#33373D; --accent:#8FB8E6; --bad:#FF9A5C; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 32px 24px 64px; max-width: 1160px; background: var(--paper); color: var(--ink);
  font: 15px/1.45 'IBM Plex Sans', system-ui, sans-serif; }
h1 { font-size: 26px; line-height: 1.2; margin: 0 0 4px; font-weight: 600; }
h2 { font-size: 20px; margin: 48px 0 4px; padding-top: 12px; border-top: 2px solid var(--ink); font-weight: 600; }
h3 { font-size: 15px; margin: 0; font-weight: 600; }
p { margin: 4px 0; max-width: 96ch; }
a { color: var(--accent); }
.soft, .source { color: var(--soft); font-size: 13px; }
.figure, td.figure { font-family: 'IBM Plex Mono', ui-monospace, monospace; font-size: 12.5px; font-variant-numeric: tabular-nums; white-space: nowrap; }
article { margin-top: 28px; break-inside: avoid; }
article .body { display: grid; grid-template-columns: minmax(0, 1fr); gap: 16px 28px; margin-top: 8px; align-items: start; }
article .body.pictured { grid-template-columns: minmax(0, 1.45fr) minmax(280px, 1fr); }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; max-width: 900px; }
th { text-align: left; font-weight: 500; font-size: 12px; color: var(--soft); padding: 4px 10px 4px 0; border-bottom: 1px solid var(--ink); }
td { padding: 4px 10px 4px 0; border-bottom: 1px solid var(--rule); vertical-align: top; font-size: 13px; }
th.figure { text-align: right; font-family: inherit; } td.figure { text-align: right; }
td.text { white-space: normal; text-align: left; font-size: 12px; overflow-wrap: anywhere; max-width: 30ch; }
.use { width: 84px; } .use span { display: block; height: 6px; margin-top: 7px; background: var(--rule); }
.use span, .use i { print-color-adjust: exact; -webkit-print-color-adjust: exact; } .use i { display: block; height: 6px; background: var(--accent); }
.mark { font-weight: 600; font-size: 12px; white-space: nowrap; }
.bad { color: var(--bad); } .bad::before { content: '\\2716 '; }
tr.failed td { background: color-mix(in srgb, var(--bad) 14%, transparent); }
.message { border-left: 3px solid var(--bad); padding: 4px 10px; font-size: 13px; white-space: pre-wrap; overflow-wrap: anywhere; }
figure { margin: 0; } figcaption { font-size: 12px; color: var(--soft); margin-bottom: 4px; }
svg.chart { width: 100%; height: auto; display: block; }
svg text { font: 11px 'IBM Plex Mono', monospace; fill: var(--soft); } svg text.name { font-family: 'IBM Plex Sans', sans-serif; }
.grid { stroke: var(--rule); stroke-width: 1; fill: none; } .axis { stroke: var(--ink); stroke-width: 1; fill: none; }
.line { fill: none; stroke: var(--accent); stroke-width: 1.75; }
.line.n1, .line.n3 { stroke: var(--soft); stroke-dasharray: 5 3; } .line.n4, .line.n5 { stroke: var(--ink); stroke-dasharray: 2 3; }
.dot { fill: var(--paper); stroke: var(--ink); stroke-width: 1.6; } .dot.n3, .dot.n2 { fill: var(--ink); }
.key { font-size: 12px; color: var(--soft); display: flex; flex-wrap: wrap; gap: 2px 16px; } .key svg { vertical-align: -1px; }
ul { padding-left: 20px; margin: 8px 0; } li { margin: 3px 0; font-size: 13px; }
ol.items { columns: 2; column-gap: 40px; padding-left: 24px; } ol.items li { break-inside: avoid; }
@media screen and (max-width: 820px) { article .body.pictured { grid-template-columns: minmax(0, 1fr); } ol.items { columns: 1; } }
@media print {
  :root { --paper:#fff; --panel:#fff; --ink:#000; --soft:#444; --rule:#bbb; --accent:#2B5C8A; --bad:#A83A00; }
  body { max-width: none; padding: 0; font-size: 10pt; } h2 { margin-top: 22pt; break-after: avoid; } a { color: inherit; text-decoration: none; }
  article { margin-top: 12pt; } article .body.pictured { grid-template-columns: minmax(0, 1.7fr) minmax(0, 1fr); gap: 14px; }
  td, .source, .soft, .key, figcaption { font-size: 8.5pt; } td.figure, .figure { font-size: 8pt; } td, th { padding: 2px 6px 2px 0; } .use { width: 40px; }
   thead { display: table-header-group; } tr { break-inside: avoid; } @page { size: A4; margin: 14mm; }
}
`;
