// The margin: what the engine remarks on the cabinet, worst first, one remark for findings of one cause.

import { type BriefFinding, type Remark, remarksOn, type UnitSystem } from '@stillair/engine';
import { memo, useMemo, useState } from 'preact/compat';
import type { Uncertain } from '../engine/protocol.ts';
import type { AskReason } from '../page/use-asked.ts';
import { Assumed } from '../start/assumed.tsx';
import { bandText, limitText, placeText, valueText } from './finding-text.ts';
import { Reason } from './reason.tsx';
import { SpreadBar } from './spread-bar.tsx';
import { VerdictMark, verdictWord } from './verdict-mark.tsx';

export interface RemarksProps {
  readonly findings: readonly BriefFinding[];
  readonly pending: boolean;
  /** Bands are there; changes that might mend are still being tried. */
  readonly banded: boolean;
  readonly cut?: { readonly ran: number; readonly asked: number } | undefined;
  readonly progress?: { readonly done: number; readonly all: number } | undefined;
  readonly units: UnitSystem;
  readonly days: number;
  readonly why: AskReason;
  readonly opened?: string | undefined;
  readonly onOpen: (finding: string | undefined) => void;
  /** The part that a remark is about, to point at it. */
  readonly partOf: (finding: BriefFinding) => string | undefined;
  readonly onPoint: (finding: BriefFinding) => void;
  readonly onTry: (finding: BriefFinding, tried: number, keep: boolean) => void;
  readonly onStop: () => void;
  readonly onGoOn: () => void;
  readonly uncertain: readonly Uncertain[];
  /** For a newcomer: one sentence on what they see. */
  readonly seen?: string | undefined;
}

export const Remarks = memo((props: RemarksProps) => {
  const { findings, uncertain, seen } = props;
  const { opening, first, rest } = useMemo(() => remarksOn(findings), [findings]);
  const [all, setAll] = useState(false);
  const shown = all ? [...first, ...rest] : first;
  return (
    <section className="remarks" aria-labelledby="remarks-title">
      <h2 id="remarks-title">Remarks</h2>
      {seen !== undefined && <p className="seen">{seen}</p>}
      <p className="opening" role="status">
        {opening}
      </p>
      <HowSure {...props} />
      <ol>
        {shown.map((remark) => (
          <RemarkItem key={remark.cause} {...props} remark={remark} />
        ))}
      </ol>
      {rest.length > 0 && (
        <button type="button" className="quiet" onClick={() => setAll(!all)} aria-expanded={all}>
          {all ? 'only what matters most' : `${rest.length} more remark${rest.length === 1 ? '' : 's'}`}
        </button>
      )}
      <Assumed uncertain={uncertain} findings={findings} />
      <EveryFinding {...props} />
    </section>
  );
});

/** How far the spreads are. */
function HowSure({ pending, banded, cut, progress, onStop, onGoOn }: RemarksProps) {
  if (!pending && cut === undefined) return null;
  const counted = progress === undefined ? '' : `: ${progress.done} of ${progress.all}`;
  if (!pending)
    return (
      <p className="cut">
        Stopped: the spreads rest on {cut!.ran} of {cut!.asked} samples.{' '}
        <button type="button" className="quiet" onClick={onGoOn}>
          go on
        </button>
      </p>
    );
  return (
    <p className="pending">
      <span>
        {banded
          ? `Spreads are there; changes that might mend are being tried${counted}.`
          : `By middle values; how sure is being worked out${counted}.`}
      </span>{' '}
      {progress !== undefined && (
        <button type="button" className="quiet" onClick={onStop}>
          stop
        </button>
      )}
    </p>
  );
}

function RemarkItem({ remark, ...props }: RemarksProps & { readonly remark: Remark }) {
  const { pending, banded, units, days, opened, onOpen, onPoint, partOf } = props;
  const { cause, verdict, findings, mend } = remark;
  const worst = findings[0]!;
  const open = findings.some(({ id }) => id === opened);
  return (
    <li className={`remark ${verdict}`} data-part-of={partOf(worst)} data-finding={worst.id}>
      <button
        type="button"
        className="head"
        aria-expanded={open}
        onClick={() => {
          onOpen(open ? undefined : worst.id);
          onPoint(worst);
        }}
      >
        <VerdictMark verdict={verdict} />
        <span className="word">{verdictWord[verdict]}</span>
        <span className="cause">{sentence(cause)}</span>
      </button>
      <p className="worst">
        {worst.title}: <strong>{valueText(worst, units)}</strong>
        <span className="place"> {placeText(worst, days)}</span>
      </p>
      <SpreadBar finding={worst} units={units} pending={pending && !banded} />
      {worst.missing !== undefined && <p className="missing">Missing: {worst.missing}</p>}
      {mend !== undefined && !open && (
        <p className="mend">
          {sentence(mend.says)}: then it {mend.verdict === 'holds' ? 'holds' : `is ${mend.verdict}`}
          {mend.worsens.length > 0 ? `, but worse: ${mend.worsens.join(', ')}` : ''}.
        </p>
      )}
      {open && <Opened {...props} findings={findings} />}
    </li>
  );
}

function Opened({ findings, ...props }: RemarksProps & { readonly findings: readonly BriefFinding[] }) {
  const { opened, onOpen, units, days, why, onTry, onPoint } = props;
  const finding = findings.find(({ id }) => id === opened) ?? findings[0]!;
  return (
    <>
      {findings.length > 1 && (
        <ul className="of-one-cause" aria-label="findings of this cause">
          {findings.map((each) => (
            <li key={each.id}>
              <button
                type="button"
                aria-pressed={each === finding}
                onClick={() => {
                  onOpen(each.id);
                  onPoint(each);
                }}
              >
                <VerdictMark verdict={each.verdict} />
                <span className="word">{verdictWord[each.verdict]}</span> {each.title}, {placeText(each, days)}:{' '}
                {valueText(each, units)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <Reason finding={finding} units={units} why={why} onTry={onTry} />
    </>
  );
}

/** Every number, by trade, for those who look for one. */
function EveryFinding({ findings, units, days, why, onTry, onPoint }: RemarksProps) {
  const [asked, setAsked] = useState<string | undefined>(undefined);
  // Hundreds of lines, which are made only for those who unfold them.
  const [open, setOpen] = useState(false);
  const byTrade = useMemo(() => {
    const groups = new Map<string, BriefFinding[]>();
    for (const finding of findings) groups.set(finding.trade, [...(groups.get(finding.trade) ?? []), finding]);
    return groups;
  }, [findings]);
  return (
    <details className="every" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Every number, by trade</summary>
      {[...(open ? byTrade : [])].map(([trade, group]) => (
        <details key={trade}>
          <summary>
            {trade} ({group.length})
          </summary>
          <ul>
            {group.map((finding) => (
              <li key={finding.id} className={finding.verdict}>
                <button
                  type="button"
                  aria-expanded={asked === finding.id}
                  onClick={() => {
                    setAsked(asked === finding.id ? undefined : finding.id);
                    onPoint(finding);
                  }}
                >
                  <VerdictMark verdict={finding.verdict} />
                  <span>
                    {finding.title}, {placeText(finding, days)}:
                  </span>{' '}
                  <strong>{valueText(finding, units)}</strong>{' '}
                  <span className="limits">
                    {[bandText(finding, units), limitText(finding, units)].filter((text) => text !== '').join('; ')}
                  </span>
                </button>
                {asked === finding.id && <Reason finding={finding} units={units} why={why} onTry={onTry} />}
              </li>
            ))}
          </ul>
        </details>
      ))}
    </details>
  );
}

function sentence(text: string): string {
  return text.length === 0 ? text : text[0]!.toUpperCase() + text.slice(1);
}
