import { describe, expect, it } from 'vitest';
import { type Action, emptyWork, reduce, type Work } from './work.ts';

const opened: Work = reduce(emptyWork, { do: 'open', name: 'a.yaml', from: 'file', text: 'one' });
const after = (work: Work, ...actions: readonly Action[]): Work => actions.reduce(reduce, work);

describe('what the page knows', () => {
  it('exact: undo and redo go back and forth over what was written; writing anew forgets what was undone', () => {
    const written = after(opened, { do: 'write', text: 'two' }, { do: 'write', text: 'three' });
    const back = after(written, { do: 'undo' });
    expect(back.text).toBe('two');
    expect(after(back, { do: 'redo' }).text).toBe('three');
    expect(after(back, { do: 'undo' }, { do: 'undo' }).text).toBe('one');
    const anew = after(back, { do: 'write', text: 'four' });
    expect(after(anew, { do: 'redo' }).text).toBe('four');
    expect(after(anew, { do: 'undo' }).text).toBe('two');
  });

  it('exact: one drag is one step back, whatever lay between', () => {
    const dragged = after(
      opened,
      { do: 'drag', text: 'a', first: true },
      { do: 'drag', text: 'b', first: false },
      { do: 'drag', text: 'c', first: false },
    );
    expect(dragged.text).toBe('c');
    expect(after(dragged, { do: 'undo' }).text).toBe('one');
  });

  it('exact: what is saved is no longer changed; answers to questions become a file when they are saved', () => {
    const own = after(opened, { do: 'own', text: 'mine' });
    expect(own).toMatchObject({ from: 'own', saved: '', past: [] });
    expect(after(own, { do: 'saved', text: 'mine' })).toMatchObject({ from: 'file', saved: 'mine' });
  });

  it('exact: opening keeps how the person looks at things, and nothing of the other file', () => {
    const looked = after(
      opened,
      { do: 'units', units: 'imperial' },
      { do: 'pane', pane: 'day' },
      { do: 'write', text: 'x' },
    );
    const next = after(looked, { do: 'open', name: 'b.yaml', from: 'example', text: 'y' });
    expect(next).toMatchObject({ units: 'imperial', panes: ['day'], past: [], from: 'example', saved: 'y' });
  });

  it('exact: panes open and close by the same action', () => {
    expect(after(opened, { do: 'pane', pane: 'text' }, { do: 'pane', pane: 'text' }).panes).toEqual([]);
    expect(
      after(opened, { do: 'pane', pane: 'text', open: true }, { do: 'pane', pane: 'text', open: true }).panes,
    ).toEqual(['text']);
  });

  it('exact: a study that runs is left by a change, and stays to be read as one of the older text', () => {
    const result = { faults: [] } as never;
    const asked = after(
      opened,
      { do: 'ask', study: 'faults' },
      { do: 'hear', answer: { kind: 'told', id: 1, study: 'faults', result, ended: 'not yet' } },
    );
    expect(asked.asked.faults).toMatchObject({ state: 'running', text: 'one', result });
    const changed = after(asked, { do: 'write', text: 'two' });
    expect(changed.asked.faults).toMatchObject({ state: 'left', text: 'one', result });
    expect(after(changed, { do: 'ask', study: 'faults' }).asked.faults).toEqual({ state: 'running', text: 'two' });
  });

  it('exact: one study runs at a time', () => {
    const second = after(opened, { do: 'ask', study: 'faults' }, { do: 'ask', study: 'pare' });
    expect([second.asked.faults?.state, second.asked.pare?.state]).toEqual(['left', 'running']);
  });

  it('exact: bands that were stopped say on how many samples they rest, until the text changes', () => {
    const judgement = { findings: [], samples: { asked: 24, ran: 9, faults: [] }, stopped: true } as never;
    const cut = after(opened, { do: 'hear', answer: { kind: 'judged', id: 1, judgement } });
    expect(cut).toMatchObject({ cut: { ran: 9, asked: 24 }, pending: false });
    expect(after(cut, { do: 'write', text: 'two' }).cut).toBeUndefined();
  });
});
