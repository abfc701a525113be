// A chain of contacts in series with the coil of a contactor: in which states of its members does the load stay on?

/** What a member's contact does when it trips, or when its wire breaks: only one that opens drops the load in both cases. */
export type Contact = 'opens' | 'closes';

/** More members than this are not laid out in a table. */
const MOST_MEMBERS = 16;

/**
 * Counts the states in which the load may stay on, out of all 2^n states of n members that are each well or not (tripped, or
 * their wire broken or supply dead). Every state is tried. A chain that drops on every fault leaves one: all are well.
 *
 * @param contacts - One for each member, at most 16.
 * @returns How many of the states leave the load on; 1 for members that all open, twice as many for each that closes.
 * @throws RangeError when there are too many.
 *
 * @remarks
 * Valid: members in series. A normally open trip contact closes a trip circuit when it trips, but not when its wire is broken,
 * so that its fault may go unnoticed: this state counts as on.
 * Source: de-energise to trip, the idea of IEC 60204-1 and ISO 13849. Checked: exact; reference (memory).
 *
 * @example A stop button, a link and a smoke relay that all open; and the same with a relay that closes
 * ```ts
 * statesThatStayOn(['opens', 'opens', 'opens']); // => 1
 * statesThatStayOn(['opens', 'opens', 'closes']); // => 2
 * ```
 */
export function statesThatStayOn(contacts: readonly Contact[]): number {
  if (contacts.length > MOST_MEMBERS)
    throw new RangeError(`statesThatStayOn: contacts are ${contacts.length}; they must be at most ${MOST_MEMBERS}`);
  let on = 0;
  for (let state = 0; state < 2 ** contacts.length; state += 1) {
    // A bit that is set: that member is not well.
    const dropped = contacts.some((contact, member) => contact === 'opens' && (state >> member) % 2 === 1);
    if (!dropped) on += 1;
  }
  return on;
}
