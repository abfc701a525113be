// The report as one file that needs nothing else: no script, no picture from elsewhere, printable. All text of the file is escaped.

import { originAt } from '../../cabinet/ledger.ts';
import { originText } from '../../cabinet/origin-text.ts';
import type { Finding } from '../../judge/finding.ts';
import { opening } from '../../judge/remarks.ts';
import { STANDING } from '../../trades/measure.ts';
import { amount, bandWords, limitWords, valueWords } from '../number-words.ts';
import type { PaperInput } from '../paper.ts';
import { escaped } from '../svg.ts';
import { byTrade } from './findings-by-trade.ts';

const STYLE = `:root{color-scheme:light}body{font:14px/1.45 system-ui,sans-serif;color:#111;max-width:62rem;margin:2rem auto;padding:0 1rem}
h1{font-size:1.5rem}h2{font-size:1.15rem;margin-top:2rem;border-bottom:2px solid #111}table{border-collapse:collapse;width:100%}
th,td{text-align:left;vertical-align:top;padding:.25rem .5rem .25rem 0;border-bottom:1px solid #bbb}td.number{white-space:nowrap}
.fails{font-weight:700}.caution{border:2px solid #111;padding:.5rem 1rem}summary{cursor:pointer}details ol{margin:.25rem 0}small{color:#444}
@media print{body{margin:0;max-width:none;font-size:10pt}details::details-content{content-visibility:visible;block-size:auto}summary{display:none}tr{break-inside:auto}}`;

export function reportHtml(
  { source, judgement, units, version, date }: PaperInput,
  cautions: readonly string[],
): string {
  const { cabinet, origins } = source;
  const findings = judgement?.findings ?? [];
  const file = source.file.replace(/^.*[/\\\\]/, '');
  const reason = (finding: Finding): string => {
    const steps = finding.steps.map(({ text, value, unit, formula, source: from, inputs }) => {
      const number = value === undefined || unit === undefined ? '' : `: <b>${escaped(amount(unit, value, units))}</b>`;
      const notes = [formula, from, ...(inputs ?? []).map((path) => inputWords(path))].filter(
        (words) => words !== undefined && words !== '',
      );
      return `<li>${escaped(text)}${number}${notes.length === 0 ? '' : ` <small>(${escaped(notes.join('; '))})</small>`}</li>`;
    });
    const drivers =
      finding.drivers.length === 0
        ? ''
        : `<p>moved most by ${escaped(finding.drivers.map(({ label, share }) => `${label} (${Math.round(100 * share)} %)`).join(', '))}</p>`;
    const tried =
      finding.tried.length === 0
        ? ''
        : `<p>tried: ${finding.tried.map(({ says, verdict, worsens }) => `${escaped(says)}: ${verdict}${worsens.length === 0 ? '' : `, makes worse ${escaped(worsens.join(', '))}`}`).join('; ')}</p>`;
    return `<details><summary>why</summary><ol>${steps.join('')}</ol>${drivers}${tried}</details>`;
  };
  const inputWords = (path: string): string => {
    const from = originText(originAt(origins, path), ({ line }) => `${file}:${line}: `);
    return from === '' ? '' : `${path}: ${from}`;
  };
  const limitSource = ({ limit }: Finding): string =>
    limit === undefined ? '' : `<br><small>limit: ${escaped(limit.source)} (${limit.standing})</small>`;
  const row = (finding: Finding): string =>
    `<tr><td class="${finding.verdict}">${finding.verdict}</td><td>${escaped(finding.title)}<br><small>${escaped(finding.part)}${finding.day === STANDING ? '' : `, ${escaped(finding.day)}`}</small>${limitSource(finding)}${reason(finding)}</td><td class="number">${escaped(valueWords(finding, units))}</td><td class="number">${escaped(bandWords(finding, units))}</td><td class="number">${escaped(limitWords(finding, units))}</td></tr>`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><title>${escaped(cabinet.title)}: report</title><style>${STYLE}</style></head>
<body><h1>${escaped(cabinet.title)}: report</h1>
<p>${escaped(opening(findings))}</p>
<p><small>computed from ${escaped(file)} by stillair ${escaped(version)}${date === undefined ? '' : `, ${escaped(date)}`}; ${findings.length} findings; bands are 10 to 90 % of ${judgement?.samples.ran ?? 0} samples</small></p>
<div class="caution">${cautions.map((words) => `<p>${escaped(words)}</p>`).join('')}</div>
${byTrade(findings)
  .map(
    ({ title, findings: own }) =>
      `<h2>${escaped(title)}</h2>\n<table><thead><tr><th>verdict</th><th>finding</th><th>value</th><th>10 to 90 %</th><th>limit</th></tr></thead><tbody>\n${own.map(row).join('\n')}\n</tbody></table>`,
  )
  .join('\n')}
${assumed(input(source.origins))}
</body></html>
`;
}

const input = (origins: PaperInput['source']['origins']): readonly (readonly [string, string])[] =>
  [...origins].flatMap(([path, origin]) => (origin.kind === 'assumed' ? [[path, origin.why] as const] : []));

function assumed(inputs: readonly (readonly [string, string])[]): string {
  const rows = inputs.map(([path, why]) => `<tr><td>${escaped(path)}</td><td>${escaped(why)}</td></tr>`);
  return `<h2>Assumed</h2>\n<p>${inputs.length} numbers that the file does not give:</p>\n<table><tbody>${rows.join('\n')}</tbody></table>`;
}
