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
});
