import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Contact, statesThatStayOn } from './cut-off-chain.ts';

describe('cut-off chain', () => {
  it('exact: members that all open leave one state of 2^n on, that in which all are well', () => {
    for (let members = 0; members <= 8; members += 1)
      expect(statesThatStayOn(Array<Contact>(members).fill('opens'))).toBe(1);
  });

  it('exact: each member that closes doubles the states', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom<Contact>('opens', 'closes'), { maxLength: 10 }), (contacts) => {
        const closing = contacts.filter((contact) => contact === 'closes').length;
        expect(statesThatStayOn(contacts)).toBe(2 ** closing);
      }),
    );
  });

  it('refuses more members than a table can hold', () => {
    expect(() => statesThatStayOn(Array<Contact>(17).fill('opens'))).toThrow('contacts are 17');
  });
});
