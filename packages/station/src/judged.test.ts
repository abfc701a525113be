import { describe, expect, it } from 'vitest';
import { notesText, optionNotesText, spreadText } from './judged.ts';

describe('notes of a run', () => {
  const warnings = [
    { day: 'usual', message: 'The day did not repeat.' },
    { day: 'sunday', message: 'The fan can run in two ways.' },
  ];

  it('exact: tell each warning, with its day where the file has several', () => {
    expect(notesText({ warnings }, 2, 80)).toBe(
      'note: usual: The day did not repeat.\nnote: sunday: The fan can run in two ways.',
    );
    expect(notesText({ warnings: warnings.slice(0, 1) }, 1, 80)).toBe('note: The day did not repeat.');
  });

  it('exact: of one day alone when that is asked; nothing when there is nothing', () => {
    expect(notesText({ warnings }, 2, 80, 'sunday')).toBe('note: sunday: The fan can run in two ways.');
    expect(notesText({ warnings: [] }, 1, 80)).toBe('');
  });

  it('exact: of several options once, with the letters of those it befell unless it befell all', () => {
    const [slow, fan] = warnings;
    const sheets = [
      { id: 'a', warnings: [slow!, fan!] },
      { id: 'b', warnings: [slow!] },
    ];
    expect(optionNotesText(sheets, (id) => id.toUpperCase(), 1, 80)).toBe(
      'note: The day did not repeat.\nnote on A: The fan can run in two ways.',
    );
    expect(optionNotesText([], (id) => id, 1, 80)).toBe('');
  });
});

describe('where bands come from', () => {
  const spread = {
    assumed: 3,
    scattering: 2,
    findings: 2,
    known: 0.7,
    fromAssumed: 0.4,
    most: [{ label: 'flow of the fans', share: 0.4, assumed: true }],
  };

  it('exact: counts what is assumed, and names what causes most', () => {
    expect(spreadText(spread, 24).replaceAll('\u00A0', ' ')).toBe(
      '3 numbers the file does not give are assumed and 2 more scatter; the bands (10 to 90 %) come from varying them. ' +
        'Of the spread of the 2 that fail or are tight, at least 40 % is due to what is assumed; most of all to flow of the fans (40 %).',
    );
  });

  it('limit: claims no cause without samples, or where they tell little', () => {
    expect(spreadText(spread, 0)).toMatch(/nothing was varied/);
    expect(spreadText({ ...spread, known: 0.1 }, 24)).toMatch(/24 samples cannot tell which of them matter most/);
  });
});
